// The bikes of the book: open another one, or start a new one.

import "../../../ui/pick.css";
import { el } from "../../../ui/el.ts";
import { keyed } from "../../../ui/keyed.ts";
import { actName, define, Part, setAttr, setHidden, setText } from "../../../ui/part.ts";
import type { BikeLine } from "../../../book/pressure/bikes.ts";
import { w } from "../../../words/index.ts";
import { printWays } from "../print/ways.ts";

export const bikeOpened = actName<string>("rs-bike-opened"); // "" for a new one
export const bikeCopied = actName<undefined>("rs-bike-copied");
export const setupShared = actName<undefined>("rs-setup-shared");
export const setupBrought = actName<File>("rs-setup-brought");

export interface BikesView {
  readonly bikes: readonly BikeLine[];
  readonly first: boolean; // the first-run form is on the screen
  readonly fault: string; // why a file was not taken
}

export class Bikes extends Part<BikesView> {
  readonly #title = el("h2");
  readonly #list = el("div", { class: "stack" });
  readonly #copy = el("button", { type: "button", class: "button", on: { click: () => this.act(bikeCopied, undefined) } }, w("bikes.copy"));
  readonly #share = el("button", { type: "button", class: "button", on: { click: () => this.act(setupShared, undefined) } }, w("bikes.share"));
  readonly #file = el("input", { type: "file", accept: ".json,application/json" });
  readonly #bring = el("label", { class: "button pick" }, w("bikes.bring"), this.#file);
  readonly #fault = el("p", { class: "notice care", role: "alert" });
  readonly #print = printWays();
  readonly #hint = el("p", { class: "small quiet" }, w("bikes.bringWhy"));
  readonly #new = el("button", { type: "button", class: "button", on: { click: () => this.act(bikeOpened, "") } }, w("bikes.new"));

  protected override build(): void {
    this.append(el("section", { class: "card stack" }, this.#title, this.#list, this.#new, this.#copy, this.#hint,
      el("div", { class: "presses" }, this.#share, this.#bring), this.#fault, this.#print));
    this.#file.addEventListener("change", () => {
      const [file] = this.#file.files ?? [];
      this.#file.value = ""; // the same file may be chosen again
      if (file !== undefined) this.act(setupBrought, file);
    });
  }

  protected override show({ bikes, first, fault }: BikesView): void {
    setHidden(this.#title, !first || bikes.length === 0); // the sheet has its own
    setHidden(this.#copy, first);
    setHidden(this.#share, first);
    setHidden(this.#print, first);
    setText(this.#fault, fault);
    setHidden(this.#fault, fault === "");
    setText(this.#title, w("bikes.known"));
    setHidden(this.#new, first);
    setHidden(this.#hint, !first);
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
