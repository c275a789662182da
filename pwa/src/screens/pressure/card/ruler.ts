// The ruler below a number: where it lies between too soft and too hard, and where your reading lies.

import type { RulerView } from "../../../book/pressure/ruler_view.ts";
import { el } from "../../../ui/el.ts";
import { define, Part, setAttr, setHidden, setText } from "../../../ui/part.ts";
import { w } from "../../../words/index.ts";

export class Ruler extends Part<RulerView> {
  readonly #floor = el("i", { class: "floor" });
  readonly #good = el("i", { class: "good" });
  readonly #number = el("i", { class: "mark" });
  readonly #read = el("i", { class: "read" });
  readonly #limit = el("i", { class: "limit" });
  readonly #low = el("span", { class: "low" });
  readonly #high = el("span", { class: "high" });
  readonly #most = el("span", { class: "most" }, w("ruler.limit"));
  readonly #picture = el("div", { class: "picture", role: "img" },
    el("i", { class: "line" }), this.#good, this.#floor, this.#limit, this.#number, this.#read, this.#low, this.#high, this.#most);

  protected override build(): void {
    this.append(this.#picture);
  }

  protected override show({ floor, limit, good, ends, number, read, twin }: RulerView): void {
    setAttr(this.#picture, "aria-label", twin);
    span(this.#floor, 0, floor);
    span(this.#limit, limit, 1);
    span(this.#good, good?.[0], good?.[1]);
    at(this.#number, number);
    at(this.#read, read);
    setText(this.#low, ends[0]);
    setText(this.#high, ends[1]);
    at(this.#low, good?.[0]);
    // Figures that would lie over each other: the ends of a narrow range are set apart.
    this.#picture.classList.toggle("narrow", good !== undefined && good[1] - good[0] < 0.3);
    at(this.#high, good?.[1]);
    at(this.#most, limit === undefined || (good !== undefined && limit - good[1] < 0.16) ? undefined : Math.min(limit, 0.9));
  }
}

function at(node: HTMLElement, place: number | undefined): void {
  setHidden(node, place === undefined);
  if (place !== undefined) node.style.left = `${(place * 100).toFixed(1)}%`;
}

function span(node: HTMLElement, from: number | undefined, to: number | undefined): void {
  const known = from !== undefined && to !== undefined;
  setHidden(node, !known);
  if (!known) return;
  node.style.left = `${(from * 100).toFixed(1)}%`;
  node.style.right = `${((1 - to) * 100).toFixed(1)}%`;
}

define("rs-ruler", Ruler);
