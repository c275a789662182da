// What the buttons and the rider's notes make of the numbers, and the choice to leave the notes out.

import { el } from "../../../ui/el.ts";
import { keyed } from "../../../ui/keyed.ts";
import { actName, define, Part, setText } from "../../../ui/part.ts";
import { w } from "../../../words/index.ts";

export const notesLeftOut = actName<boolean>("rs-notes-left-out");

export interface LearntView {
  readonly firm: string;
  readonly moved: readonly string[];
  readonly plain: boolean;
}

export class Learnt extends Part<LearntView> {
  readonly #firm = el("p");
  readonly #moved = el("div");
  readonly #box = el("input", { type: "checkbox" });

  protected override build(): void {
    this.#box.addEventListener("change", () => this.act(notesLeftOut, this.#box.checked));
    this.append(el("div", { class: "stack" }, this.#firm, this.#moved, el("label", { class: "tick" }, this.#box, w("firm.plain")), el("p", { class: "small quiet" }, w("firm.how"))));
  }

  protected override show({ firm, moved, plain }: LearntView): void {
    setText(this.#firm, firm);
    keyed(this.#moved, moved.length === 0 ? [w("firm.noNotes")] : moved, (each) => each, () => el("p"), (node, words) => setText(node, words));
    this.#box.checked = plain;
  }
}

define("rs-learnt", Learnt);
