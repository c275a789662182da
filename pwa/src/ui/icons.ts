// Line drawings, 24 by 24, drawn for this app. They carry no meaning alone: a word always stands beside or behind them.

import { svg } from "./el.ts";

export type Icon = "pressure" | "checks" | "packing" | "car" | "wheels" | "settings" | "close";

const strokes: Record<Icon, string> = {
  // A tyre, a little flat where it meets the ground.
  pressure: "M8 18.5a8 8 0 1 1 8 0z M3.5 21.25h17 M12 10.25a1.5 1.5 0 1 1 0 3 1.5 1.5 0 0 1 0-3z",
  checks: "M4.25 12.75l5.25 5.5L20 6",
  packing: "M5 8.25h14a1.25 1.25 0 0 1 1.25 1.25v9.25A1.25 1.25 0 0 1 19 20H5a1.25 1.25 0 0 1-1.25-1.25V9.5A1.25 1.25 0 0 1 5 8.25z " +
    "M8.75 8V4.75h6.5V8 M8.75 8.5v11.25 M15.25 8.5v11.25",
  // A car with a wheel on its roof.
  car: "M4.5 17.25H3v-4l3.25-1.25 2-3.5h7.5l2.5 3.5L21 13.25v4h-1.5 M9.25 17.25h5.5 M6.5 12h11.5 " +
    "M6.875 15a2.25 2.25 0 1 1 0 4.5 2.25 2.25 0 0 1 0-4.5z M17.125 15a2.25 2.25 0 1 1 0 4.5 2.25 2.25 0 0 1 0-4.5z " +
    "M12 3.25a2.5 2.5 0 1 1 0 5 2.5 2.5 0 0 1 0-5z",
  wheels: "M12 3.25a8.75 8.75 0 1 1 0 17.5 8.75 8.75 0 0 1 0-17.5z M12 10.25a1.75 1.75 0 1 1 0 3.5 1.75 1.75 0 0 1 0-3.5z " +
    "M12 3.25v7 M12 13.75v7 M4.4 7.6l6.1 3.5 M13.5 12.9l6.1 3.5 M19.6 7.6l-6.1 3.5 M10.5 12.9l-6.1 3.5",
  settings: "M12 5.75a6.25 6.25 0 1 1 0 12.5 6.25 6.25 0 0 1 0-12.5z M12 9.5a2.5 2.5 0 1 1 0 5 2.5 2.5 0 0 1 0-5z " +
    "M12 5.75v-3 M12 18.25v3 M5.75 12h-3 M18.25 12h3 M7.6 7.6L5.45 5.45 M16.4 7.6l2.15-2.15 M7.6 16.4l-2.15 2.15 M16.4 16.4l2.15 2.15",
  close: "M5.5 5.5l13 13 M18.5 5.5l-13 13",
};

// icon draws one, hidden from those who listen to the page.
export function icon(name: Icon): SVGSVGElement {
  const attrs = { viewBox: "0 0 24 24", width: "1.5em", height: "1.5em", "aria-hidden": "true", focusable: "false" };
  return svg("svg", { ...attrs, class: "icon" }, svg("path", {
    d: strokes[name], fill: "none", stroke: "currentColor",
    "stroke-width": 1.5, "stroke-linecap": "round", "stroke-linejoin": "round",
  }));
}
