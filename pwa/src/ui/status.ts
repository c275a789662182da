// The status line: is everything saved? A refusal is spelled out, with what still works.

import { facts, sentences, w } from "../words/index.ts";
import { el } from "./el.ts";
import { define, Part, setAttr, setText } from "./part.ts";

export interface StatusView {
  readonly save: "saved" | "saving" | "refused" | "full" | "silent";
  readonly sums: boolean; // can anything be calculated at the moment?
  readonly server: string; // how it stands with the server, "" where that goes without saying
}

const patience = 300; // ms: a save shorter than this is not worth a flicker

export class Status extends Part<StatusView> {
  readonly #line = el("p");
  #timer: ReturnType<typeof setTimeout> | undefined;

  protected override build(): void {
    this.append(this.#line);
  }

  protected override show(view: StatusView): void {
    clearTimeout(this.#timer);
    setAttr(this, "aria-busy", view.save === "saving" ? "true" : null); // at once, also where the words wait
    if (view.save === "saving" && this.#line.textContent !== "") {
      this.#timer = setTimeout(() => setText(this.#line, w("status.saving")), patience);
      return;
    }
    const broken = view.save !== "saved" && view.save !== "saving";
    // Only a refusal interrupts those who listen; "saved" after every key would be noise.
    setAttr(this.#line, "role", broken ? "alert" : null);
    setAttr(this.#line, "class", broken ? "notice care" : "quiet small");
    setText(this.#line, statusWords(view));
  }
}

export function statusWords(view: StatusView): string {
  if (view.save === "saved") return facts([w("status.saved"), view.server]);
  if (view.save === "saving") return w("status.saving");
  return sentences([w(`status.cannot.${view.save}`), view.sums ? w("status.works.sums") : w("status.works.none")]);
}

define("rs-status", Status);
