// Both numbers in short, on top of whatever changes them.

import { type Side, sides } from "../../../book/pressure/answer.ts";
import type { WheelView } from "../../../book/pressure/wheel_view.ts";
import { el } from "../../../ui/el.ts";
import { define, Part, setText } from "../../../ui/part.ts";
import { sentences, w } from "../../../words/index.ts";

export class Live extends Part<readonly WheelView[]> {
  readonly #wheels = new Map<Side, { readonly number: HTMLElement; readonly words: HTMLElement }>();

  protected override build(): void {
    this.classList.add("live");
    for (const side of sides) {
      const [number, words] = [el("strong", { class: "number" }), el("p", { class: "small" })];
      this.#wheels.set(side, { number, words });
      this.append(el("section", {}, el("h2", { class: "small" }, w(`side.${side}`)), number, words));
    }
  }

  protected override show(wheels: readonly WheelView[]): void {
    for (const wheel of wheels) {
      const { number, words } = this.#wheels.get(wheel.side) ?? {};
      if (number === undefined || words === undefined) continue;
      const stands = wheel.number !== "" && wheel.old === "";
      setText(number, stands ? wheel.number : w("wheel.none"));
      number.classList.toggle("none", !stands);
      setText(words, stands ? wheel.unit : wheel.old === "" ? sentences(wheel.stops) : w("wheel.oldWhy", { reason: wheel.old }));
    }
  }
}

define("rs-live", Live);
