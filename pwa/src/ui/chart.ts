// The loss curve: its flat part shaded, the limits hatched, custom and the recommendation marked; the same as a table.

import "./chart.css";
import { w } from "../words/index.ts";
import { el, svg } from "./el.ts";
import { define, Part } from "./part.ts";

export interface ChartPoint {
  readonly x: number; // pressure in the person's unit
  readonly casing: number; // W
  readonly rough: number;
}

export interface ChartView {
  readonly title: string;
  readonly points: readonly ChartPoint[];
  readonly good: readonly [number, number] | undefined;
  readonly low: number | undefined; // below: too soft
  readonly high: number | undefined; // above: over the limit
  readonly best: number | undefined;
  readonly custom: number;
  readonly mark: { readonly x: number; readonly label: string } | undefined;
  readonly unit: string;
  readonly write: (x: number) => string;
  readonly watts: (x: number) => string;
}

const wide = 360;
const tall = 190;
const base = 150; // the axis
const top = 14;
const twinRows = 8;

export class Chart extends Part<ChartView> {
  readonly #picture = el("div", { class: "picture" });
  readonly #twin = el("div", { class: "twin" });

  readonly #fold = el("details", {}, el("summary", {}, w("chart.twin")), this.#twin);

  // The table is made when it is looked at.
  #fillTwin(): void {
    if (this.#fold.open && this.view !== undefined) this.#twin.replaceChildren(twin(this.view));
  }

  protected override build(): void {
    this.#fold.addEventListener("toggle", () => this.#fillTwin());
    this.append(this.#picture, this.#fold);
  }

  protected override show(view: ChartView): void {
    this.#picture.replaceChildren(draw(view));
    this.#fillTwin();
  }
}

interface Scale {
  readonly x: (value: number) => number;
  readonly y: (watts: number) => number;
}

const total = (p: ChartPoint): number => p.casing + p.rough;

// scaleOf draws what a pressure costs above the least: the flat part lies on the axis, and a loss beyond reason is cut off.
function scaleOf(points: readonly ChartPoint[]): Scale {
  const first = points[0]?.x ?? 0;
  const last = points.at(-1)?.x ?? 1;
  const most = Math.min(Math.max(4, ...points.map(total).map((watts) => watts - leastOf(points))), 20);
  return {
    x: (value) => 4 + ((value - first) / (last - first)) * (wide - 8),
    y: (watts) => Math.max(top, base - 4 - (watts / (most * 1.08)) * (base - 4 - top)),
  };
}

function leastOf(points: readonly ChartPoint[]): number {
  return Math.min(...points.map(total));
}

function draw(view: ChartView): SVGSVGElement {
  const { x, y } = scaleOf(view.points);
  const within = (value: number): number => Math.min(wide - 4, Math.max(4, x(value)));
  const least = leastOf(view.points);
  const line = view.points.map((p, i) => `${i === 0 ? "M" : "L"}${x(p.x).toFixed(1)} ${y(total(p) - least).toFixed(1)}`).join("");
  const band = (from: number, to: number, attrs: Record<string, string>): SVGElement | false =>
    to - from > 0.5 && svg("rect", { x: from, y: top, width: to - from, height: base - top, ...attrs });
  const picture = svg("svg", { viewBox: `0 0 ${wide} ${tall}`, role: "img", "aria-label": view.title });
  picture.append(hatching());
  const add = (node: Node | false): void => void (node !== false && picture.append(node));
  const soft = view.low === undefined ? 4 : within(view.low);
  const hard = view.high === undefined ? wide - 4 : within(view.high);
  const good = view.good === undefined ? undefined : [within(view.good[0]), within(view.good[1])] as const;
  if (good !== undefined) add(band(...good, { class: "good" }));
  add(band(4, soft, { class: "hatch" }));
  add(band(hard, wide - 4, { class: "hatch" }));
  if (good !== undefined) add(goodName(good, [Math.max(good[0], soft), Math.min(good[1], hard)]));
  add(svg("path", { d: `M4 ${y(1)}H${wide - 4}`, class: "watt" }));
  add(label(wide - 4, y(1) - 4, w("chart.oneWatt"), "end", "faint"));
  add(svg("path", { d: line, class: "total" }));
  add(svg("path", { d: `M4 ${base}H${wide - 4}`, class: "axis" }));
  if (soft > 50) add(label(4, base + 16, w("chart.soft"), "start"));
  if (hard < wide - 70) add(label(wide - 4, base + 16, w("chart.limit"), "end"));
  if (view.best !== undefined) {
    const at = within(view.best);
    add(svg("path", { d: `M${at} ${base}v-14`, class: "axis" }));
    add(label(at, base + 32, w("chart.least"), at < 60 ? "start" : at > wide - 60 ? "end" : "middle"));
  }
  const custom = within(view.custom);
  add(svg("path", { d: `M${custom - 5} ${base}l5 -9 5 9z`, class: "custom" }));
  add(label(custom, base + 16, w("chart.custom"), custom < 40 ? "start" : custom > wide - 40 ? "end" : "middle"));
  if (view.mark !== undefined) add(dot(view.mark, view.points, x, y));
  return picture;
}

// goodName stands where the range may be used, if there is room, or else over all of it.
function goodName(range: readonly [number, number], usable: readonly [number, number]): SVGElement | false {
  const room = 70;
  const [low, high] = usable[1] - usable[0] > room ? usable : range;
  return high - low > room && label((low + high) / 2, top + 14, w("chart.good"), "middle");
}

// dot marks the recommendation on the curve.
function dot(mark: { x: number; label: string }, points: readonly ChartPoint[], x: Scale["x"], y: Scale["y"]): SVGElement {
  const near = points.reduce((best, p) => (Math.abs(p.x - mark.x) < Math.abs(best.x - mark.x) ? p : best), points[0] ?? { x: 0, casing: 0, rough: 0 });
  const at = { x: x(mark.x), y: y(total(near) - leastOf(points)) };
  return svg("g", {}, svg("circle", { cx: at.x, cy: at.y, r: 7, class: "dot" }), label(at.x, Math.max(top + 28, at.y - 14), mark.label, "middle", "mark"));
}

function label(x: number, y: number, text: string, anchor: string, kind = ""): SVGElement {
  return svg("text", { x, y, "text-anchor": anchor, class: kind }, text);
}

// hatching is the pattern of what is out of bounds; one is enough for all charts of a page, and harmless twice.
function hatching(): SVGElement {
  return svg("defs", {}, svg("pattern", { id: "rs-hatch", width: 7, height: 7, patternUnits: "userSpaceOnUse", patternTransform: "rotate(45)" },
    svg("path", { d: "M0 0V7", class: "stroke" })));
}

function twin(view: ChartView): HTMLElement {
  const step = Math.max(1, (view.points.length - 1) / (twinRows - 1));
  const rows = Array.from({ length: twinRows }, (_, i) => view.points[Math.round(i * step)]).filter((p) => p !== undefined);
  const head = [w("chart.pressure", { unit: view.unit }), w("chart.watts"), w("chart.casingW"), w("chart.roughW")];
  return el("table", {}, el("caption", { class: "unseen" }, view.title),
    el("thead", {}, el("tr", {}, ...head.map((text) => el("th", { scope: "col" }, text)))),
    el("tbody", {}, ...rows.map((p) => el("tr", {}, el("th", { scope: "row" }, view.write(p.x)),
      ...[total(p) - leastOf(view.points), p.casing, p.rough].map((x) => el("td", {}, view.watts(x)))))));
}

define("rs-chart", Chart);
