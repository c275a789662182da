// A line of a list that leads somewhere: its name, and what is known of it.

import "./way.css";
import { el, setAttr, setText } from "./el.ts";

export function way(): HTMLLIElement {
  return el("li", {}, el("a", { class: "way" }, el("span", { class: "named" }), el("span", { class: "quiet small" })));
}

export function showWay(node: HTMLElement, href: string, name: string, facts: string): void {
  const link = node.firstElementChild;
  const [first, second] = link?.children ?? [];
  if (link === null || first === undefined || second === undefined) return;
  setAttr(link, "href", href);
  setText(first, name);
  setText(second, facts);
}
