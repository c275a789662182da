// Says what came of a press, in one line that is read out; for ten seconds it can be taken back.

import { el } from "./el.ts";
import { define, Part, setHidden, setText } from "./part.ts";
import { w } from "../words/index.ts";

export interface OutcomeView {
  readonly words: string; // "" for nothing to say
  readonly failed?: boolean;
  readonly undo?: () => void;
}

export const undoFor = 10_000; // ms

export class Outcome extends Part<OutcomeView> {
  readonly #line = el("p", { role: "status" });
  readonly #undo = el("button", { type: "button", class: "button", on: { click: () => this.#take() } }, w("ground.undo"));
  #timer: ReturnType<typeof setTimeout> | undefined;

  protected override build(): void {
    this.append(el("div", { class: "row spread" }, this.#line, this.#undo));
    setHidden(this.#undo, true);
  }

  protected override show({ words, failed = false, undo }: OutcomeView): void {
    clearTimeout(this.#timer);
    setText(this.#line, words);
    this.#line.className = failed ? "notice care" : "";
    setHidden(this.#undo, undo === undefined);
    if (undo !== undefined) this.#timer = setTimeout(() => setHidden(this.#undo, true), undoFor);
  }

  #take(): void {
    setHidden(this.#undo, true);
    this.view?.undo?.();
  }
}

define("rs-outcome", Outcome);
