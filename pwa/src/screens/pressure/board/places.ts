// Home and the start. Where one stands governs every number; a tap on the place where one stands edits its air.

import type { Here, PlacesView } from "../../../book/pressure/places_view.ts";
import { el } from "../../../ui/el.ts";
import { actName, define, Part, setAttr, setText } from "../../../ui/part.ts";
import { w } from "../../../words/index.ts";

export const placeChosen = actName<Here>("rs-place-chosen");
export const airWanted = actName<undefined>("rs-air-wanted");

class Half {
  readonly #air = el("span", { class: "small" });
  readonly #age = el("span", { class: "small" });
  readonly node: HTMLButtonElement;

  constructor(here: Here, press: () => void) {
    this.node = el("button", { type: "button", on: { click: press } }, el("strong", {}, w(`place.${here}`)), this.#air, this.#age);
  }

  show(air: string, age: string, active: boolean): void {
    setText(this.#air, air);
    setText(this.#age, age);
    setAttr(this.node, "aria-pressed", active);
  }
}

export class Places extends Part<PlacesView> {
  readonly #halves = [this.#half("set", 0), this.#half("ride", 1)] as const;

  #half(here: Here, n: 0 | 1): Half {
    return new Half(here, () => (this.view?.[n].active === true ? this.act(airWanted, undefined) : this.act(placeChosen, here)));
  }

  protected override build(): void {
    this.append(el("div", { class: "places", role: "group", "aria-label": w("place.group") }, this.#halves[0].node, this.#halves[1].node));
  }

  protected override show([home, start]: PlacesView): void {
    this.#halves[0].show(home.air, home.age, home.active);
    this.#halves[1].show(start.air, start.age, start.active);
  }
}

define("rs-places", Places);
