// The next thing to do, large: one step, its tool, Done and How. It keeps its height, so that nothing below it jumps.

import type { StepView } from "../../book/packing/pack_view.ts";
import { stepWords, toolWords } from "../../book/packing/step_words.ts";
import { el } from "../../ui/el.ts";
import { actName, define, Part, setAttr, setHidden, setText } from "../../ui/part.ts";
import { w } from "../../words/index.ts";
import { How, type HowView } from "./how.ts";
import { Rest } from "./steady.ts";
import type { Ticked } from "./steps.ts";

export interface NextView extends Omit<HowView, "step"> {
  readonly step: StepView;
  readonly before: StepView | undefined; // what was just done, and may be taken back
}

export const nextDone = actName<Ticked>("rs-next-done");
export const nextUndone = actName<Ticked>("rs-next-undone");

export class Next extends Part<NextView> {
  readonly #title = el("h3", { class: "next-title" });
  readonly #tool = el("span", { class: "chip" });
  readonly #must = el("strong", {}, w("trip.must"));
  readonly #first = el("span", { class: "quiet" });
  readonly #done = el("button", { type: "button", class: "button primary big", on: { click: () => this.#press() } }, w("trip.done"));
  readonly #more = el("button", { type: "button", class: "button big", "aria-expanded": "false", on: { click: () => this.#open(this.#how.hidden !== false) } }, w("trip.how"));
  readonly #how = new How();
  readonly #undo = el("button", { type: "button", class: "button quiet flush", on: { click: () => this.#takeBack() } });
  readonly #rest = new Rest(this.#done);
  #shown = "";

  protected override build(): void {
    this.#how.hidden = true;
    this.append(el("section", { class: "card stack next" }, el("p", { class: "quiet" }, w("trip.next")), this.#title,
      el("p", { class: "row next-with" }, this.#tool, this.#must, this.#first), el("div", { class: "next-acts" }, this.#done, this.#more), this.#how, this.#undo));
  }

  protected override show(view: NextView): void {
    const { step, before } = view;
    if (this.#shown !== step.key) {
      if (this.#shown !== "") this.#rest.begin();
      this.#shown = step.key;
      this.#open(false);
    }
    setText(this.#title, stepWords(step.step));
    setText(this.#tool, toolWords(step.step.tool));
    setHidden(this.#tool, step.step.tool === "");
    setHidden(this.#must, !step.step.must);
    setText(this.#first, step.after === undefined ? "" : w("trip.waits", { what: stepWords(step.after) }));
    setText(this.#undo, before === undefined ? "" : w("trip.nextAfter", { what: stepWords(before.step) }));
    this.#undo.style.visibility = before === undefined ? "hidden" : "";
    this.#how.view = view;
  }

  #open(open: boolean): void {
    setHidden(this.#how, !open);
    setAttr(this.#more, "aria-expanded", open);
  }

  #press(): void {
    const { step } = this.view ?? {};
    if (step !== undefined && this.#rest.over) this.act(nextDone, { bike: step.bike, step: step.step.id, ticked: true });
  }

  #takeBack(): void {
    const { before } = this.view ?? {};
    if (before !== undefined) this.act(nextUndone, { bike: before.bike, step: before.step.id, ticked: false });
  }
}

define("rs-next", Next);
