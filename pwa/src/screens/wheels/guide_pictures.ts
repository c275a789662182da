// The drawings of the measuring guide.

import { svg } from "../../ui/el.ts";
import { w } from "../../words/index.ts";
import { plain } from "../../words/number.ts";
import { line, mark, numbered, rim, ring, span, tyre } from "./guide_draw.ts";
import type { Topic } from "./guide_topics.ts";

interface Drawing {
  readonly tall: number;
  readonly nodes: () => readonly SVGElement[];
}

const turned = (angle: number, r: number): string => `${(r * Math.cos(angle)).toFixed(1)} ${(r * Math.sin(angle)).toFixed(1)}`;
const round = (n: number): readonly number[] => Array.from({ length: n }, (_, i) => (2 * Math.PI * i) / n - Math.PI / 2);

// spokes are straight lines from a hub to a rim.
function spokes(x: number, y: number, from: number, to: number, n: number): SVGElement {
  return line(round(n).map((angle) => `M${turned(angle, from)}L${turned(angle, to)}`).join(""), "faint", `translate(${x} ${y})`);
}

function width(): readonly SVGElement[] {
  const places = round(3).map((angle, n) => numbered(254 + 47 * Math.cos(angle), 124 + 47 * Math.sin(angle), n + 1));
  return [
    tyre(92, 148), rim(92, 148),
    // The calliper comes from above; its jaws touch where the tyre is widest.
    line("M22 20H196V34H22zM24 34H40V104L30 88V50zM160 34H144V104L154 88V50z", "tool"), line("M144 12h54v28h-54z", "tool"), mark(171, 31, plain(41.5)),
    span(41, 143, 94), mark(92, 86, w("guideMark.width")),
    ring(254, 124, 47), ring(254, 124, 36, "faint"), ring(254, 124, 5), spokes(254, 124, 5, 36, 12), ...places,
  ];
}

function inner(): readonly SVGElement[] {
  return [
    // A rim without its tyre, three times as large.
    svg("g", { transform: "translate(160 66) scale(2.6)", class: "thick" }, rim(0, 0)),
    line("M92 8H270V22H92zM110 22H124L118 84H110zM210 22H196L202 84H210z", "tool"), line("M210 2h60v26h-60z", "tool"), mark(240, 20, plain(23)),
    line("M110 84V104M210 84V104", "faint"), span(110, 210, 98), mark(160, 116, w("guideMark.inner")),
    line("M82 70V210M238 70V210M82 204H238", "faint"), line("M152 196l16 16M168 196l-16 16", "arrow"), mark(160, 230, w("guideMark.notOutside")),
  ];
}

function load(): readonly SVGElement[] {
  return [
    line("M8 204H312"),
    ...[84, 232].flatMap((x) => [ring(x, 144, 36, "soft"), ring(x, 144, 3), spokes(x, 144, 3, 34, 10)]),
    line("M54 180H114V204H54z"), line("M60 188h48M60 196h48", "faint"),
    line("M200 180H264V204H200z", "tool"), line("M216 184h32v10h-32z", "tool"),
    line("M14 180H306", "faint"), mark(158, 174, w("guideMark.level")),
    // frame, fork, bars, saddle
    line("M84 144L148 148 128 88 84 144M128 88L206 86M148 148L206 92M204 82L232 144M204 82l-4-12h18M114 80h26M128 88l-3-8", "open"),
    // rider
    line("M127 76C130 56 146 44 168 38L214 68M127 76L166 104 150 152h14M168 38l8-4", "arrow"), ring(188, 24, 12, "tool"),
    mark(84, 222, w("guideMark.block")), mark(232, 222, w("guideMark.scale")),
  ];
}

function dial(x: number, y: number, angle: number, value: number): readonly SVGElement[] {
  const ticks = Array.from({ length: 9 }, (_, i) => Math.PI * (0.75 + (1.5 * i) / 8));
  const at = (r: number, way: number): string => turned(way, r);
  return [
    ring(x, y, 44), line(ticks.map((tick) => `M${at(36, tick)}L${at(42, tick)}`).join(""), "part", `translate(${x} ${y})`),
    line(`M0 0L${at(32, angle)}`, "tool", `translate(${x} ${y})`), ring(x, y, 4, "solid"), mark(x, y + 30, plain(value)),
  ];
}

