// Speaks to people who listen to the page: only the last words, and only after a second's rest. What was said before is taken away
// at once: nobody may find a number there that no longer holds.

import { el } from "./el.ts";
import { setText } from "./part.ts";

const rest = 1000; // ms

export class Voice {
  readonly node = el("p", { class: "unseen", "aria-live": "polite" });
  #timer: ReturnType<typeof setTimeout> | undefined;

  say(words: string): void {
    clearTimeout(this.#timer);
    if (this.node.textContent !== words) setText(this.node, "");
    this.#timer = setTimeout(() => setText(this.node, words), rest);
  }
}
