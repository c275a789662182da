// What is wanted seldom, folded away below its title.

import "./fold.css";
import { el } from "./el.ts";

export function fold(title: string, ...children: readonly Node[]): HTMLDetailsElement {
  return el("details", { class: "card fold" }, el("summary", {}, title), el("div", { class: "stack" }, ...children));
}
