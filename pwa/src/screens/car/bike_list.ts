// Whole spare bikes for one rider, the nearest first, each with what to change and one press to say that it was given.

import type { BikeLine } from "../../book/car/spare_bikes.ts";
import { el } from "../../ui/el.ts";
import { keyed } from "../../ui/keyed.ts";
import { actName, define, Part, setAttr, setHidden, setText } from "../../ui/part.ts";
import { w } from "../../words/index.ts";
import { gaveLine, spoken } from "./give.ts";

export const gaveBike = actName<string>("rs-gave-bike"); // the bike's record

export interface BikesShown {
  readonly who: string;
  readonly on: string; // that a spare bike is ridden already, "" if not
  readonly lines: readonly BikeLine[];
}

export class BikeList extends Part<BikesShown> {
  readonly #on = el("p", { class: "notice" });
  readonly #list = el("ul", { class: "unmarked give-others", "aria-label": w("spareBike.title") });
  readonly #offers = el("section", { class: "stack" }, el("h3", {}, w("spareBike.title")), this.#list, el("p", { class: "small quiet" }, w("spareBike.caution")));

  protected override build(): void {
    this.append(el("div", { class: "stack" }, this.#on, this.#offers));
  }

  protected override show({ who, on, lines }: BikesShown): void {
    setText(this.#on, on);
    setHidden(this.#on, on === "");
    setHidden(this.#offers, lines.length === 0);
    keyed(this.#list, lines, ({ rec }) => rec, ({ rec }) => gaveLine(() => this.act(gaveBike, rec)), (node, { spare, name, change, can }) => {
      const [first, second, button] = node.children;
      if (first !== undefined) setText(first, name);
      if (second !== undefined) setText(second, change);
      if (!(button instanceof HTMLElement)) return;
      setHidden(button, !can);
      setAttr(button, "aria-label", spoken(spare, who));
    });
  }
}

define("rs-bike-list", BikeList);
