// The morning list in words.

import { all, facts as remarks, w } from "../../words/index.ts";
import type { PressureUnit } from "../value/quantity.ts";
import { dayOf } from "../wheels/measure_days.ts";
import { clockWords } from "../value/when.ts";
import type { Rider, SpareWheel } from "./fleet.ts";
import { whoWords } from "./load.ts";
import type { Shared } from "./morning.ts";

export interface SpareFacts {
  readonly spare: SpareWheel;
  readonly stopped: boolean;
  readonly riders: readonly Rider[];
  readonly changed: boolean;
  readonly shared: Shared | undefined;
  readonly missing: number;
}

export interface MorningLine {
  readonly rec: string;
  readonly name: string;
  readonly number: string; // "" where there is none
  readonly told: string; // with its unit
  readonly facts: string; // for whom, how far off, what is wrong
  readonly noted: string; // when it was noted at this pressure today, "" if not
}

const named = 6; // riders told one by one

export function morningLine(facts: SpareFacts, unit: PressureUnit, now: number): MorningLine {
  const { spare, shared } = facts;
  const name = spare.place === "" ? spare.name : w("car.named", { spare: spare.name, place: spare.place });
  const noted = shared !== undefined && spare.kpa !== undefined && Math.abs(spare.kpa - shared.told.kpa) < 0.05 && dayOf(spare.pumpedAt) === dayOf(now);
  return {
    rec: spare.rec, name, number: shared?.told.text ?? "", told: shared === undefined ? "" : w("value.with", { value: shared.told.text, unit: w(`unit.${unit}`) }),
    facts: factsOf(facts), noted: noted ? w("morning.noted", { clock: clockWords(spare.pumpedAt, now) }) : "",
  };
}

function factsOf({ spare, stopped, riders, changed, shared, missing }: SpareFacts): string {
  if (stopped) return w("morning.stopped");
  if (spare.tyre === undefined) return w("morning.noTyre");
  if (riders.length === 0) return w("morning.nobody");
  const whom = [changed ? w("morning.changed") : "", w("morning.for", { riders: ridersWords(riders) })];
  if (shared === undefined) return remarks([...whom, missing === riders.length ? w("morning.noNumber") : w("morning.noShared")]);
  const { percent, compromise } = shared;
  const spread = percent === 0 ? [w("morning.exact")] : [w("morning.spread", { percent }), w("morning.compromise", { riders: ridersWords(compromise) })];
  return remarks([...whom, ...spread, missing === 0 ? "" : w("morning.missing", { n: missing })]);
}

function ridersWords(riders: readonly Rider[]): string {
  const names = riders.slice(0, named).map((rider) => rider.number || whoWords(rider));
  return all(riders.length > named ? [...names, w("morning.andMore", { n: riders.length - named })] : names);
}
