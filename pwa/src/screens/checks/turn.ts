// A quiet guide for the beads: both wheels, both sides, in half a minute. It makes no sound; it can be left running while
// the hands are at the wheel.

import { el } from "../../ui/el.ts";
import { define, Part, setAttr, setHidden, setText } from "../../ui/part.ts";
import { w } from "../../words/index.ts";

const whole = 30; // s, common practice
const beads = [["front", "left"], ["front", "right"], ["rear", "right"], ["rear", "left"]] as const;

export class TurnGuide extends Part {
  readonly #words = el("p", { class: "turn" });
  readonly #bar = el("progress", { max: whole, value: 0, "aria-label": w("checks.turn") });
  readonly #button = el("button", { type: "button", class: "button", on: { click: () => this.#press() } }, w("checks.turnGo"));
  #timer: ReturnType<typeof setInterval> | undefined;
  #begun = 0;

  protected override build(): void {
    setHidden(this.#bar, true);
    this.append(el("details", { class: "card fold" }, el("summary", {}, w("checks.turn")),
      el("div", { class: "stack" }, el("p", {}, w("checks.turnWhy")), this.#words, this.#bar, el("p", {}, this.#button))));
  }

  #press(): void {
    if (this.#timer !== undefined) return this.#end("");
    this.#begun = performance.now();
    setHidden(this.#bar, false);
    setText(this.#button, w("checks.turnStop"));
    this.#tick();
    this.#timer = setInterval(() => this.#tick(), 250);
  }

  #tick(): void {
    const spent = (performance.now() - this.#begun) / 1000;
    if (spent >= whole) return this.#end(w("checks.turnDone"));
    const [wheel, side] = beads[Math.floor((spent / whole) * beads.length)] ?? beads[0];
    setText(this.#words, w("checks.turnAt", { wheel: w(`side.${wheel}`), side: w(`checks.sideOf.${side}`), s: Math.ceil(whole - spent) }));
    setAttr(this.#bar, "value", spent.toFixed(1));
  }

  #end(words: string): void {
    clearInterval(this.#timer);
    this.#timer = undefined;
    setText(this.#words, words);
    setHidden(this.#bar, true);
    setText(this.#button, w("checks.turnGo"));
  }

  disconnectedCallback(): void {
    clearInterval(this.#timer);
  }
}

define("rs-turn-guide", TurnGuide);
