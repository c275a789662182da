// The bike's name, behind which all bikes are, and its state in words, behind which its checks are.

import { el } from "../../../ui/el.ts";
import { actName, define, Part, setAttr, setText } from "../../../ui/part.ts";
import { w } from "../../../words/index.ts";

export const bikesWanted = actName<undefined>("rs-bikes-wanted");

export interface BikeLineView {
  readonly name: string;
}

export class BikeLine extends Part<BikeLineView> {
  readonly #name = el("span");
  readonly #pick = el("button", { type: "button", class: "name", on: { click: () => this.act(bikesWanted, undefined) } }, this.#name, el("span", { "aria-hidden": "true" }, " ▾"));
  readonly #state: HTMLElement;

  // The state is the one that every screen shows.
  constructor(state: HTMLElement) {
    super();
    this.#state = state;
  }

  protected override build(): void {
    this.append(this.#pick, this.#state);
  }

  protected override show({ name }: BikeLineView): void {
    setText(this.#name, name);
    setAttr(this.#pick, "aria-label", w("bikes.open", { name }));
  }
}

define("rs-bike-line", BikeLine);
