// Whole spare bikes for one rider: the nearest in large words, what to change on it, and the others with their reasons.

import type { BikeLine } from "../../book/car/spare_bikes.ts";
import { el } from "../../ui/el.ts";
import { keyed } from "../../ui/keyed.ts";
import { actName, define, Part, setAttr, setHidden, setText } from "../../ui/part.ts";
import { w } from "../../words/index.ts";
import { gaveLine, spoken } from "./give.ts";

export const gaveBike = actName<string>("rs-gave-bike"); // the bike's record

export interface BikesShown {
  readonly who: string;
  readonly lines: readonly BikeLine[]; // the nearest first
}

export class BikeList extends Part<BikesShown> {
  readonly #large = el("p", { class: "give-large" });
  readonly #place = el("p");
  readonly #change = el("p", { class: "give-change" });
  readonly #box = el("div", { class: "give", role: "status" }, this.#large, this.#place, this.#change);
  readonly #gave = el("button", { type: "button", class: "button primary big", on: { click: () => this.#tell() } }, w("car.gave"));
  readonly #none = el("p", { role: "status" }, w("spareBike.none"));
  readonly #others = el("ul", { class: "unmarked give-others", "aria-label": w("spareBike.others") });
  readonly #caution = el("p", { class: "small quiet" }, w("spareBike.caution"));

  protected override build(): void {
    this.append(el("div", { class: "stack" }, this.#box, this.#gave, this.#none, this.#others, this.#caution));
  }

  protected override show({ who, lines }: BikesShown): void {
    const give = this.#first();
    for (const node of [this.#box, this.#gave, this.#caution]) setHidden(node, give === undefined);
    setHidden(this.#none, give !== undefined);
    setText(this.#large, give === undefined ? "" : w("car.give", { spare: give.spare.toUpperCase() }));
    setText(this.#place, give?.place ?? "");
    setHidden(this.#place, (give?.place ?? "") === "");
    setText(this.#change, give?.change ?? "");
    setAttr(this.#gave, "aria-label", give === undefined ? null : spoken(give.spare, who));
    keyed(this.#others, lines.filter((each) => each !== give), ({ rec }) => rec, ({ rec }) => gaveLine(() => this.act(gaveBike, rec)), (node, { spare, name, change, can }) => {
      const [first, second, button] = node.children;
      if (first !== undefined) setText(first, name);
      if (second !== undefined) setText(second, change);
      if (!(button instanceof HTMLElement)) return;
      setHidden(button, !can);
      setAttr(button, "aria-label", spoken(spare, who));
    });
  }

  #first(): BikeLine | undefined {
    return this.view?.lines.find(({ can }) => can);
  }

  #tell(): void {
    const rec = this.#first()?.rec;
    if (rec !== undefined) this.act(gaveBike, rec);
  }
}

define("rs-bike-list", BikeList);
