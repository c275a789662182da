// What the guide's drawings are made of: lines in the colours of day and night, a rim with its tyre cut across, arrows.

import { svg } from "../../ui/el.ts";

type Kind = "part" | "soft" | "tool" | "arrow" | "open" | "faint" | "solid";

export function line(d: string, kind: Kind = "part", transform?: string): SVGElement {
  return svg("path", { d, class: kind, transform });
}

export function ring(x: number, y: number, r: number, kind: Kind = "part"): SVGElement {
  return svg("circle", { cx: x, cy: y, r, class: kind });
}

export function mark(x: number, y: number, words: string, anchor: "start" | "middle" | "end" = "middle", kind = ""): SVGElement {
  return svg("text", { x, y, "text-anchor": anchor, class: kind }, words);
}

// numbered is a place with its number.
export function numbered(x: number, y: number, n: number): SVGElement {
  return svg("g", {}, ring(x, y, 11, "solid"), mark(x, y + 5, String(n), "middle", "inside"));
}

// span is an arrow with two heads, between two upright edges.
export function span(from: number, to: number, y: number): SVGElement {
  return line(`M${from} ${y}H${to}M${from + 7} ${y - 4}l-7 4 7 4M${to - 7} ${y - 4}l7 4 -7 4`, "arrow");
}

// rim is a rim cut across, 60 wide, its edges' upper ends at (x ± 30, y).
export function rim(x: number, y: number): SVGElement {
  return line("M-30 2q0-4 4-4h3q4 0 4 4t-4 5v11q0 4 7 4l6 4h20l6-4q7 0 7-4V7q-4-1-4-5t4-4h3q4 0 4 4v22l-12 7-8 16q-10 6-20 0l-8-16-12-7z", "part", `translate(${x} ${y})`);
}

// tyre is a tyre cut across that sits on such a rim, 104 wide at its widest, 55 above the rim's edges.
export function tyre(x: number, y: number): SVGElement {
  return line("M-22 14C-26-4-52-16-52-54C-52-86-30-104 0-104S52-86 52-54C52-16 26-4 22 14", "soft", `translate(${x} ${y})`);
}
