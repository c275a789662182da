// The run that comes next: with which arm, the clock, what was read, and in what air.

import { type ArmValue, nextSlot, type TrialDraft, winds } from "../../book/wheels/trial.ts";
import { nextWords, orderWords } from "../../book/wheels/trial_view.ts";
import type { PressureUnit } from "../../book/value/quantity.ts";
import { Choice } from "../../ui/choice.ts";
import { el } from "../../ui/el.ts";
import { Field } from "../../ui/field.ts";
import { actName, define, Part, setHidden, setText } from "../../ui/part.ts";
import { w } from "../../words/index.ts";
import { fixed } from "../../words/number.ts";

export interface RideView {
  readonly draft: TrialDraft;
  readonly arms: readonly ArmValue[];
  readonly unit: PressureUnit;
  readonly text: string; // what is typed of the run
  readonly fault: string;
}

export const clockPressed = actName<null>("rs-clock-pressed");
export const clockDropped = actName<null>("rs-clock-dropped");
export const runTyped = actName<null>("rs-run-typed");

const tick = 100; // ms between two looks at the clock

export class TrialRide extends Part<RideView> {
  readonly #next = el("p", { class: "spot", role: "status" });
  readonly #order = el("p", { class: "small quiet" });
  readonly #clock = el("p", { class: "clock" });
  readonly #start = press("button primary big", "", () => this.act(clockPressed, null));
  readonly #drop = press("button quiet", w("trial.dropClock"), () => this.act(clockDropped, null));
  readonly #value = new Field();
  readonly #wind = new Choice();
  readonly #warm = new Field();
  readonly #ask = el("div", { class: "stack" });
  #timer: ReturnType<typeof setInterval> | undefined;

  protected override build(): void {
    this.#ask.append(this.#next, this.#clock, el("div", { class: "row" }, this.#start, this.#drop), this.#value, press("button", w("trial.keep"), () => this.act(runTyped, null)), this.#wind, this.#warm);
    this.append(el("section", { class: "card stack riding" }, el("h2", {}, w("trial.ride")), el("p", { class: "small" }, w("trial.how")), this.#ask, this.#order));
  }

  protected override show({ draft, arms, unit, text, fault }: RideView): void {
    const running = draft.started > 0;
    setHidden(this.#ask, nextSlot(draft) === undefined);
    setText(this.#next, nextWords(draft, arms, unit));
    setText(this.#order, orderWords(draft));
    setText(this.#start, running ? w("trial.stop") : w("trial.start"));
    setHidden(this.#start, draft.better === "more");
    setHidden(this.#drop, !running);
    const label = w(`trial.value.${draft.better}`);
    this.#value.view = { id: "value", label, spoken: label, text, unit: w(`trial.unit.${draft.better}`), range: w(`trial.valueHint.${draft.better}`), fault, signed: true, step: 0 };
    this.#wind.view = { name: "wind", legend: w("trial.wind"), value: draft.wind, options: [...winds, "" as const].map((value) => ({ value, label: w(`trial.windOf.${value}`) })) };
    const warm = w("trial.temperature");
    this.#warm.view = { id: "c", label: warm, spoken: warm, text: draft.texts["c"] ?? "", unit: w("unit.c"), range: null, fault: "", signed: true, step: 0 };
    this.#run(draft.started);
  }

  goToValue(): void {
    this.#value.focus();
  }

  // run shows the running clock.
  #run(started: number): void {
    this.stop();
    setHidden(this.#clock, started === 0);
    if (started === 0) return;
    const show = (): void => setText(this.#clock, w("trial.clock", { s: fixed((Date.now() - started) / 1000, 1) }));
    show();
    this.#timer = setInterval(show, tick);
  }

  stop(): void {
    clearInterval(this.#timer);
  }
}

function press(kind: string, words: string, click: () => void): HTMLButtonElement {
  return el("button", { type: "button", class: kind, on: { click } }, words);
}

define("rs-trial-ride", TrialRide);
