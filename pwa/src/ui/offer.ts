// Offers a new version that waits. It never takes over by itself: a person may be in the middle of something.

import "./offer.css";
import { w } from "../words/index.ts";
import { el } from "./el.ts";
import { actName, define, Part, setHidden } from "./part.ts";

export interface OfferView {
  readonly ready: boolean;
}

export const reloadWanted = actName<null>("rs-reload-wanted");

export class Offer extends Part<OfferView> {
  readonly #button = el("button", {
    type: "button", class: "button primary", on: { click: () => this.#take() },
  }, w("offer.reload"));

  protected override build(): void {
    this.hidden = true;
    this.append(el("p", { role: "status" }, w("offer.text")), this.#button);
  }

  protected override show(view: OfferView): void {
    setHidden(this, !view.ready);
  }

  #take(): void {
    this.#button.disabled = true; // the page reloads in a moment; a second press would do nothing
    this.act(reloadWanted, null);
  }
}

define("rs-offer", Offer);
