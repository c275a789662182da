// Notes after a ride, in one's own words.

import { el } from "../../../ui/el.ts";
import { keyed } from "../../../ui/keyed.ts";
import { actName, define, Part, setText } from "../../../ui/part.ts";
import { w } from "../../../words/index.ts";

export const noteSaved = actName<string>("rs-note-saved");

export interface NoteLine {
  readonly rec: string;
  readonly words: string;
}

export class Notes extends Part<readonly NoteLine[]> {
  readonly #text = el("textarea", { class: "entry", maxlength: 2000 });
  readonly #list = el("ul", { class: "plain stack" });

  protected override build(): void {
    this.#text.rows = 2;
    this.append(el("div", { class: "stack" },
      el("label", { class: "named" }, w("notes.field"), this.#text),
      el("button", { type: "button", class: "button", on: { click: () => this.#save() } }, w("notes.save")),
      this.#list));
  }

  protected override show(notes: readonly NoteLine[]): void {
    keyed(this.#list, notes, (each) => each.rec, () => el("li"), (node, each) => setText(node, each.words));
  }

  #save(): void {
    const text = this.#text.value.trim();
    if (text === "") return this.#text.focus();
    this.act(noteSaved, text);
  }

  // empty clears the field once its text is on the disk.
  empty(): void {
    this.#text.value = "";
  }
}

define("rs-notes", Notes);