function gauge(): readonly SVGElement[] {
  return [
    ...dial(66, 70, Math.PI * 1.62, 2.1), ...dial(254, 70, Math.PI * 1.5, 2),
    mark(66, 16, w("guideMark.mine")), mark(254, 16, w("guideMark.theirs")),
    // hoses to the valve, one after the other
    line("M100 98C120 118 126 128 140 138M220 98C200 118 194 128 180 138", "arrow"), line("M132 137l8 1-2-8M188 137l-8 1 2-8", "arrow"),
    numbered(108, 124, 1), numbered(212, 124, 2),
    line("M154 196V160h12V196M156 160v-14h8v14M157 146v-8h6v8"), line("M20 226Q160 166 300 226", "soft"), line("M154 196V190h12v6"),
    mark(160, 222, w("guideMark.sameTyre")),
  ];
}

function rotor(): readonly SVGElement[] {
  const holes = round(20).map((angle, n) => ring(88 + (n % 2 === 0 ? 62 : 72) * Math.cos(angle), 104 + (n % 2 === 0 ? 62 : 72) * Math.sin(angle), 3));
  return [
    ring(88, 104, 80, "soft"), ring(88, 104, 54), ring(88, 104, 27),
    line(round(6).map((angle) => `M${turned(angle, 27)}L${turned(angle + 0.5, 54)}`).join(""), "part", "translate(88 104)"), ...holes, ...[45, 135, 225, 315].map((at) => ring(88 + 67 * Math.cos((at * Math.PI) / 180), 104 + 67 * Math.sin((at * Math.PI) / 180), 5, "solid")),
    mark(88, 108, w("guideMark.min"), "middle", "stamped"), mark(88, 202, w("guideMark.track")),
    // cut across: the outer edge stays thick, the track wears
    line("M238 22h24v20l-5 8v54l5 8v62h-24v-62l5-8V50l-5-8z", "soft"),
    line("M200 77h28l15 0M300 77h-28l-15 0", "arrow"), line("M214 68l29 9-29 9zM286 68l-29 9 29 9z", "tool"),
    mark(250, 202, w("guideMark.cut")), mark(270, 112, w("guideMark.here"), "start"),
    line("M222 20l12 12M234 20l-12 12", "arrow"), mark(218, 20, w("guideMark.notEdge"), "end"),
  ];
}

function runout(): readonly SVGElement[] {
  const panel = (x: number, gap: number, words: string): readonly SVGElement[] => {
    const edge = x + 62; // the pointer's tip
    return [
      line(`M${x + 4} 22H${x + 20}V170H${x + 4}z`), line(`M${x + 20} 134H${edge}M${x + 14} 126v16`, "tool"),
      tyre(edge + gap + 30, 126), rim(edge + gap + 30, 126),
      line(`M${edge} 150v14M${edge + gap} 150v14`, "faint"), mark(x + 80, 196, words),
      line(`M${edge - 14} 157h14m-5-4l5 4-5 4M${edge + gap + 14} 157h-14m5-4l-5 4 5 4`, "arrow"),
    ];
  };
  return [mark(4, 14, w("guideMark.leg"), "start"), ...panel(0, 6, w("guideMark.narrowest")), ...panel(166, 16, w("guideMark.widest")), mark(160, 220, w("guideMark.runout"))];
}

const drawings: Readonly<Record<Topic, Drawing>> = {
  width: { tall: 206, nodes: width }, inner: { tall: 236, nodes: inner }, load: { tall: 230, nodes: load },
  gauge: { tall: 232, nodes: gauge }, rotor: { tall: 212, nodes: rotor }, runout: { tall: 228, nodes: runout },
};

// picture draws a topic; those who do not see it hear the same in words.
export function picture(topic: Topic): SVGSVGElement {
  const { tall, nodes } = drawings[topic];
  return svg("svg", { viewBox: `0 0 320 ${tall}`, role: "img", "aria-label": w(`guidePicture.${topic}`), class: "drawing" }, ...nodes());
}
