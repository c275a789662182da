// The number pad: big enough for a thumb in a moving car. Keys of a keyboard do the same.

import { el } from "../../ui/el.ts";
import { actName, define, Part, setText } from "../../ui/part.ts";
import { w } from "../../words/index.ts";

export const padTyped = actName<string>("rs-pad-typed"); // the whole number
export const padByEye = actName<undefined>("rs-pad-by-eye");

const longest = 6; // digits of a race number

export class NumberPad extends Part<string> {
  readonly #shown = el("output", { class: "pad-number", "aria-live": "off" });

  protected override build(): void {
    const key = (digit: string): HTMLElement => el("button", { type: "button", class: "button key", on: { click: () => this.#add(digit) } }, digit);
    const erase = el("button", { type: "button", class: "button key", "aria-label": w("car.erase"), on: { click: () => this.#set((this.view ?? "").slice(0, -1)) } }, "⌫");
    const eye = el("button", { type: "button", class: "button key words", "aria-label": w("car.byEyeSpoken"), on: { click: () => this.act(padByEye, undefined) } }, w("car.byEye"));
    this.append(this.#shown, el("div", { class: "pad", role: "group", "aria-label": w("car.number") }, ...["1", "2", "3", "4", "5", "6", "7", "8", "9"].map(key), eye, key("0"), erase));
  }

  protected override show(typed: string): void {
    setText(this.#shown, typed === "" ? w("car.typeNumber") : typed);
    this.#shown.classList.toggle("quiet", typed === "");
  }

  // press takes a key of a keyboard; false for one that means nothing here.
  press(key: string): boolean {
    if (/^\d$/.test(key)) this.#add(key);
    else if (key === "Backspace") this.#set((this.view ?? "").slice(0, -1));
    else return false;
    return true;
  }

  #add(digit: string): void {
    this.#set(((this.view ?? "") + digit).slice(0, longest));
  }

  #set(typed: string): void {
    this.view = typed;
    this.act(padTyped, typed);
  }
}

define("rs-number-pad", NumberPad);
