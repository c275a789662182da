// "I set it", with what was set last; and notes after a ride.

import { el } from "../../../ui/el.ts";
import { keyed } from "../../../ui/keyed.ts";
import { actName, define, Part, setHidden, setText } from "../../../ui/part.ts";
import { w } from "../../../words/index.ts";
import type { OpenFinding } from "../bikes/open_findings.ts";

export const wasSet = actName<undefined>("rs-was-set");
export const wasSame = actName<undefined>("rs-was-same");
export const noteSaved = actName<string>("rs-note-saved");
export const entryUndone = actName<undefined>("rs-entry-undone");

export interface NoteLine {
  readonly rec: string;
  readonly words: string;
}

export interface NotedView {
  readonly last: string; // what was set last
  readonly expected: readonly string[]; // what the gauges should read, and why
  readonly warm: boolean; // a reading is so high that the tyre is warm, most likely
  readonly notes: readonly NoteLine[];
  readonly open: readonly OpenFinding[]; // found on this bike and not closed
  readonly done: string; // what was just noted; "" when nothing can be undone
}

// SetIt stands with the readings.
export class SetIt extends Part<NotedView> {
  readonly #last = el("p", { class: "quiet small" });
  readonly #same = el("button", { type: "button", class: "button", on: { click: () => this.act(wasSame, undefined) } }, w("set.same"));
  readonly #expected = el("div", { class: "small" });
  readonly #warm = el("p", { class: "notice care" }, w("expect.sun"));
  readonly #done = el("p", { role: "status" });
  readonly #undo = el("button", { type: "button", class: "button", on: { click: () => this.act(entryUndone, undefined) } }, w("ground.undo"));

  protected override build(): void {
    this.append(el("div", { class: "stack" }, this.#expected, this.#warm,
      el("div", { class: "presses" },
        el("button", { type: "button", class: "button", on: { click: () => this.act(wasSet, undefined) } }, w("set.button")), this.#same),
      el("div", { class: "row" }, this.#done, this.#undo), this.#last));
  }

  protected override show({ last, expected, warm, done }: NotedView): void {
    keyed(this.#expected, expected, (each) => each, () => el("p"), (node, words) => setText(node, words));
    setHidden(this.#expected, expected.length === 0);
    setHidden(this.#warm, !warm);
    setHidden(this.#same, last === "");
    setText(this.#last, last);
    setHidden(this.#last, last === "" || expected.length > 0); // what is expected tells it already
    setText(this.#done, done);
    setHidden(this.#undo, done === "");
  }
}

export class Notes extends Part<NotedView> {
  readonly #text = el("textarea", { class: "entry", maxlength: 2000 });
  readonly #list = el("ul", { class: "plain stack" });

  protected override build(): void {
    this.#text.rows = 2;
    this.append(el("div", { class: "stack" },
      el("label", { class: "named" }, w("notes.field"), this.#text),
      el("button", { type: "button", class: "button", on: { click: () => this.#save() } }, w("notes.save")),
      this.#list));
  }

  protected override show({ notes }: NotedView): void {
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

define("rs-set-it", SetIt);
define("rs-notes", Notes);
