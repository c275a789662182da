// What was measured, and which values count: the newest, without those that were deleted or corrected.

import type { Json } from "../../log/op/json.ts";
import { type RecordState, valueOf } from "../../log/op/merge.ts";
import { type Side, sides } from "../pressure/answer.ts";
import { dayOf, isDay } from "./measure_days.ts";

export const whats = {
  tyre: ["width", "sealant"],
  wheel: ["inner", "rotor_thickness", "rotor_runout", "rim_runout"],
  bike: ["load", "room", "as_built"],
  gauge: ["gauge_error"],
} as const;

export type What = (typeof whats)[keyof typeof whats][number];

// whatsOf is what can be measured on a kind of thing.
export function whatsOf(kind: string): readonly What[] {
  return Object.hasOwn(whats, kind) ? whats[kind as keyof typeof whats] : [];
}

export type ValueField = "mm" | "kg" | "kpa" | "ml" | "degrees";

// valueField is where an entry keeps what was measured.
function valueField(what: What, entry: RecordState): ValueField {
  switch (what) {
    case "sealant": return "ml";
    case "load": return "kg";
    case "gauge_error": return "kpa";
    case "as_built": return typeof valueOf(entry, "degrees") === "number" ? "degrees" : "mm";
    default: return "mm";
  }
}

// Measure is one entry, read.
export interface Measure {
  readonly rec: string;
  readonly what: What;
  readonly value: number;
  readonly field: ValueField;
  readonly side: Side | undefined;
  readonly place: string; // "" for none
  readonly day: string;
  readonly at: number; // when it was written
  readonly kpa: number | undefined; // in the tyre, while its width was measured
  readonly days: number | undefined; // since the tyre was fitted
}

// measuresOf lists what counts of one thing, newest first. Without a side or a place, all of them.
export function measuresOf(entries: readonly RecordState[], of: string, what: What, side?: Side, place?: string): readonly Measure[] {
  const corrected = new Set(entries.filter(isThere).map((entry) => valueOf(entry, "corrects")));
  return entries
    .filter((entry) => isThere(entry) && !corrected.has(entry.rec) && valueOf(entry, "of") === of && valueOf(entry, "what") === what)
    .flatMap((entry) => read(entry, what) ?? [])
    .filter((each) => (side === undefined || each.side === side) && (place === undefined || each.place === place))
    .sort(newerFirst);
}

// newestMeasure is the value that counts; undefined when nothing was measured.
export function newestMeasure(entries: readonly RecordState[], of: string, what: What, side?: Side, place?: string): Measure | undefined {
  return measuresOf(entries, of, what, side, place)[0];
}

function isThere(entry: RecordState): boolean {
  return entry.kind === "measure" && !entry.deleted && !entry.erased;
}

function read(entry: RecordState, what: What): Measure | undefined {
  const field = valueField(what, entry);
  const value = numberIn(entry, field);
  if (value === undefined) return undefined;
  const [day, place, side] = [valueOf(entry, "day"), valueOf(entry, "place"), valueOf(entry, "side")];
  return {
    rec: entry.rec, what, value, field, at: entry.newest,
    side: sides.find((each) => each === side), place: typeof place === "string" ? place : "", day: isDay(day) ? day : dayOf(entry.newest),
    kpa: what === "width" ? numberIn(entry, "kpa") : undefined, days: numberIn(entry, "days_fitted"),
  };
}

function numberIn(entry: RecordState, field: string): number | undefined {
  const value: Json | undefined = valueOf(entry, field);
  return typeof value === "number" ? value : undefined;
}

function newerFirst(a: Measure, b: Measure): number {
  return b.day.localeCompare(a.day) || b.at - a.at || a.rec.localeCompare(b.rec);
}

// Mounted is where a wheel or a tyre belongs now.
export interface Mounted {
  readonly wheel?: string;
  readonly bike?: string;
  readonly side?: Side;
}

// mountedOf finds the wheel that a tyre is on, and the bike and the end where the wheel is.
export function mountedOf(rec: string, kind: string, wheels: readonly RecordState[], bikes: readonly RecordState[]): Mounted {
  if (kind === "bike") return { bike: rec };
  const wheel = kind === "wheel" ? rec : kind === "tyre" ? wheels.find((each) => valueOf(each, "tyre") === rec)?.rec : undefined;
  if (wheel === undefined) return {};
  for (const side of sides) {
    const bike = bikes.find((each) => valueOf(each, side) === wheel);
    if (bike !== undefined) return { wheel, bike: bike.rec, side };
  }
  return { wheel };
}
