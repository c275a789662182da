// Tells that the calculator does not run here, and what still works.

import { sentences, w } from "../words/index.ts";
import { el } from "./el.ts";
import { define, Part, setHidden, setText } from "./part.ts";
import type { CalcState } from "./screen.ts";

export interface OutageView {
  readonly calc: CalcState;
  readonly saves: boolean; // does saving work?
}

export class Outage extends Part<OutageView> {
  readonly #text = el("span");
  readonly #why = el("p", { class: "small" });

  protected override build(): void {
    this.hidden = true;
    this.append(el("div", { class: "notice care", role: "alert" },
      el("p", {}, el("strong", {}, w("outage.care")), " ", this.#text),
      el("details", {}, el("summary", {}, w("outage.why")), el("div", { class: "stack" }, this.#why,
        el("p", {}, el("button", { type: "button", class: "button", on: { click: () => location.reload() } }, w("outage.again")))))));
  }

  protected override show({ calc, saves }: OutageView): void {
    setHidden(this, calc.where === "own");
    if (calc.where === "own") return;
    setText(this.#text, sentences([w(calc.where === "server" ? "outage.server" : "outage.none"), w(saves ? "outage.saved" : "outage.unsaved")]));
    setText(this.#why, calc.reason);
  }
}

define("rs-outage", Outage);
