// What a wheel's gauge should read now: the question that goes to the calculator, from what was set and how it was found.

import type { Answers, Requests } from "../../contract/contract.ts";
import { type RecordState, valueOf } from "../../log/op/merge.ts";
import type { Side } from "./answer.ts";

// Place is a temperature and an altitude, in the calculator's units.
export interface Place {
  readonly c: number;
  readonly m: number;
}

// Setting is what is known of one time that a wheel was set: true pressures, which are readings less the gauge's error.
export interface Setting {
  readonly at: number; // ms since 1970
  readonly read: number; // what the gauge said
  readonly kpa: number;
  readonly found: number | undefined; // what it held before
  readonly place: Place;
}

// settingsOf lists a wheel's settings, the newest first. Entries without a pressure or a place tell nothing.
export function settingsOf(entries: readonly RecordState[], wheel: string | undefined, gaugeError: number): readonly Setting[] {
  if (wheel === undefined) return [];
  return entries.filter((entry) => valueOf(entry, "wheel") === wheel).flatMap((entry): Setting[] => {
    const number = (field: string): number | undefined => {
      const value = valueOf(entry, field);
      return typeof value === "number" ? value : undefined;
    };
    const [kpa, c, m, found] = [number("gauge_kpa"), number("c"), number("m"), number("found_kpa")];
    if (kpa === undefined || c === undefined || m === undefined) return [];
    return [{ at: entry.newest, read: kpa, kpa: kpa - gaugeError, found: found === undefined ? undefined : found - gaugeError, place: { c, m } }];
  }).sort((a, b) => b.at - a.at);
}

type Question = Requests["expected"];
type OneWheel = NonNullable<Question["front"]>;

const enough = 5; // times; older ones are another tyre's habits (our choice)
const hour = 3_600_000;

// expectedQuestion asks for both wheels at once; undefined where neither was ever set. Now is counted in whole hours, so that
// the answer does not change by the minute.
export function expectedQuestion(settings: Readonly<Record<Side, readonly Setting[]>>, gaugeError: number, here: Place, now: number): Question | undefined {
  const [front, rear] = [wheelQuestion(settings.front), wheelQuestion(settings.rear)];
  if (front === undefined && rear === undefined) return undefined;
  const at = Math.max(Math.round(now / hour) * hour, front?.at ?? 0, rear?.at ?? 0);
  return { ...(front && { front }), ...(rear && { rear }), at, here: { c: here.c, m: here.m }, gauge_error_kpa: gaugeError };
}

function wheelQuestion(settings: readonly Setting[]): OneWheel | undefined {
  const [last] = settings;
  if (last === undefined || last.kpa <= 0) return undefined;
  const history = settings.flatMap((later, n) => {
    const before = settings[n + 1];
    if (before === undefined || later.found === undefined || later.found <= 0 || before.kpa <= 0 || later.at <= before.at) return [];
    return [{ set: { kpa: before.kpa, ...before.place, at: before.at }, found: { kpa: later.found, ...later.place, at: later.at } }];
  }).slice(0, enough);
  return { kpa: last.kpa, ...last.place, at: last.at, ...(history.length > 0 && { history }) };
}

// Expected is what a wheel's gauge should read, and what that rests on.
export interface Expected {
  readonly gauge_kpa: number;
  readonly last: Setting;
  readonly loss: number | undefined; // a share of the excess a day
  readonly here: Place;
}

export type BothExpected = Readonly<Partial<Record<Side, Expected>>>;

// expectedOf puts an answer beside what it rests on. A gauge shows nothing below zero.
export function expectedOf(side: Side, settings: readonly Setting[], here: Place, answer: Answers["expected"] | undefined): Expected | undefined {
  const [last, wheel] = [settings[0], answer?.[side]];
  return last === undefined || wheel == null ? undefined : { gauge_kpa: Math.max(0, wheel.gauge_kpa), last, loss: wheel.loss_per_day ?? undefined, here };
}
