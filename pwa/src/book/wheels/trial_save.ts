// A finished trial as an entry of the book: what was compared, every run, what was told, and what it teaches each wheel's shift.

import type { Change } from "../../log/book_log.ts";
import type { Json } from "../../log/op/json.ts";
import { type Side, sides } from "../pressure/answer.ts";
import { dayOf } from "./measure_days.ts";
import { type ArmValue, endsOf, type Judged, looks, type TrialDraft } from "./trial.ts";

// trialChange is written once; a correction is another trial.
export function trialChange(draft: TrialDraft, arms: readonly ArmValue[], judged: Judged, what: string, place: Readonly<Record<string, string>>, now: number, newRec: () => string): Change {
  const { difference, low, high, chance_first_better, shown, best, level } = judged;
  const values = {
    kind: draft.kind, ends: draft.ends, better: draft.better, looks, look: draft.look,
    arms: arms.map(({ name, tyre, gauge }): Json => ({ name, ...(tyre !== "" && { tyre }), ...Object.fromEntries(sides.flatMap((side) => (gauge[side] === undefined ? [] : [[`${side}_kpa`, gauge[side]]]))) })),
    runs: draft.runs.map(({ slot, arm, value, why, wind, c, at }): Json => ({ slot, arm, value, at, ...(why !== "" && { why }), ...(wind !== "" && { wind }), ...(c !== null && { c }) })),
    result: { difference, low, high, chance_first_better, shown, best, level },
    shift: Object.fromEntries(endsOf(draft).flatMap((side) => taught(side, draft, arms, best))),
  };
  return { rec: newRec(), kind: "trial", set: { ...place, day: dayOf(now), what, values } };
}

// taught is what the shift of a wheel is learnt from: the pressure that came out best, true, against what was recommended that day.
function taught(side: Side, { kind, basis, error_kpa }: TrialDraft, arms: readonly ArmValue[], best: string | null): readonly (readonly [string, Json])[] {
  const gauge = arms.find(({ name }) => name === best)?.gauge[side];
  const known = basis[side];
  if (kind !== "pressure" || gauge === undefined || known === undefined) return [];
  const { p0_kpa, label_mm, sidewall, setup } = known;
  return [[side, { ridden_kpa: Math.round((gauge - error_kpa) * 10) / 10, p0_kpa, label_mm, sidewall, setup }]];
}
