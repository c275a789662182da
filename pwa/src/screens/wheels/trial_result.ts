// What a trial has shown: nothing before all dealt runs are ridden and somebody asks to look.

import { type ArmValue, type Judged, looks, nextSlot, type TrialDraft } from "../../book/wheels/trial.ts";
import { resultShown } from "../../book/wheels/trial_view.ts";
import type { PressureUnit } from "../../book/value/quantity.ts";
import { el } from "../../ui/el.ts";
import { keyed } from "../../ui/keyed.ts";
import { actName, define, Part, setHidden, setText } from "../../ui/part.ts";
import { w } from "../../words/index.ts";

export interface ResultView {
  readonly draft: TrialDraft;
  readonly arms: readonly ArmValue[];
  readonly unit: PressureUnit;
  readonly judged: Judged | undefined;
}

export const resultAct = actName<"look" | "save" | "again">("rs-trial-result-act");

export class TrialResult extends Part<ResultView> {
  readonly #verdict = el("p", { class: "spot", role: "status" });
  readonly #lines = el("ul", { class: "unmarked stack small" });
  readonly #goOn = el("p");
  readonly #look = this.#press("look", "button primary", w("trial.lookAt"));
  readonly #save = this.#press("save", "button primary", w("trial.save"));
  readonly #again = this.#press("again", "button", "");

  protected override build(): void {
    this.append(el("section", { class: "card stack" }, el("h2", {}, w("trial.result")), this.#verdict, this.#lines, this.#goOn, el("div", { class: "row" }, this.#look, this.#save, this.#again)));
  }

  #press(what: "look" | "save" | "again", kind: string, words: string): HTMLButtonElement {
    return el("button", { type: "button", class: kind, on: { click: () => this.act(resultAct, what) } }, words);
  }

  protected override show({ draft, arms, unit, judged }: ResultView): void {
    const ready = nextSlot(draft) === undefined && draft.looked < draft.look;
    const shown = judged === undefined ? undefined : resultShown(judged, draft, arms, unit);
    setText(this.#verdict, shown?.verdict ?? (ready ? w("trial.ready") : w("trial.wait", { n: draft.order.length })));
    this.#verdict.classList.toggle("waiting", shown === undefined);
    keyed(this.#lines, shown?.lines ?? [], (text) => text, () => el("li"), setText);
    const settled = judged?.best != null;
    const last = draft.look >= looks;
    setText(this.#goOn, shown === undefined || settled ? "" : last ? w("trial.lastLook") : shown.goOn);
    setText(this.#again, w("trial.again", { n: draft.rounds * draft.round }));
    setHidden(this.#look, !ready);
    setHidden(this.#save, shown === undefined);
    setHidden(this.#again, shown === undefined || settled || last);
  }
}

define("rs-trial-result", TrialResult);
