// The ways to what can be printed.

import { el } from "../../../ui/el.ts";
import { w } from "../../../words/index.ts";

// printWays leads from the Pressure screen to what can be printed.
export function printWays(): HTMLElement {
  return el("div", { class: "stack print-ways" },
    el("h3", {}, w("print.title")), el("p", { class: "small quiet" }, w("print.hint")),
    el("div", { class: "row" },
      el("a", { class: "button", href: "#/pressure/card" }, w("print.card")),
      el("a", { class: "button", href: "#/pressure/team" }, w("print.team"))));
}
