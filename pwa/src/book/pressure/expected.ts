// What a wheel's gauge should read now: from what it was set to last, what it loses in a day, and the air of then and now.
// The gas law and the leak's law are the calculator's; here the questions are put together.

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

const day = 86_400_000;

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

export interface LeakQuestion {
  readonly first: Place & { readonly kpa: number };
  readonly second: Place & { readonly kpa: number };
  readonly days: number;
  readonly ahead_days: number;
  readonly ahead: Place;
}

const shortest = 0.5; // days: over a shorter time a gauge's scatter is larger than the loss (our choice)
const enough = 5; // times; older ones are another tyre's habits (our choice)

// leakQuestions are what the calculator is asked: each time that a wheel was read again before it was set anew.
export function leakQuestions(settings: readonly Setting[]): readonly LeakQuestion[] {
  return settings.flatMap((later, n): LeakQuestion[] => {
    const before = settings[n + 1];
    const days = before === undefined ? 0 : (later.at - before.at) / day;
    if (before === undefined || later.found === undefined || later.found <= 0 || before.kpa <= 0 || days < shortest) return [];
    return [{ first: { kpa: before.kpa, ...before.place }, second: { kpa: later.found, ...later.place }, days, ahead_days: 1, ahead: later.place }];
  }).slice(0, enough);
}

// typicalLoss is the middle of the losses per day that were found; undefined when there is none to go by.
export function typicalLoss(losses: readonly number[]): number | undefined {
  const sorted = [...losses].sort((a, b) => a - b);
  const middle = sorted.length >> 1;
  const [low, high] = [sorted[sorted.length % 2 === 0 ? middle - 1 : middle], sorted[middle]];
  return low === undefined || high === undefined ? undefined : (low + high) / 2;
}

export interface AirQuestion {
  readonly kpa: number;
  readonly from: Place;
  readonly to: Place;
}

// airQuestion carries what is left of the last setting to the air of now. Hours are counted whole, so that the answer does
// not change by the minute.
export function airQuestion(last: Setting, loss: number | undefined, now: number, here: Place): AirQuestion {
  const days = Math.max(0, Math.round((now - last.at) / 3_600_000)) / 24;
  return { kpa: Number((last.kpa * (1 - (loss ?? 0)) ** days).toFixed(2)), from: last.place, to: here };
}

// Expected is what a wheel's gauge should read, and what that rests on.
export interface Expected {
  readonly gauge_kpa: number;
  readonly last: Setting;
  readonly loss: number | undefined; // a share of the excess a day
  readonly here: Place;
}

export type BothExpected = Readonly<Partial<Record<Side, Expected>>>;
