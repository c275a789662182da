// "I set both", and after the ride in the same place "How was it?"; what was just noted can be undone for a while.

import type { RideDue } from "../../../book/pressure/ride_due.ts";
import { el } from "../../../ui/el.ts";
import { actName, define, Part, setHidden, setText } from "../../../ui/part.ts";
import { w } from "../../../words/index.ts";

export const wasSet = actName<undefined>("rs-was-set");
export const wasSame = actName<undefined>("rs-was-same");
export const rideWanted = actName<undefined>("rs-ride-wanted");
export const entryUndone = actName<undefined>("rs-entry-undone");

export interface SetBarView {
  readonly due: RideDue;
  readonly last: string; // what was set last; "" when nobody noted it
  readonly done: string; // what was just noted; "" when nothing can be undone
  readonly can: boolean; // there is a number to note
}

export class SetBar extends Part<SetBarView> {
  readonly #set = el("button", { type: "button", on: { click: () => this.act(wasSet, undefined) } }, w("set.both"));
  readonly #same = el("button", { type: "button", class: "button", on: { click: () => this.act(wasSame, undefined) } }, w("set.same"));
  readonly #how = el("button", { type: "button", on: { click: () => this.act(rideWanted, undefined) } }, w("ride.how"));
  readonly #done = el("p", { role: "status", class: "small" });
  readonly #undo = el("button", { type: "button", class: "button", on: { click: () => this.act(entryUndone, undefined) } }, w("ground.undo"));
  readonly #toast = el("div", { class: "toast" }, this.#done, this.#undo);
  readonly #last = el("p", { class: "quiet small" });

  protected override build(): void {
    this.append(el("div", { class: "set-bar" }, this.#how, this.#set, this.#same), this.#toast, this.#last);
  }

  protected override show({ due, last, done, can }: SetBarView): void {
    const back = due === "ridden";
    this.#set.className = back ? "button" : "button primary";
    this.#how.className = back ? "button primary" : "button";
    setHidden(this.#how, due === "never_set");
    setHidden(this.#same, due !== "never_set" || last === "");
    this.#set.disabled = !can;
    setText(this.#done, done);
    setHidden(this.#undo, done === "");
    this.#toast.classList.toggle("told", done !== "");
    setText(this.#last, last);
    setHidden(this.#last, last === "");
  }
}

define("rs-set-bar", SetBar);
