// After the ride: what was felt and what was ridden, as entries of the book, and what the next answer makes of it.

import type { Requests } from "../../contract/contract.ts";
import type { Change } from "../../log/book_log.ts";
import type { Json } from "../../log/op/json.ts";
import { type RecordState, valueOf } from "../../log/op/merge.ts";
import { listed, w } from "../../words/index.ts";
import { plain } from "../../words/number.ts";
import { isObject, type PressureAnswer, type Side, sides } from "./answer.ts";
import type { PressureDraft } from "./draft.ts";
import { type Felt, felts, type Learned } from "./learned.ts";
import { type PressureUnit, showKpa } from "../value/quantity.ts";
import type { Reading } from "./request.ts";
import { noteOf } from "./ride_due.ts";
import { tenths } from "./sets.ts";

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

// Ridden is what is known of the wheel's ride: the pressure in kPa, true and at the ride, and the setting it was made with.
export interface Ridden {
  readonly kpa?: number;
  readonly setting?: RecordState;
}

// airOf asks what a setting was at the ride.
export function airOf(setting: RecordState | undefined, reading: Reading): Requests["air"] | undefined {
  const [gauge, c, m] = ["gauge_kpa", "c", "m"].map((field) => valueOf(setting, field));
  if (reading.body === undefined || typeof gauge !== "number" || typeof c !== "number" || typeof m !== "number") return undefined;
  return { kpa: gauge - (reading.values.get("gaugeError") ?? 0), from: { c, m }, to: reading.body.ride };
}

// what a setting kept goes along with the note, so that it stands on its own
const kept = ["p0_kpa", "label_mm", "sidewall", "setup", "wheel", "tyre", "person"] as const;

// rideChanges are the entries, one for each wheel of which something was said. A second note after the same ride takes the place
// of the first.
export function rideChanges(told: RideTold, ridden: Readonly<Record<Side, Ridden>>, draft: PressureDraft, notes: readonly RecordState[], newRec: () => string): readonly Change[] {
  const { links } = draft;
  const bike = links["bike"];
  if (bike === undefined) return [];
  return sides.filter((side) => !saysNothing(told[side])).map((side): Change => {
    const { felt, struck } = told[side];
    const { kpa, setting } = ridden[side];
    const first = setting === undefined ? undefined : noteOf(setting, notes);
    const set: Record<string, Json> = {
      bike, side, ...links[`${side}.wheel`] !== undefined && { wheel: links[`${side}.wheel`] as string }, ...links[`${side}.tyre`] !== undefined && { tyre: links[`${side}.tyre`] as string },
      ...(links["person"] !== undefined && { person: links["person"] }), ...(setting !== undefined && { ride: setting.rec }), ...(first !== undefined && { corrects: first.rec }),
    };
    for (const field of kept) {
      const value = valueOf(setting, field);
      if (value != null) set[field] = value;
    }
    if (felt !== undefined) set["felt"] = felt;
    if (struck) set["rim_strike"] = true;
    if (kpa !== undefined) set["ridden_kpa"] = tenths(kpa);
    return { rec: newRec(), kind: "note", set };
  });
}

// movedWords say how much each wheel's number moved on the gauge: "front 0.06 bar softer, rear as before".
export function movedWords(before: PressureAnswer, after: PressureAnswer, unit: PressureUnit): string {
  return listed(sides.flatMap((side): string[] => {
    const [old, next] = [before[side].here_gauge_kpa, after[side].here_gauge_kpa];
    if (old === null || next === null) return [];
    const by = showKpa(Math.abs(next - old), unit);
    if (by === showKpa(0, unit)) return [stayed(side, after)];
    const words = { side: sideWord(side), by, unit: w(`unit.${unit}`) };
    return [next < old ? w("ride.softer", words) : w("ride.harder", words)];
  }));
}

function stayed(side: Side, after: PressureAnswer): string {
  const by = after[side].limited_by;
  return by === "none" ? w("ride.same", { side: sideWord(side) }) : w("ride.held", { side: sideWord(side), by: w(`limit.${by}`) });
}

function sideWord(side: Side): string {
  return w(`ride.side.${side}`);
}

// shiftWords say how far the notes have moved the numbers: "your 5 rides: 4 % softer"; "" while they have moved nothing.
export function shiftWords(learned: Learned | undefined): string {
  if (learned === undefined) return "";
  const percent = (side: Side): number => Math.round((Math.exp(learned[side].shift) - 1) * 100);
  const [front, rear] = [percent("front"), percent("rear")];
  const [n, trials] = [Math.max(learned.front.notes, learned.rear.notes), Math.max(learned.front.trials, learned.rear.trials)];
  if (n + trials === 0 || (front === 0 && rear === 0)) return "";
  const one = (by: number): string => (by < 0 ? w("ride.bySofter", { percent: plain(-by) }) : by > 0 ? w("ride.byFirmer", { percent: plain(by) }) : w("ride.byNone"));
  const how = front === rear ? one(front) : w("ride.shiftBoth", { front: one(front), rear: one(rear) });
  const rides = w("ride.shiftRides", { n });
  return w("ride.shift", { what: trials === 0 ? rides : n === 0 ? w("ride.shiftTrials", { n: trials }) : w("ride.shiftWith", { rides, n: trials }), how });
}

// uncounted say which notes count as nothing, and why.
export function uncounted(learned: Learned | undefined): readonly string[] {
  if (learned === undefined) return [];
  const unknown = learned.front.unknown + learned.rear.unknown;
  const other = learned.front.other_tyre + learned.rear.other_tyre;
  return [...(unknown === 0 ? [] : [w("ride.unknown", { n: unknown })]), ...(other === 0 ? [] : [w("ride.otherTyre", { n: other })])];
}
