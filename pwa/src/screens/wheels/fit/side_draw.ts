// The wheel from the side, the valve above: the rim's edge, the floor of its well, and the arc of bead that may still be outside the
// edge, to scale.

import { svg } from "../../../ui/el.ts";
import { mark } from "../guide_draw.ts";

const edge = 120; // of the drawing, the edge's radius
const middle = 150;

export interface SideMeasures {
  readonly edgeMm: number; // the edge's radius
  readonly floorMm: number; // the taped well's
  readonly offMm: number; // of the bead, outside the edge, along it
}

export function sideView({ edgeMm, floorMm, offMm }: SideMeasures, label: string, said: string): SVGSVGElement {
  const s = edge / edgeMm;
  const half = offMm / edgeMm / 2; // radians
  const at = (angle: number): string => `${(middle + edge * Math.sin(angle)).toFixed(3)} ${(middle - edge * Math.cos(angle)).toFixed(3)}`;
  const arc = half <= 0 ? [] : half >= Math.PI ? [svg("circle", { class: "bead-off", cx: middle, cy: middle, r: edge, "data-mm": offMm })]
    : [svg("path", { class: "bead-off", d: `M${at(-half)}A${edge} ${edge} 0 ${half > Math.PI / 2 ? 1 : 0} 1 ${at(half)}`, "data-mm": offMm })];
  return svg("svg", { viewBox: "0 0 300 300", role: "img", "aria-label": label, class: "drawing side-view", "data-scale": s },
    svg("circle", { class: "faint", cx: middle, cy: middle, r: edge }), svg("circle", { class: "bead-in", cx: middle, cy: middle, r: floorMm * s }),
    svg("path", { class: "tool", d: `M${middle} ${middle - floorMm * s}v30` }), svg("circle", { cx: middle, cy: middle, r: 6 }), ...arc,
    mark(middle, middle + 5 + 40, said)) as SVGSVGElement;
}
