// A QR code from its rows: dark on light by day and night, since readers want it so.

import { svg } from "./el.ts";

export function qrPicture(rows: readonly string[], quiet: number, spoken: string): SVGSVGElement {
  const side = rows.length + 2 * quiet;
  const dark = rows.flatMap((row, y) => [...row.matchAll(/1+/g)].map(({ 0: run, index }) => `M${index + quiet} ${y + quiet}h${run.length}v1h-${run.length}z`)).join("");
  return svg("svg", { viewBox: `0 0 ${side} ${side}`, role: "img", "aria-label": spoken, class: "qr", "shape-rendering": "crispEdges" },
    svg("path", { d: `M0 0h${side}v${side}h-${side}z`, fill: "#ffffff" }), svg("path", { d: dark, fill: "#000000" }));
}
