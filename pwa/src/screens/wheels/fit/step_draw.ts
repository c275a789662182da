// The drawing of a step: the wheel from the side with the valve above, and the bead as it goes round. The bead stays one element from
// step to step, so that it moves where motion is allowed and stands still where it is not.

import type { Step } from "../../../book/fit/steps.ts";
import { setAttr, svg } from "../../../ui/el.ts";
import { define, Part } from "../../../ui/part.ts";
import { line, mark, rim, tyre } from "../guide_draw.ts";

const middle = 160;
const [outside, inWell, edge] = [132, 104, 118]; // radii of the bead off, of the bead in the well, of the edge

export interface StepDrawing {
  readonly step: Step;
  readonly label: string;
  readonly limit: string; // short: "5.00 bar"
}

export class StepPicture extends Part<StepDrawing> {
  readonly #on = svg("circle", { class: "bead-in", cx: middle, cy: middle, r: inWell, pathLength: 360 });
  readonly #off = svg("circle", { class: "bead-off", cx: middle, cy: middle, r: outside, pathLength: 360 });
  readonly #marks = svg("g");
  readonly #wheel = svg("g", { class: "round" },
    svg("circle", { class: "faint", cx: middle, cy: middle, r: edge }), svg("circle", { class: "faint", cx: middle, cy: middle, r: inWell - 8 }),
    svg("path", { class: "faint", d: spokes() }), svg("circle", { cx: middle, cy: middle, r: 7 }),
    svg("path", { class: "tool", d: `M${middle - 4} ${middle - inWell + 4}v24h8v-24z` }), this.#on, this.#off);
  readonly #scene = svg("g");
  readonly #svg = svg("svg", { viewBox: "0 0 320 320", role: "img", class: "drawing step-picture" }, this.#wheel, this.#scene, this.#marks);

  protected override build(): void {
    this.append(this.#svg);
  }

  protected override show({ step, label, limit }: StepDrawing): void {
    setAttr(this.#svg, "aria-label", label);
    const wheel = step.scene === "wheel" || step.scene === "search";
    setAttr(this.#wheel, "display", wheel ? null : "none");
    this.#round(step.off);
    this.#scene.replaceChildren(...sceneOf(step, limit));
    this.#marks.replaceChildren(...(wheel ? [...step.hands.map(hand), ...toolOf(step)] : []));
  }

  // round lays the bead: so much of it outside, the rest in the well.
  #round({ at, wide }: Step["off"]): void {
    const start = at - wide / 2 - 90; // a circle begins at three o'clock
    setAttr(this.#off, "stroke-dasharray", `${wide} ${360 - wide}`);
    setAttr(this.#off, "stroke-dashoffset", String(-start));
    setAttr(this.#on, "stroke-dasharray", `${360 - wide} ${wide}`);
    setAttr(this.#on, "stroke-dashoffset", String(-(start + wide)));
  }
}

const place = (degrees: number, r: number): readonly [number, number] => {
  const angle = (degrees * Math.PI) / 180;
  return [middle + r * Math.sin(angle), middle - r * Math.cos(angle)];
};

function spokes(): string {
  return Array.from({ length: 12 }, (_, n) => {
    const [x1, y1] = place(n * 30, 7);
    const [x2, y2] = place(n * 30, inWell - 8);
    return `M${x1.toFixed(1)} ${y1.toFixed(1)}L${x2.toFixed(1)} ${y2.toFixed(1)}`;
  }).join("");
}

// hand is a palm on the tyre, with an arrow that pushes into the well.
function hand(degrees: number): SVGElement {
  return svg("g", { transform: `rotate(${degrees.toFixed(1)} ${middle} ${middle}) translate(${middle} ${middle - outside - 8})`, class: "hand" },
    svg("path", { class: "solid", d: "M-13-8q13-10 26 0v10q-13 8-26 0z" }), svg("path", { class: "arrow", d: "M0 6v18m-5-7l5 7 5-7" }));
}

function toolOf({ tool, off }: Step): readonly SVGElement[] {
  const [x, y] = place(180, outside);
  switch (tool) {
    case "lever": return [line(`M${x - 12} ${y + 22}L${x} ${y - 14}q6-10 12-2`, "tool"), line(`M${x + 34} ${y + 18}L${x + 40} ${y - 14}q6-8 12 0`, "tool")];
    case "soap": return (off.wide === 0 ? [] : [20, 340, 50, 310]).map((degrees) => drop(...place(degrees, edge + 2)));
    case "arrow": return [svg("path", { class: "arrow", d: `M${middle - 50} ${middle - 44}q50-32 100 0m-12-6l12 6-14 5` })];
    case "tube": return [svg("circle", { class: "tube", cx: middle, cy: middle, r: inWell - 16 })];
    case "sealant": return [svg("path", { class: "solid", d: `M${middle - 40} ${middle + 84}q40 26 80 0q-40 8-80 0z` })];
    case "valve": return [svg("path", { class: "arrow", d: `M${middle} ${middle - inWell + 76}v-34m-6 8l6-8 6 8` })];
    case "": return [];
  }
}

function drop(x: number, y: number): SVGElement {
  return svg("circle", { class: "solid", cx: x, cy: y, r: 4 });
}

function sceneOf({ scene, tool }: Step, limit: string): readonly SVGElement[] {
  switch (scene) {
    case "wheel": return [];
    case "search": return [svg("circle", { class: "tool glass", cx: 232, cy: 216, r: 34 }), line("M256 240l34 34", "tool")];
    case "eyes": return [line("M60 150q0-34 46-34t48 20q6 8 12 0 2-20 48-20t46 34q0 40-46 40t-50-32q-4-8-8 0-4 32-50 32t-46-40z", "tool"), line("M60 146l-26-14M260 146l26-14", "tool")];
    case "limit": return [svg("circle", { cx: middle, cy: 150, r: 110 }), svg("path", { class: "stop-arc", d: "M237.8 72.2A110 110 0 0 1 255.3 205" }), line("M160 150L224 86", "tool"), mark(160, 226, limit, "middle", "big-mark")];
    case "line": return [svg("g", { transform: "translate(160 200) scale(1.7)", class: "thick" }, tyre(0, 0), rim(0, 0)), ...beadLine(tool === "soap")];
  }
}

// beadLine is the line on the tyre above both edges; on one side it dips where a spot has not come up.
function beadLine(dips: boolean): readonly SVGElement[] {
  const right = dips ? "M214 190l20 12" : "M214 182h26";
  return [svg("path", { class: "arrow", d: `M80 182h26${right}` }), ...(dips ? [svg("path", { class: "tool", d: "M262 196l-16 0m6-6l-6 6 6 6" })] : [])];
}

define("rs-step-picture", StepPicture);
