// The bikes of the book: open another one, or start a new one.

import { el } from "../../ui/el.ts";
import { keyed } from "../../ui/keyed.ts";
import { actName, define, Part, setAttr, setHidden, setText } from "../../ui/part.ts";
import type { BikeLine } from "../../book/bikes.ts";
import { w } from "../../words/index.ts";

export const bikeOpened = actName<string>("rs-bike-opened"); // "" for a new one

export interface BikesView {
  readonly bikes: readonly BikeLine[];
  readonly first: boolean; // the first-run form is on the screen
}

export class Bikes extends Part<BikesView> {
  readonly #title = el("h2");
  readonly #list = el("div", { class: "stack" });
  readonly #new = el("button", { type: "button", class: "button", on: { click: () => this.act(bikeOpened, "") } }, w("bikes.new"));

  protected override build(): void {
    this.append(el("section", { class: "card stack" }, this.#title, this.#list, this.#new));
  }

  protected override show({ bikes, first }: BikesView): void {
    setHidden(this, bikes.length === 0);
    setText(this.#title, first ? w("bikes.known") : w("bikes.title"));
    setHidden(this.#new, first);
    keyed(this.#list, bikes, (each) => each.rec, (each) => this.#button(each.rec), (node, each) => {
      setText(node, each.name);
      setAttr(node, "aria-current", each.open ? "true" : null);
    });
  }

  #button(rec: string): HTMLButtonElement {
    return el("button", { type: "button", class: "button", on: { click: () => this.act(bikeOpened, rec) } });
  }
}

define("rs-bikes", Bikes);
