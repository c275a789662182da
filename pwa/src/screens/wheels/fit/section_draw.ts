// The rim cut across, to scale, with the letters of ISO 5775-2. Each letter's line is as long as its millimetres.

import { svg } from "../../../ui/el.ts";
import { mark } from "../guide_draw.ts";

// SectionMeasures are millimetres.
export interface SectionMeasures {
  readonly a: number; // A, between the edges
  readonly g: number; // G, the edge above the bead seat
  readonly h: number; // H, the taped well below the bead seat
  readonly well: number; // the bare well below it
  readonly l1: number; // L1, the well's width
  readonly hook: boolean;
}

export type Letter = "A" | "D" | "G" | "H" | "L1" | "P";

const wall = 1.8; // mm, how thick the walls are drawn
const wide = 320; // of the drawing
const most = 200; // of it for A

// scaleOf is how many units of the drawing a millimetre is.
export const scaleOf = ({ a }: SectionMeasures): number => Math.min(9, most / a);

// seatOf is P as drawn: what the well and its slopes leave.
export const seatOf = ({ a, l1 }: SectionMeasures): number => Math.max(1, ((a - l1) / 2) * 0.6);

export function section(measures: SectionMeasures, label: string): SVGSVGElement {
  const { g, h, well } = measures;
  const s = scaleOf(measures);
  const top = 58 + g * s; // where the bead seat lies
  const tall = top + (well + wall + 6) * s + 8;
  const node = svg("svg", { viewBox: `0 0 ${wide} ${tall.toFixed(1)}`, role: "img", "aria-label": label, class: "drawing section", "data-scale": s },
    svg("g", { transform: `translate(${wide / 2} ${top.toFixed(1)}) scale(${s.toFixed(4)})`, class: "to-scale" },
      svg("path", { d: profile(measures) }), ...(well > h ? [svg("path", { class: "soft", d: tape(measures) })] : [])),
    ...letters(measures, wide / 2, top, s));
  return node as SVGSVGElement;
}

// profile is the rim's outline, in millimetres from the middle of the bead seat's level; down is towards the axle.
function profile(m: SectionMeasures): string {
  const { g, well } = m;
  const [half, floor, p] = [m.a / 2, m.l1 / 2, seatOf(m)];
  const side = (sign: 1 | -1): string => {
    const x = (mm: number): string => (sign * mm).toFixed(3);
    const hook = m.hook ? `L${x(half - 0.7)} ${-g}L${x(half - 0.7)} ${-g + 1.2}L${x(half)} ${-g + 2}` : `L${x(half)} ${-g}`;
    return sign === 1 ? `${hook}L${x(half)} 0L${x(half - p)} 0L${x(floor)} ${well}` : `L${x(floor)} ${well}L${x(half - p)} 0L${x(half)} 0${reversed(m, x)}`;
  };
  const deep = well + wall;
  return `M${(half + wall).toFixed(3)} ${-g}${side(1)}${side(-1)}L${(-half - wall).toFixed(3)} ${-g}V1.5L${(-floor - wall).toFixed(3)} ${deep}L-2.5 ${deep + 6}H2.5L${(floor + wall).toFixed(3)} ${deep}L${(half + wall).toFixed(3)} 1.5z`;
}

function reversed({ a, g, hook }: SectionMeasures, x: (mm: number) => string): string {
  const half = a / 2;
  return hook ? `L${x(half)} ${-g + 2}L${x(half - 0.7)} ${-g + 1.2}L${x(half - 0.7)} ${-g}` : `L${x(half)} ${-g}`;
}

function tape({ l1, h, well }: SectionMeasures): string {
  const half = l1 / 2;
  return `M${-half} ${well}V${h}H${half}V${well}z`;
}

function letters(m: SectionMeasures, x: number, y: number, s: number): readonly SVGElement[] {
  const half = (m.a / 2) * s;
  const p = seatOf(m) * s;
  const floor = (m.l1 / 2) * s;
  const [edge, well] = [m.g * s, m.well * s];
  const right = x + half + wall * s + 22;
  return [
    faint(`M${x - half} ${y - edge}V${y - edge - 34}M${x + half} ${y - edge}V${y - edge - 34}M${x + half} ${y - edge}H${right + 8}M${x - half - wall * s - 6} ${y}H${right + 8}M${x - floor} ${y + well}v22M${x + floor} ${y + well}v22`),
    ...line("A", x - half, y - edge - 26, x + half, y - edge - 26, x, y - edge - 34),
    ...line("G", right, y, right, y - edge, right + 16, y - edge / 2 + 5),
    ...line("H", x, y, x, y + m.h * s, x + 14, y + (m.h * s) / 2 + 5),
    ...line("L1", x - floor, y + well + 16, x + floor, y + well + 16, x, y + well + 34),
    ...line("P", x - half, y - 8, x - half + p, y - 8, x - half + p / 2, y - 15),
    ...axle(x - half - wall * s - 14, y, well),
  ];
}

// axle is D: from the bead seat across the wheel to the other side, far below.
function axle(x: number, y: number, well: number): readonly SVGElement[] {
  return [svg("path", { class: "arrow", d: `M${x} ${y}V${y + well + 56}m-4-7l4 7 4-7` }), mark(x - 14, y + well + 20, "D")];
}

function line(letter: Letter, x1: number, y1: number, x2: number, y2: number, tx: number, ty: number): readonly SVGElement[] {
  return [svg("line", { class: "measure", "data-letter": letter, x1, y1, x2, y2 }), mark(tx, ty, letter)];
}

function faint(d: string): SVGElement {
  return svg("path", { class: "faint", d });
}
