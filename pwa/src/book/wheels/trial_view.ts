// What the trial page says: the arms, the runs, what comes next, and what was shown, honestly.

import type { Side } from "../pressure/answer.ts";
import { type PressureUnit, showKpa } from "../value/quantity.ts";
import { type RecordState, valueOf } from "../../log/op/merge.ts";
import { facts, listed, sentences, w } from "../../words/index.ts";
import { fixed, plain } from "../../words/number.ts";
import { dayWords } from "../value/when.ts";
import { isObject } from "../pressure/answer.ts";
import { type ArmName, armNames, type ArmsRead, type ArmValue, type Basis, type Better, type Judged, looks, nextSlot, type Run, type TrialDraft } from "./trial.ts";

// armIs tells what an arm is: "front 2.00 bar, rear 2.10 bar", or the tyre.
export function armIs({ tyre, gauge }: ArmValue, unit: PressureUnit): string {
  if (tyre !== "") return tyre;
  return listed((["front", "rear"] as const).flatMap((side) => {
    const kpa = gauge[side];
    return kpa === undefined ? [] : [w("trial.gauge", { side: w(`ride.side.${side}`), p: showKpa(kpa, unit), unit: w(`unit.${unit}`) })];
  }));
}

export function armWords(name: ArmName, arms: readonly ArmValue[], unit: PressureUnit): string {
  const arm = arms.find((each) => each.name === name);
  const is = arm === undefined ? "" : armIs(arm, unit);
  return is === "" ? name : w("trial.armIs", { arm: name, is });
}

// limitsOf are the readings that a wheel takes today, on its gauge.
export function limitsOf(basis: Basis, error: number, unit: PressureUnit): { readonly low: string; readonly high: string; readonly unit: string } {
  return { low: showKpa(basis.floor_kpa + error, unit), high: showKpa((basis.ceiling_kpa ?? basis.recommended_kpa) + error, unit), unit: w(`unit.${unit}`) };
}

// faultWords say what is wrong with an arm's field; "" for nothing.
export function faultWords(why: ArmsRead["faults"][string] | undefined, basis: Basis | undefined, error: number, unit: PressureUnit): string {
  switch (why) {
    case undefined: return "";
    case "number": return w("trial.fault.number", { example: unit === "psi" ? "30" : unit === "kpa" ? "210" : "2.1" });
    case "low": return basis === undefined ? "" : w("trial.fault.low", limitsOf(basis, error, unit));
    case "high": return basis === undefined ? "" : w("trial.fault.high", limitsOf(basis, error, unit));
    default: return w(`trial.fault.${why}`);
  }
}

export function unitOf(better: Better): string {
  return w(`trial.unit.${better}`);
}

// decimals of what is read: a hand on a watch is no surer than a tenth.
function shown(value: number): string {
  return fixed(value, 2);
}

export interface RunLine {
  readonly key: string;
  readonly line: string;
  readonly struck: boolean;
  readonly at: number;
}

export function runLines({ runs, better }: Pick<TrialDraft, "runs" | "better">): readonly RunLine[] {
  return runs.map((run, n) => ({ key: String(run.at), line: runWords(run, n + 1, better), struck: run.why !== "", at: run.at }));
}

export function runWords(run: Run, n: number, better: Better): string {
  const value = w("recValue.with", { n: plain(run.value), unit: unitOf(better) });
  const air = facts([run.wind === "" ? "" : w(`trial.windOf.${run.wind}` as "trial.windOf.still"), run.c === null ? "" : w("recValue.with", { n: plain(run.c), unit: w("unit.c") })].filter((each) => each !== ""));
  const line = w("trial.run", { n, arm: run.arm, value });
  const whole = air === "" ? line : w("trial.runAir", { run: line, air });
  return run.why === "" ? whole : w("trial.struck", { run: whole, why: w(`trial.whyOf.${run.why}` as "trial.whyOf.other") });
}

// nextWords name the run that comes next; "" when all that were dealt are ridden.
export function nextWords(draft: TrialDraft, arms: readonly ArmValue[], unit: PressureUnit): string {
  const slot = nextSlot(draft);
  const arm = slot === undefined ? undefined : draft.order[slot];
  return slot === undefined || arm === undefined ? "" : w("trial.next", { n: slot + 1, all: draft.order.length, arm: armWords(arm, arms, unit) });
}

