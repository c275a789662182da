// The bottom bar with the five places. The current one is told by weight, by a bar above it and to screen readers.

import "./bar.css";
import { w } from "../words/index.ts";
import { el } from "./el.ts";
import { icon } from "./icons.ts";
import { define, Part, setAttr } from "./part.ts";

export const places = ["pressure", "checks", "packing", "car", "wheels"] as const;

export interface BarView {
  readonly current: string;
}

export class Bar extends Part<BarView> {
  readonly #links = new Map<string, HTMLAnchorElement>();

  protected override build(): void {
    const list = el("ul");
    for (const place of places) {
      const link = el("a", { href: `#/${place}` }, icon(place), el("span", {}, w(`place.${place}`)));
      this.#links.set(place, link);
      list.append(el("li", {}, link));
    }
    this.append(el("nav", { "aria-label": w("bar.label") }, list));
  }

  protected override show(view: BarView): void {
    for (const [place, link] of this.#links) setAttr(link, "aria-current", place === view.current ? "page" : null);
  }
}

define("rs-bar", Bar);
