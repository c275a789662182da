// The steps of one stage, each with a large box to tick; the rest of a step on a tap.

import type { StepView } from "../../book/packing/pack_view.ts";
import { stepWords, toolWords } from "../../book/packing/step_words.ts";
import { el } from "../../ui/el.ts";
import { keyed } from "../../ui/keyed.ts";
import { actName, define, Part, setAttr, setHidden, setText } from "../../ui/part.ts";
import { w } from "../../words/index.ts";
import { How, type HowView } from "./how.ts";

export interface Ticked {
  readonly bike: string;
  readonly step: string;
  readonly ticked: boolean;
}

export const stepTicked = actName<Ticked>("rs-step-ticked");

export class Steps extends Part<readonly HowView[]> {
  readonly #list = el("ul", { class: "unmarked to-tick" });

  protected override build(): void {
    this.append(this.#list);
  }

  protected override show(views: readonly HowView[]): void {
    keyed(this.#list, views, ({ step }) => step.key, () => new StepPart(), (part, view) => (part.view = view));
  }
}

class StepPart extends Part<HowView> {
  readonly #box = el("input", { type: "checkbox" });
  readonly #title = el("strong");
  readonly #waits = el("span", { class: "quiet small block" });
  readonly #tool = el("span", { class: "chip" });
  readonly #more = el("button", { type: "button", class: "step-more", "aria-expanded": "false", on: { click: () => this.#open(this.#how?.hidden !== false) } },
    el("span", {}, this.#title, this.#waits), this.#tool);
  #how: How | undefined; // made once somebody asks

  protected override build(): void {
    this.setAttribute("role", "listitem");
    this.#box.addEventListener("change", () => {
      const { bike, step } = this.view?.step ?? {};
      if (bike !== undefined && step !== undefined) this.act(stepTicked, { bike, step: step.id, ticked: this.#box.checked });
    });
    this.append(el("div", { class: "step" }, el("label", { class: "tick" }, this.#box), this.#more));
  }

  protected override show(view: HowView): void {
    const { step, ticked, after }: StepView = view.step;
    this.#box.checked = ticked;
    setAttr(this.#box, "aria-label", stepWords(step));
    setText(this.#title, stepWords(step));
    setText(this.#tool, toolWords(step.tool));
    setHidden(this.#tool, step.tool === "");
    // Its room stays: a list that moves under the finger has the wrong step ticked.
    if (after !== undefined) setText(this.#waits, w("trip.waits", { what: stepWords(after) }));
    setHidden(this.#waits, after === undefined && this.#waits.textContent === "");
    this.#waits.style.visibility = ticked || after === undefined ? "hidden" : "";
    if (this.#how !== undefined) this.#how.view = view;
  }

  #open(open: boolean): void {
    if (this.#how === undefined) {
      this.#how = new How();
      if (this.view !== undefined) this.#how.view = this.view;
      this.append(this.#how);
    }
    setHidden(this.#how, !open);
    setAttr(this.#more, "aria-expanded", open);
  }
}

define("rs-step", StepPart);
define("rs-steps", Steps);