export interface ResultShown {
  readonly verdict: string;
  readonly lines: readonly string[];
  readonly goOn: string; // how many more runs would settle it, or that none will; "" when it is settled
}

// resultShown says what the runs have shown and what they have not.
export function resultShown(judged: Judged, { better, look, count }: Pick<TrialDraft, "better" | "look" | "count">, arms: readonly ArmValue[], pressure: PressureUnit): ResultShown {
  const unit = unitOf(better);
  const nearest = judged.pairs.find((pair) => pair.difference === judged.difference && pair.low === judged.low) ?? judged.pairs[0];
  const verdict = judged.best === null || nearest === undefined ? w("trial.none.shown")
    : w("trial.shown", { arm: named(judged.best, arms, pressure), by: shown(Math.abs(judged.difference ?? 0)), unit, other: nearest.first === judged.best ? nearest.second : nearest.first });
  const percent = (share: number): string => fixed(Math.min(0.999, Math.max(0.001, share)) * 100, 1);
  const pairs = judged.pairs.flatMap((pair): string[] => {
    if (pair.low === null || pair.high === null || pair.difference === null || pair.chance_first_better === null) return [];
    return [
      w("trial.interval", { first: pair.first, second: pair.second, by: shown(pair.difference), low: shown(pair.low), high: shown(pair.high), unit, percent: fixed(judged.level * 100, 1) }),
      w("trial.chance", { arm: pair.first, other: pair.second, percent: percent(pair.chance_first_better) }),
    ];
  });
  const means = judged.arms.flatMap(({ arm, runs, mean }) => (mean === null ? [] : [w("trial.mean", { arm: named(arm, arms, pressure), n: runs, value: w("recValue.with", { n: shown(mean), unit }) })]));
  const settled = judged.best !== null;
  const runs = judged.runs_to_settle;
  const goOn = settled ? "" : runs === null || (runs === 0 && count === 2) ? w("trial.moreNone") : runs === 0 ? "" : w("trial.more", { n: runs });
  return { verdict, lines: [...means, ...pairs, w("trial.lookOf", { n: look, all: looks })], goOn };
}

function named(arm: string, arms: readonly ArmValue[], unit: PressureUnit): string {
  const name = armNames.find((each) => each === arm);
  return name === undefined ? arm : armWords(name, arms, unit);
}

// whatWords is what a trial is called in the book.
export function whatWords(arms: readonly ArmValue[], unit: PressureUnit): string {
  return w("trial.what", { list: arms.map((arm) => armWords(arm.name, arms, unit)).join(" / ") }).slice(0, 80);
}

export interface PastTrial {
  readonly rec: string;
  readonly line: string;
}

// pastTrials are a bike's trials that stand, the newest first.
export function pastTrials(entries: readonly RecordState[], bike: string, now: number): readonly PastTrial[] {
  return entries.filter((entry) => entry.kind === "trial" && !entry.deleted && !entry.erased && valueOf(entry, "bike") === bike).sort((a, b) => b.newest - a.newest)
    .map((entry) => ({ rec: entry.rec, line: pastWords(entry, now) }));
}

function pastWords(entry: RecordState, now: number): string {
  const [day, what, values] = [valueOf(entry, "day"), valueOf(entry, "what"), valueOf(entry, "values")];
  const result = isObject(values) && isObject(values["result"]) ? values["result"] : {};
  const better: Better = isObject(values) && values["better"] === "more" ? "more" : "less";
  const [best, by] = [result["best"], result["difference"]];
  const words = typeof best === "string" && typeof by === "number" ? w("trial.pastShown", { arm: best, by: shown(Math.abs(by)), unit: unitOf(better) }) : w("trial.none.shown");
  return sentences([w("trial.pastLine", { day: typeof day === "string" ? dayWords(day, now) : "", what: typeof what === "string" ? what : "", result: words })]);
}

export function armFieldLabel(name: ArmName, side: Side): string {
  return w("trial.arm", { arm: name, side: w(`ride.side.${side}`) });
}

export function orderWords({ order }: Pick<TrialDraft, "order">): string {
  return w("trial.order", { order: order.join(" ") });
}
