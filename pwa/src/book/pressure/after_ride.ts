// After the ride: what was felt and what was ridden, as entries of the book, and what the next answer makes of it.

import type { Change } from "../../log/book_log.ts";
import type { Json } from "../../log/op/json.ts";
import { type RecordState, valueOf } from "../../log/op/merge.ts";
import { w } from "../../words/index.ts";
import { fixed } from "../../words/number.ts";
import { isObject, type PressureAnswer, type Side, sides } from "./answer.ts";
import type { PressureDraft } from "./draft.ts";
import type { AirQuestion } from "./expected.ts";
import { type PressureUnit, showKpa } from "../value/quantity.ts";
import type { Reading } from "./request.ts";
import { lastSet } from "./sets.ts";
import { type Felt, felts, type RideNote, type Shift } from "./shift.ts";

// Told is what a rider says of one wheel.
export interface Told {
  readonly felt: Felt | undefined;
  readonly struck: boolean;
}

export type RideTold = Readonly<Record<Side, Told>>;

// OfBike is what was chosen and not saved yet, and of which bike.
export interface OfBike {
  readonly bike: string;
  readonly told: RideTold;
}

const nothing: Told = { felt: undefined, struck: false };
export const noneTold: OfBike = { bike: "", told: { front: nothing, rear: nothing } };

// readRideTold reads what was stored; whatever cannot be read counts as not chosen.
export function readRideTold(stored: unknown): OfBike {
  if (!isObject(stored) || !isObject(stored["told"])) return noneTold;
  const { told } = stored;
  const of = (side: Side): Told => {
    const one = isObject(told) && isObject(told[side]) ? told[side] : {};
    return { felt: felts.find((each) => each === one["felt"]), struck: one["struck"] === true };
  };
  return { bike: typeof stored["bike"] === "string" ? stored["bike"] : "", told: { front: of("front"), rear: of("rear") } };
}

export function saysNothing({ felt, struck }: Told): boolean {
  return felt === undefined && !struck;
}

// Ridden is what is known of the pressures of that ride, in kPa: true ones, at the ride.
export interface Ridden {
  readonly ridden?: number;
  readonly custom?: number; // before any shift
}

const sameRide = 48 * 3600e3; // ms: a setting older than this was for another ride (our choice)

// setForRide asks what the wheel's last setting was at the ride; undefined when nobody noted one for this ride.
export function setForRide(side: Side, draft: PressureDraft, sets: readonly RecordState[], reading: Reading, now: number): AirQuestion | undefined {
  const entry = lastSet(sets, draft.links[`${side}.wheel`]);
  const [gauge, c, m] = ["gauge_kpa", "c", "m"].map((field) => valueOf(entry, field));
  if (entry === undefined || now - entry.newest > sameRide || reading.body === undefined) return undefined;
  if (typeof gauge !== "number" || typeof c !== "number" || typeof m !== "number") return undefined;
  return { kpa: gauge - (reading.body.gauge_error_kpa ?? 0), from: { c, m }, to: reading.body.ride };
}

// stepsOf are the firmness steps that the answer was asked for, wet ground as one softer.
export function stepsOf({ firmness, wet }: Pick<PressureDraft, "firmness" | "wet">): number {
  return firmness - (wet ? 1 : 0);
}

// rideNoteOf is a note as the sums see it, before it is an entry.
export function rideNoteOf({ felt, struck }: Told, { ridden, custom }: Ridden, draft: PressureDraft): RideNote {
  return { felt, struck, ridden, custom, firmness: stepsOf(draft) };
}

// rideChanges are the entries, one for each wheel of which something was said.
export function rideChanges(told: RideTold, ridden: Readonly<Record<Side, Ridden>>, draft: PressureDraft, shift: number, newRec: () => string): readonly Change[] {
  const { links } = draft;
  return sides.filter((side) => links["bike"] !== undefined && !saysNothing(told[side])).map((side): Change => {
    const set: Record<string, Json> = { bike: links["bike"] ?? "", side };
    for (const [field, role] of [["wheel", `${side}.wheel`], ["tyre", `${side}.tyre`], ["person", "person"]] as const) {
      const rec = links[role];
      if (rec !== undefined) set[field] = rec;
    }
    const { felt, struck } = told[side];
    if (felt !== undefined) set["felt"] = felt;
    if (struck) set["rim_strike"] = true;
    const { ridden: at, custom } = ridden[side];
    if (at !== undefined) set["ridden_kpa"] = tenths(at);
    if (custom !== undefined) set["custom_kpa"] = tenths(custom);
    set["firmness"] = stepsOf(draft);
    set["shift"] = Number(shift.toFixed(4));
    return { rec: newRec(), kind: "note", set };
  });
}

// A gauge tells no more than this.
export function tenths(kpa: number): number {
  return Number(kpa.toFixed(1));
}

// movedWords say how much each wheel's number moved on the gauge: "front 0.06 bar softer, rear as before".
export function movedWords(before: PressureAnswer, after: PressureAnswer, unit: PressureUnit): string {
  return sides.flatMap((side): string[] => {
    const [old, next] = [before[side].gauge_kpa, after[side].gauge_kpa];
    if (old === null || next === null) return [];
    const by = showKpa(Math.abs(next - old), unit);
    if (by === showKpa(0, unit)) return [stayed(side, after)];
    const words = { side: sideWord(side), by, unit: w(`unit.${unit}`) };
    return [next < old ? w("ride.softer", words) : w("ride.harder", words)];
  }).join(", ");
}

function stayed(side: Side, after: PressureAnswer): string {
  const by = after[side].limited_by;
  return by === "none" ? w("ride.same", { side: sideWord(side) }) : w("ride.held", { side: sideWord(side), by: w(`limit.${by}`) });
}

function sideWord(side: Side): string {
  return w(`ride.side.${side}`);
}

// shiftWords say how far all notes together have moved custom; "" while none counts.
export function shiftWords({ by, notes }: Shift): string {
  if (notes === 0) return "";
  const percent = fixed((Math.exp(by) - 1) * 100, 1);
  return notes === 1 ? w("ride.shiftOne", { percent }) : w("ride.shift", { n: notes, percent });
}
