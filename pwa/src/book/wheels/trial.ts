// A trial of two or three pressures or tyres: what is compared, the order that was dealt, and the runs as they were ridden.

import type { Answers, Requests } from "../../contract/contract.ts";
import { isObject, type Side, sides } from "../pressure/answer.ts";
import { parse, type PressureUnit } from "../value/quantity.ts";

export const armNames = ["A", "B", "C"] as const;
export type ArmName = (typeof armNames)[number];
export const winds = ["still", "light", "breeze", "strong"] as const;
export const whys = ["braked", "traffic", "line", "watch", "wind", "other"] as const;
export type Kind = "pressure" | "tyre";
export type Ends = Side | "both";
export type Better = "less" | "more";

// looks is how often one trial may be looked at; each look asks for more because of it (our choice).
export const looks = 3;

// Run is one ride down or round: which place of the dealt order it fills, what was read, and in what air.
export interface Run {
  readonly slot: number;
  readonly arm: ArmName;
  readonly value: number;
  readonly why: string; // why it was struck out; "" while it counts
  readonly wind: string; // "" for not noted
  readonly c: number | null;
  readonly at: number;
}

// Basis is what Pressure said of a wheel when the trial was dealt: what its shift is learnt against, and its limits.
export interface Basis {
  readonly p0_kpa: number;
  readonly floor_kpa: number;
  readonly ceiling_kpa: number | null;
  readonly recommended_kpa: number;
  readonly label_mm: number;
  readonly sidewall: string;
  readonly setup: string;
}

export interface TrialDraft {
  readonly kind: Kind;
  readonly ends: Ends;
  readonly better: Better;
  readonly count: 2 | 3;
  readonly texts: Readonly<Record<string, string>>;
  readonly wind: string;
  readonly order: readonly ArmName[]; // empty until it was dealt
  readonly round: number; // runs in one round
  readonly rounds: number; // of the first look
  readonly seed: number;
  readonly look: number; // which look comes next, from 1
  readonly looked: number; // how many looks were taken
  readonly runs: readonly Run[];
  readonly started: number; // when the clock was started; 0 while it stands
  readonly basis: Readonly<Partial<Record<Side, Basis>>>;
  readonly error_kpa: number; // the gauge's, when it was dealt
}

export const noTrial: TrialDraft = {
  kind: "pressure", ends: "both", better: "less", count: 2, texts: {}, wind: "", order: [], round: 0, rounds: 2, seed: 0, look: 1, looked: 0, runs: [], started: 0, basis: {}, error_kpa: 0,
};

// readTrialDraft reads what was stored; what cannot be read is as at the start.
export function readTrialDraft(stored: unknown): TrialDraft {
  if (!isObject(stored) || !isObject(stored["texts"]) || !Array.isArray(stored["order"]) || !Array.isArray(stored["runs"])) return noTrial;
  return { ...noTrial, ...(stored as unknown as Partial<TrialDraft>) };
}

export function endsOf({ ends }: Pick<TrialDraft, "ends">): readonly Side[] {
  return ends === "both" ? sides : [ends];
}

export function armsOf({ count }: Pick<TrialDraft, "count">): readonly ArmName[] {
  return armNames.slice(0, count);
}

// ArmValue is what one arm is: gauge readings, or a tyre's name.
export interface ArmValue {
  readonly name: ArmName;
  readonly tyre: string;
  readonly gauge: Readonly<Partial<Record<Side, number>>>; // kPa
}

export interface ArmsRead {
  readonly arms: readonly ArmValue[];
  readonly faults: Readonly<Record<string, "number" | "low" | "high" | "none" | "same" | "missing">>; // by field
}

// readArms reads what is to be compared; pressures outside a wheel's limits are refused.
export function readArms(draft: TrialDraft, unit: PressureUnit): ArmsRead {
  const faults: Record<string, ArmsRead["faults"][string]> = {};
  const arms = armsOf(draft).map((name): ArmValue => {
    if (draft.kind === "tyre") {
      const tyre = (draft.texts[`${name}.name`] ?? "").trim();
      if (tyre === "") faults[`${name}.name`] = "missing";
      return { name, tyre, gauge: {} };
    }
    const gauge: Partial<Record<Side, number>> = {};
    for (const side of endsOf(draft)) {
      const id = `${name}.${side}`;
      const basis = draft.basis[side];
      const parsed = parse(draft.texts[id] ?? "", "pressure", unit);
      if (basis === undefined) faults[id] = "none";
      else if ("fault" in parsed) faults[id] = parsed.fault === "empty" ? "missing" : "number";
      else {
        const kpa = Math.round(parsed.si / 100) / 10;
        const held = kpa - draft.error_kpa;
        if (held < basis.floor_kpa - 0.05) faults[id] = "low";
        else if (held > (basis.ceiling_kpa ?? basis.recommended_kpa) + 0.05) faults[id] = "high";
        else gauge[side] = kpa;
      }
    }
    return { name, tyre: "", gauge };
  });
  const same = (a: ArmValue, b: ArmValue): boolean => a.tyre === b.tyre && sides.every((side) => a.gauge[side] === b.gauge[side]);
  if (Object.keys(faults).length === 0) arms.forEach((arm, n) => {
    if (arms.slice(0, n).some((other) => same(other, arm))) faults[draft.kind === "tyre" ? `${arm.name}.name` : `${arm.name}.${endsOf(draft)[0] ?? "front"}`] = "same";
  });
  return { arms, faults };
}

// readValue reads a time ("1:02.35", "62,35") in seconds, or a distance in metres; undefined for what is none.
export function readValue(text: string): number | undefined {
  const [, minutes, seconds = ""] = /^\s*(?:(\d{1,2}):)?(\d{1,4}(?:[.,]\d{1,3})?)\s*(?:s|m)?\s*$/.exec(text) ?? [];
  if (seconds === "") return undefined;
  const rest = Number(seconds.replace(",", "."));
  if (minutes !== undefined && rest >= 60) return undefined;
  const value = Math.round((Number(minutes ?? 0) * 60 + rest) * 1000) / 1000;
  return value > 0 ? value : undefined;
}

export const counts = (run: Run): boolean => run.why === "";

// nextSlot is the first place of the order without a run that counts; undefined when all are ridden.
export function nextSlot({ order, runs }: Pick<TrialDraft, "order" | "runs">): number | undefined {
  const slot = order.findIndex((_, n) => !runs.some((run) => run.slot === n && counts(run)));
  return slot < 0 ? undefined : slot;
}

// mayStrike: a run that a look has counted stands. Who could strike it out then would choose by its time.
export function mayStrike({ look, looked, rounds, round }: Pick<TrialDraft, "look" | "looked" | "rounds" | "round">, run: Pick<Run, "slot">): boolean {
  return looked < look && run.slot >= (look - 1) * rounds * round;
}

export type Judged = Answers["trial"];

// trialQuestion asks what the runs have shown.
export function trialQuestion(draft: TrialDraft): Requests["trial"] {
  return { arms: armsOf(draft), runs: draft.runs.map(({ arm, value, why }) => ({ arm, value, struck: why !== "" })), better: draft.better, looks };
}

export function dealQuestion(draft: TrialDraft): Requests["deal"] {
  return { arms: armsOf(draft), rounds: draft.rounds * draft.look, seed: draft.seed };
}
