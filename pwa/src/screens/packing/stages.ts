// Steps under the headings of their stages. A stage that is done shows how many were; the one with the next step is open.

import { stagesOf, type StageView } from "../../book/packing/pack_view.ts";
import { el } from "../../ui/el.ts";
import { keyed } from "../../ui/keyed.ts";
import { define, Part, setText } from "../../ui/part.ts";
import { w } from "../../words/index.ts";
import type { HowView } from "./how.ts";
import { Steps } from "./steps.ts";

export class Stages extends Part<readonly HowView[]> {
  readonly #parts = new Map<string, StagePart>();

  protected override build(): void {}

  protected override show(views: readonly HowView[]): void {
    const how = new Map(views.map((view) => [view.step.key, view]));
    keyed(this, stagesOf(views.map(({ step }) => step)), ({ stage }) => stage, ({ stage }) => {
      const part = new StagePart();
      this.#parts.set(stage, part);
      return part;
    }, (part, stage) => (part.view = { stage, how: stage.views.flatMap(({ key }) => how.get(key) ?? []) }));
  }

  // only opens one stage and closes the others; also opens one more. Only what lies below a finger may close.
  only(stage: string | undefined): void {
    for (const [name, part] of this.#parts) part.open = name === stage;
  }

  also(stage: string | undefined): void {
    const part = this.#parts.get(stage ?? "");
    if (part !== undefined) part.open = true;
  }
}

interface PartView {
  readonly stage: StageView;
  readonly how: readonly HowView[];
}

class StagePart extends Part<PartView> {
  readonly #name = el("span");
  readonly #count = el("span", { class: "quiet" });
  readonly #steps = new Steps();
  readonly #details = el("details", {}, el("summary", {}, el("h3", {}, this.#name, " ", this.#count)), el("div", { class: "card" }, this.#steps));

  protected override build(): void {
    this.append(this.#details);
  }

  set open(open: boolean) {
    this.#details.open = open;
  }

  protected override show({ stage: { stage, views, done }, how }: PartView): void {
    setText(this.#name, w(`stage.${stage}`));
    setText(this.#count, done === views.length ? w("trip.stageDone", { n: done }) : w("trip.stageOf", { done, of: views.length }));
    this.#steps.view = how;
  }
}

define("rs-stage", StagePart);
define("rs-stages", Stages);
