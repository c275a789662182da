// What a trial compares: asked once, before the order is drawn.

import { type ArmsRead, armsOf, endsOf, type TrialDraft } from "../../book/wheels/trial.ts";
import { armFieldLabel, faultWords, limitsOf } from "../../book/wheels/trial_view.ts";
import type { PressureUnit } from "../../book/value/quantity.ts";
import { Choice } from "../../ui/choice.ts";
import { el } from "../../ui/el.ts";
import { Field, type FieldShown } from "../../ui/field.ts";
import { keyed } from "../../ui/keyed.ts";
import { actName, define, Part, setHidden, setText } from "../../ui/part.ts";
import { w } from "../../words/index.ts";

export interface SetupView {
  readonly draft: TrialDraft;
  readonly read: ArmsRead;
  readonly unit: PressureUnit;
  readonly pressed: boolean; // what is missing is said once somebody wanted to deal
}

export const dealWanted = actName<null>("rs-deal-wanted");

export class TrialSetup extends Part<SetupView> {
  readonly #kind = new Choice();
  readonly #count = new Choice();
  readonly #ends = new Choice();
  readonly #better = new Choice();
  readonly #rounds = new Choice();
  readonly #fields = el("div", { class: "fields" });
  readonly #how = el("p", { class: "small" });

  protected override build(): void {
    const deal = el("button", { type: "button", class: "button primary", on: { click: () => this.act(dealWanted, null) } }, w("trial.deal"));
    this.append(el("section", { class: "card stack" }, el("h2", {}, w("trial.setUp")), this.#kind, this.#count, this.#ends, this.#fields, this.#better, this.#rounds, this.#how, deal));
  }

  protected override show(view: SetupView): void {
    const { draft } = view;
    this.#kind.view = { name: "kind", legend: w("trial.kind"), value: draft.kind, options: (["pressure", "tyre"] as const).map((value) => ({ value, label: w(`trial.kindOf.${value}`) })) };
    this.#count.view = { name: "count", legend: w("trial.count"), value: String(draft.count), options: plain("2", "3") };
    this.#ends.view = { name: "ends", legend: w("trial.ends"), value: draft.ends, options: (["both", "front", "rear"] as const).map((value) => ({ value, label: w(`trial.end.${value}`) })) };
    this.#better.view = { name: "better", legend: w("trial.better"), value: draft.better, options: (["less", "more"] as const).map((value) => ({ value, label: w(`trial.betterOf.${value}`) })) };
    this.#rounds.view = { name: "rounds", legend: w("trial.rounds"), value: String(draft.rounds), options: plain("1", "2", "3") };
    setHidden(this.#ends, draft.kind === "tyre");
    keyed(this.#fields, asked(view), ({ id }) => id, () => new Field(), (field, shown) => (field.view = shown));
    setText(this.#how, w("trial.roundsHow", { n: draft.rounds * (draft.count === 3 ? 9 : 4) }));
  }

  // goToFault leads to the first field that is wrong.
  goToFault(): void {
    this.#fields.querySelector<HTMLElement>("[aria-invalid]")?.focus();
  }
}

function plain(...values: readonly string[]): readonly { value: string; label: string }[] {
  return values.map((value) => ({ value, label: value }));
}

function asked(view: SetupView): readonly FieldShown[] {
  const { draft, unit } = view;
  return armsOf(draft).flatMap((name): FieldShown[] => (draft.kind === "tyre" ? [field(view, `${name}.name`, w("trial.tyre", { arm: name }), "", null)]
    : endsOf(draft).map((side) => {
      const basis = draft.basis[side];
      const range = basis === undefined ? w("trial.fault.none") : w("trial.range", limitsOf(basis, draft.error_kpa, unit));
      return field(view, `${name}.${side}`, armFieldLabel(name, side), w(`unit.${unit}`), range);
    })));
}

function field({ draft, read, unit, pressed }: SetupView, id: string, label: string, beside: string, range: string | null): FieldShown {
  const why = read.faults[id];
  const quiet = why === "none" || (!pressed && (why === "missing" || why === "same")); // the range says it already, or nobody asked yet
  const fault = quiet ? "" : faultWords(why, draft.basis[id.endsWith("front") ? "front" : "rear"], draft.error_kpa, unit);
  return { id, label, spoken: label, text: draft.texts[id] ?? "", unit: beside, range, fault, signed: beside === "", step: 0 };
}

define("rs-trial-setup", TrialSetup);
