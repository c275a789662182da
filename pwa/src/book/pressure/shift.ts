// The personal shift: how far the notes after rides move the number, as a logarithm of pressure.

import { type RecordState, valueOf } from "../../log/op/merge.ts";
import type { Reading } from "./request.ts";

export const felts = ["too_hard", "hard", "right", "soft", "too_soft"] as const;
export type Felt = (typeof felts)[number];

// RideNote is one wheel after one ride, as far as its entry tells.
export interface RideNote {
  readonly felt: Felt | undefined;
  readonly struck: boolean; // the rim hit something
  readonly ridden: number | undefined; // kPa, true, at the ride
  readonly custom: number | undefined; // kPa, what custom was on that day before any shift
  readonly firmness: number; // steps asked for on that day, wet ground as one softer
}

const feltBy: Readonly<Record<Felt, number>> = { too_hard: -0.1, hard: -0.05, right: 0, soft: 0.05, too_soft: 0.1 };
const firmStep = 0.05;
const most = 0.5; // also what the calculator takes at most

function held(shift: number): number {
  return Math.max(-most, Math.min(most, shift));
}

// observed is the shift that one note alone speaks for; undefined when it says nothing.
export function observed({ felt, struck, ridden, custom, firmness }: RideNote): number | undefined {
  const by = struck ? feltBy.too_soft : felt === undefined ? undefined : feltBy[felt];
  const asked = (custom ?? 0) * (1 + firmStep * firmness);
  if (by === undefined || ridden === undefined || !(ridden > 0) || !(asked > 0)) return undefined;
  return held(Math.log(ridden / asked) + by);
}

export interface Shift {
  readonly by: number;
  readonly notes: number; // that count
}

// shiftOf weighs the notes against the prior, which counts as much as one note.
export function shiftOf(notes: readonly RideNote[]): Shift {
  const each = notes.map(observed).filter((one) => one !== undefined);
  const sum = each.reduce((a, b) => a + b, 0);
  return { by: held(sum / (each.length + 1)), notes: each.length };
}

// rideNotes are a bike's notes that stand: none that was removed, none that a later one corrects.
export function rideNotes(entries: readonly RecordState[], bike: string | undefined): readonly RideNote[] {
  if (bike === undefined) return [];
  const corrected = new Set(entries.filter((entry) => !entry.deleted && !entry.erased).map((entry) => valueOf(entry, "corrects")));
  return entries.filter((entry) => !entry.deleted && !entry.erased && valueOf(entry, "bike") === bike && !corrected.has(entry.rec)).map(noteOf);
}

function noteOf(entry: RecordState): RideNote {
  const number = (field: string): number | undefined => {
    const value = valueOf(entry, field);
    return typeof value === "number" ? value : undefined;
  };
  return {
    felt: feltOf(entry), struck: valueOf(entry, "rim_strike") === true,
    ridden: number("ridden_kpa"), custom: number("custom_kpa"), firmness: number("firmness") ?? 0,
  };
}

export function feltOf(entry: RecordState): Felt | undefined {
  const felt = valueOf(entry, "felt");
  return felts.find((each) => each === felt);
}

// shifted lets a question ask for the shift. It goes through the calculator's own field, so no limit moves with it.
export function shifted(reading: Reading, by: number): Reading {
  return reading.body === undefined ? reading : { ...reading, body: { ...reading.body, shift: { front: by, rear: by } } };
}

// learned lets a question ask for what the bike's notes speak for.
export function learned(reading: Reading, notes: readonly RecordState[], bike: string | undefined): Reading {
  return shifted(reading, shiftOf(rideNotes(notes, bike)).by);
}
