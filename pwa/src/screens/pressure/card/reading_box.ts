// The box for a gauge's reading: what is expected until something was read. A tap opens the keys.

import { el } from "../../../ui/el.ts";
import { typed } from "../../../ui/field.ts";
import { actName, define, Part, setAttr, setHidden, setText } from "../../../ui/part.ts";
import { w } from "../../../words/index.ts";

export interface ReadingView {
  readonly side: "front" | "rear";
  readonly text: string; // as typed
  readonly shown: string; // "2.75", with its unit where one was typed
  readonly expected: string; // "" when nothing is expected
  readonly fault: string;
  readonly warm: string; // a reading so high that the tyre is warm, most likely
  readonly why: string; // what the expected reading rests on
}

export const boxEntered = actName<undefined>("rs-box-entered");

let made = 0;

export class ReadingBox extends Part<ReadingView> {
  readonly #input = el("input", { type: "text", autocomplete: "off", spellcheck: "false", enterkeyhint: "done", inputmode: "none", maxlength: 16 });
  readonly #first = el("span", { class: "first" });
  readonly #then = el("span", { class: "then", "aria-hidden": "true" });
  readonly #fault = el("p", { class: "fault" });

  protected override build(): void {
    const id = `reading-${++made}`;
    this.#fault.id = id;
    this.#input.setAttribute("aria-describedby", id);
    // The keys open where the thumb is; a desk's keyboard works as well.
    this.#input.addEventListener("focus", () => this.act(boxEntered, undefined));
    this.#input.addEventListener("input", () => this.act(typed, { id: `now.${this.view?.side ?? "front"}`, text: this.#input.value }));
    this.append(el("label", { class: "box" }, this.#first, this.#then, this.#input));
  }

  get fault(): HTMLElement {
    return this.#fault;
  }

  protected override show({ side, text, shown, expected, fault }: ReadingView): void {
    setAttr(this.#input, "aria-label", w(`field.now.${side}`));
    setAttr(this.#input, "aria-invalid", fault === "" ? null : "true");
    const blank = text.trim() === "";
    setText(this.#first, !blank ? w("read.you", { p: shown }) : expected === "" ? w("read.none") : w("read.expect", { p: expected }));
    setText(this.#then, blank ? w("read.type") : w("read.change"));
    setText(this.#fault, fault);
    setHidden(this.#fault, fault === "");
    if (this.#input.value !== text) this.#input.value = text;
  }

  override focus(): void {
    this.#input.focus();
  }
}

define("rs-reading-box", ReadingBox);
