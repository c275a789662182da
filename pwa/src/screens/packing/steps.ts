// A list of steps with a large box to tick for each; what waits for another step says for which.

import type { StepView } from "../../book/packing/pack_view.ts";
import { el } from "../../ui/el.ts";
import { keyed } from "../../ui/keyed.ts";
import { actName, define, Part, setHidden, setText } from "../../ui/part.ts";
import { w } from "../../words/index.ts";

export interface Ticked {
  readonly bike: string;
  readonly step: string;
  readonly ticked: boolean;
}

export const stepTicked = actName<Ticked>("rs-step-ticked");

export class Steps extends Part<readonly StepView[]> {
  readonly #list = el("ol", { class: "unmarked to-tick" });

  protected override build(): void {
    this.append(this.#list);
  }

  protected override show(views: readonly StepView[]): void {
    keyed(this.#list, views, ({ key }) => key, () => new StepPart(), (part, view) => {
      if (!same(part.view, view)) part.view = view;
    });
  }
}

function same(a: StepView | undefined, b: StepView): boolean {
  return a !== undefined && a.ticked === b.ticked && a.waits === b.waits && a.built === b.built && a.step.text === b.step.text && a.step.tool === b.step.tool;
}

class StepPart extends Part<StepView> {
  readonly #box = el("input", { type: "checkbox" });
  readonly #text = el("span");
  readonly #tool = el("span", { class: "quiet small block" });
  readonly #built = el("strong", { class: "small block" });
  readonly #waits = el("span", { class: "small block" });

  protected override build(): void {
    this.setAttribute("role", "listitem");
    this.#box.addEventListener("change", () => {
      const { bike, step } = this.view ?? {};
      if (bike !== undefined && step !== undefined) this.act(stepTicked, { bike, step: step.id, ticked: this.#box.checked });
    });
    this.append(el("label", { class: "step" }, this.#box, el("span", {}, this.#text, this.#tool, this.#built, this.#waits)));
  }

  protected override show({ step, ticked, built, waits }: StepView): void {
    this.#box.checked = ticked;
    setText(this.#text, step.text);
    setText(this.#tool, step.tool === "" ? "" : w("trip.tool", { tool: step.tool }));
    setHidden(this.#tool, step.tool === "");
    setText(this.#built, built);
    setHidden(this.#built, built === "");
    if (waits !== "") setText(this.#waits, w("trip.waits", { what: waits }));
    // Its room stays: a list that moves under the finger has the wrong step ticked.
    setHidden(this.#waits, waits === "" && this.#waits.textContent === "");
    this.#waits.style.visibility = ticked || waits === "" ? "hidden" : "";
  }
}

define("rs-step", StepPart);
define("rs-steps", Steps);
