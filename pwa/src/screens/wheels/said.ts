// What came of the last edit stands at the lower edge of the screen, wherever on the page the edit was made; for ten
// seconds it can be taken back, then it goes.

import { el } from "../../ui/el.ts";
import { Outcome, undoFor } from "../../ui/outcome.ts";
import { define, Part, setHidden } from "../../ui/part.ts";
import type { Ctx } from "../../ui/screen.ts";
import { w } from "../../words/index.ts";
import { attempt } from "../shared/follow.ts";

export class Said extends Part {
  readonly #outcome = new Outcome();
  readonly #box = el("div", { class: "said" }, this.#outcome);
  #timer: ReturnType<typeof setTimeout> | undefined;

  protected override build(): void {
    this.append(this.#box);
    setHidden(this, true);
  }

  say(ctx: Ctx, words: string, undo?: () => Promise<unknown>, failed = false): void {
    clearTimeout(this.#timer);
    setHidden(this, words === "");
    const back = async (): Promise<void> => {
      const trouble = undo === undefined ? "" : await attempt(ctx, undo);
      this.say(ctx, trouble || w("things.undone"), undefined, trouble !== "");
    };
    this.#outcome.view = { words, failed, ...(undo && { undo: () => void back() }) };
    if (!failed) this.#timer = setTimeout(() => setHidden(this, true), undoFor);
  }

  stop(): void {
    clearTimeout(this.#timer);
  }
}

define("rs-said", Said);
