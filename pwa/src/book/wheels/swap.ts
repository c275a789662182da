// Which wheel is on which bike, and moving one: a wheel that comes from another bike changes places with the one that was there.

import type { Change } from "../../log/book_log.ts";
import type { Json } from "../../log/op/json.ts";
import { type RecordState, valueOf } from "../../log/op/merge.ts";
import { type Side, sides } from "../pressure/answer.ts";

export interface Slot {
  readonly bike: RecordState;
  readonly side: Side;
}

// slotsOf finds all places where a wheel is said to be: one, unless two phones have put it on two bikes.
export function slotsOf(bikes: readonly RecordState[], wheel: string): readonly Slot[] {
  return bikes.flatMap((bike) => sides.filter((side) => valueOf(bike, side) === wheel).map((side) => ({ bike, side })));
}

// swapChanges put a wheel ("" for none) into a bike's fork or frame. Nothing changes when it is there already.
export function swapChanges(bikes: readonly RecordState[], bike: RecordState, side: Side, wheel: string): readonly Change[] {
  const left = valueOf(bike, side) ?? null;
  if ((left ?? "") === wheel) return [];
  const sets = new Map<RecordState, Record<string, Json>>([[bike, { [side]: wheel === "" ? null : wheel }]]);
  for (const from of wheel === "" ? [] : slotsOf(bikes, wheel)) {
    const set = sets.get(from.bike) ?? {};
    sets.set(from.bike, { ...set, [from.side]: left });
  }
  return [...sets].map(([shown, set]) => ({ rec: shown.rec, kind: shown.kind, set, shown }));
}

// undoneChanges put back what a save has changed: before and after are the same records in the same order.
export function undoneChanges(changes: readonly Change[], after: readonly RecordState[]): readonly Change[] {
  return changes.map(({ rec, kind, set, shown }, n): Change => {
    const back = Object.fromEntries(Object.keys(set).map((field) => [field, valueOf(shown, field) ?? null]));
    const now = after[n];
    return { rec, kind, set: back, ...(now !== undefined && { shown: now }) };
  });
}

// Double is a wheel that is said to be on several bikes.
export interface Double {
  readonly wheel: string;
  readonly slots: readonly Slot[];
}

// doublesIn finds the wheels that phones have put on several bikes while they were apart.
export function doublesIn(bikes: readonly RecordState[]): readonly Double[] {
  const wheels = new Set(bikes.flatMap((bike) => sides.map((side) => valueOf(bike, side))).filter((rec) => typeof rec === "string" && rec !== ""));
  return [...wheels].map((wheel) => ({ wheel: String(wheel), slots: slotsOf(bikes, String(wheel)) })).filter(({ slots }) => slots.length > 1);
}

// keptChanges leave the wheel in one of its places.
export function keptChanges({ slots }: Double, kept: Slot): readonly Change[] {
  const sets = new Map<RecordState, Record<string, Json>>();
  for (const { bike, side } of slots) {
    if (bike === kept.bike && side === kept.side) continue;
    sets.set(bike, { ...sets.get(bike), [side]: null });
  }
  return [...sets].map(([shown, set]) => ({ rec: shown.rec, kind: shown.kind, set, shown }));
}
