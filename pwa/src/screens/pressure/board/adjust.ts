// Softer, firmer, wet; and in the middle what they and the rider's notes make of the number.

import { maxFirmness } from "../../../contract/contract.ts";
import { el } from "../../../ui/el.ts";
import { actName, define, Part, setAttr, setHidden, setText } from "../../../ui/part.ts";
import { w } from "../../../words/index.ts";

export const firmed = actName<number>("rs-firmed");
export const wetted = actName<boolean>("rs-wetted");
export const shiftWanted = actName<undefined>("rs-shift-wanted");

export interface AdjustView {
  readonly firmness: number;
  readonly wet: boolean;
  readonly firm: string;
  readonly moved: string; // "your 5 rides: 4 % softer"
}

export class Adjust extends Part<AdjustView> {
  readonly #softer = this.#step(-1, w("button.softer"));
  readonly #firmer = this.#step(1, w("button.firmer"));
  readonly #firm = el("span");
  readonly #moved = el("span");
  readonly #middle = el("button", { type: "button", class: "middle small", on: { click: () => this.act(shiftWanted, undefined) } }, this.#firm, this.#moved);
  readonly #wet = el("button", { type: "button", class: "button", on: { click: () => this.act(wetted, !(this.view?.wet ?? false)) } }, w("button.wet"));

  #step(by: number, label: string): HTMLButtonElement {
    return el("button", { type: "button", class: "button", on: { click: () => this.act(firmed, by) } }, label);
  }

  protected override build(): void {
    this.append(el("div", { class: "adjust" }, this.#softer, this.#middle, this.#firmer, this.#wet));
  }

  protected override show({ firmness, wet, firm, moved }: AdjustView): void {
    setText(this.#firm, firm);
    setText(this.#moved, moved);
    setHidden(this.#moved, moved === "");
    this.#softer.disabled = firmness <= -maxFirmness;
    this.#firmer.disabled = firmness >= maxFirmness;
    setAttr(this.#wet, "aria-pressed", wet);
  }
}

define("rs-adjust", Adjust);
