// The word that has to be typed before something is erased for good.

import { el } from "../../ui/el.ts";
import { setText } from "../../ui/part.ts";
import { w } from "../../words/index.ts";

export class EraseForm {
  readonly #word = el("input", { class: "entry", type: "text", id: "erase-person-word", autocomplete: "off", spellcheck: "false", enterkeyhint: "done" });
  readonly #said = el("p", { class: "fault", role: "alert" });
  readonly #button = el("button", { type: "submit", class: "button" }, w("forget.button"));
  readonly node: HTMLFormElement;

  constructor(erase: () => void) {
    this.node = el("form", { class: "card stack" },
      el("label", { for: "erase-person-word" }, w("forget.type", { word: w("erase.word") })), this.#word, this.#said, el("p", {}, this.#button));
    this.node.addEventListener("submit", (event) => {
      event.preventDefault();
      this.#submit(erase);
    });
  }

  #submit(erase: () => void): void {
    if (this.#word.value.trim().toLocaleUpperCase() !== w("erase.word")) {
      this.say(w("erase.wrong", { word: w("erase.word") }));
      this.#word.focus();
      return;
    }
    this.#button.disabled = true;
    this.say(w("forget.busy"));
    erase();
  }

  say(words: string): void {
    setText(this.#said, words);
  }

  end(failed: string): void {
    this.#button.disabled = false;
    if (failed === "") this.#word.value = "";
    this.say(failed);
  }
}
