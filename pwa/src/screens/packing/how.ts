// How a step is done: its sentences, what was written down for it, and a place to write it down.

import { builtWords, missingWords, runoutWords } from "../../book/packing/as_built.ts";
import type { StepView } from "../../book/packing/pack_view.ts";
import { noteWords } from "../../book/packing/step_words.ts";
import { el } from "../../ui/el.ts";
import { keyed } from "../../ui/keyed.ts";
import { define, Part, setHidden, setText } from "../../ui/part.ts";
import type { Ctx } from "../../ui/screen.ts";
import { BuiltForm } from "./built_form.ts";
import type { PackedBike } from "./packed.ts";

export interface HowView {
  readonly ctx: Ctx;
  readonly trip: string;
  readonly bike: PackedBike;
  readonly step: StepView;
  readonly out: number; // when the wheel of this step came out; 0 for not
}

export class How extends Part<HowView> {
  readonly #notes = el("div", { class: "stack tight" });
  readonly #built = el("p", { class: "built" });
  #form: BuiltForm | undefined;

  protected override build(): void {
    this.append(el("div", { class: "stack how" }, this.#notes, this.#built));
  }

  protected override show({ ctx, trip, bike, step: { step }, out }: HowView): void {
    const notes = noteWords(step, ctx.settings.units);
    keyed(this.#notes, notes.map((words, n) => ({ words, n })), ({ n }) => `${n}`, () => el("p"), (p, { words }) => setText(p, words));
    const writes = step.id === "as_built" || step.notes.includes("runout_compare");
    const built = step.id === "as_built" ? missingWords(step, bike.built) : runoutWords(step, bike.built, out) || builtWords(step, bike.built);
    setText(this.#built, built);
    setHidden(this.#built, built === "");
    if (writes && this.#form === undefined) this.firstElementChild?.append((this.#form = new BuiltForm()));
    if (this.#form === undefined) return;
    setHidden(this.#form, !writes);
    if (writes) this.#form.view = { ctx, trip, bike, step };
  }
}

define("rs-pack-how", How);
