// The trials of a bike that are over. One is removed, and for ten seconds brought back.

import { pastTrials } from "../../book/wheels/trial_view.ts";
import type { RecordState } from "../../log/op/merge.ts";
import { el } from "../../ui/el.ts";
import { keyed } from "../../ui/keyed.ts";
import { actName, define, Part, setAttr, setHidden, setText } from "../../ui/part.ts";
import { w } from "../../words/index.ts";

export interface PastView {
  readonly trials: readonly RecordState[];
  readonly bike: string;
}

export const trialRemoved = actName<string>("rs-trial-removed");

export class TrialPast extends Part<PastView> {
  readonly #none = el("p", {}, w("trial.pastNone"));
  readonly #list = el("ul", { class: "unmarked stack" });

  protected override build(): void {
    this.append(el("section", { class: "card stack" }, el("h2", {}, w("trial.past")), this.#none, this.#list, el("p", { class: "small" }, w("trial.tested"))));
  }

  protected override show({ trials, bike }: PastView): void {
    const past = pastTrials(trials, bike, Date.now());
    setHidden(this.#none, past.length > 0);
    keyed(this.#list, past, ({ rec }) => rec, () => el("li", { class: "row spread" }, el("span"), el("button", { type: "button", class: "button quiet" }, w("trial.remove"))), (node, { rec, line }) => {
      const [words, button] = node.children as unknown as [HTMLElement, HTMLButtonElement];
      setText(words, line);
      setAttr(button, "aria-label", w("trial.removeOf", { line }));
      button.onclick = () => this.act(trialRemoved, rec);
    });
  }
}

define("rs-trial-past", TrialPast);
