// From a form to the book: entries for what was measured, and the field of the thing that they renew, all in one.

import type { Change } from "../../log/book_log.ts";
import { type Json, sameValue } from "../../log/op/json.ts";
import { type RecordState, valueOf } from "../../log/op/merge.ts";
import { type Measure, measuresOf, type Mounted, newestMeasure, type What } from "./measure.ts";
import { dayOf, momentOf } from "./measure_days.ts";
import type { Form, Result } from "./measure_form.ts";

export interface Place {
  readonly state: RecordState; // of what was measured, as the person sees it
  readonly entries: readonly RecordState[];
  readonly mounted: Mounted;
  readonly gauge: string; // the other gauge, "" when it is not in the book
  readonly now: number;
}

export interface Saving {
  readonly changes: readonly Change[];
  readonly before: Readonly<Record<string, Json>>; // what the renewed fields held, to put it back
  readonly older: boolean; // a newer value is there already, and stays
}

// savingOf works out the changes.
export function savingOf(what: What, form: Form, place: Place, newRec: () => string): Saving {
  const entries = form.results.map((result) => ({ rec: newRec(), kind: "measure", set: entryOf(what, result, form, place) }));
  const current = form.results.filter((result) => isNewest(what, result, form.day, place));
  const set = Object.assign({}, ...current.map((result) => renewed(what, result, form.day, place.now)), shares(what, current, place.state), disc(form, place.state)) as Record<string, Json>;
  const before = Object.fromEntries(Object.keys(set).map((field) => [field, valueOf(place.state, field) ?? null]));
  const { rec, kind } = place.state;
  const description = Object.keys(set).length > 0 ? [{ rec, kind, set, shown: place.state }] : [];
  return { changes: [...entries, ...description], before, older: current.length < form.results.length };
}

function entryOf(what: What, { field, value, side, place }: Result, form: Form, { state, mounted, gauge }: Place): Record<string, Json> {
  const end = side ?? mounted.side;
  return {
    of: state.rec, what, [field]: value, day: form.day,
    ...(mounted.bike !== undefined && { bike: mounted.bike }),
    ...(mounted.wheel !== undefined && { wheel: mounted.wheel }),
    ...(end !== undefined && { side: end }),
    ...(place !== undefined && place !== "" && { place }),
    ...(what === "width" && form.kpa !== undefined && { kpa: form.kpa }),
    ...(what === "width" && form.days !== undefined && { days_fitted: form.days }),
    ...(gauge !== "" && { gauge }),
  };
}

// isNewest: what was measured on an earlier day than the value that stands belongs into the record, but renews nothing.
function isNewest(what: What, { side, place }: Result, day: string, { entries, state }: Place): boolean {
  const newest: Measure | undefined = newestMeasure(entries, state.rec, what, side, place);
  const typedAt = what === "width" ? valueOf(state, "measured_at") : undefined;
  return day >= (newest?.day ?? "") && (typeof typedAt !== "number" || day >= dayOf(typedAt));
}

function renewed(what: What, { value, side = "front" }: Result, day: string, now: number): Record<string, Json> {
  switch (what) {
    case "width": return { measured_mm: value, measured_at: momentOf(day, now) };
    case "sealant": return { sealant_ml: value, sealant_day: day };
    case "inner": return { inner_mm: value };
    case "rotor_thickness": return { rotor_thickness_mm: value };
    case "load": return { [`${side}_load_kg`]: value };
    case "room": return { [`room_${side}_mm`]: value };
    case "gauge_error": return { error_kpa: value };
    case "rotor_runout": case "rim_runout": case "as_built": return {};
  }
}

// shares: once both loads are known, they say how the weight falls on the wheels.
function shares(what: What, current: readonly Result[], bike: RecordState): Record<string, Json> {
  if (what !== "load" || current.length === 0) return {};
  const known = (side: "front" | "rear"): boolean =>
    current.some((each) => each.side === side) || typeof valueOf(bike, `${side}_load_kg`) === "number";
  return known("front") && known("rear") && valueOf(bike, "weigh") !== "scale" ? { weigh: "scale" } : {};
}

// disc keeps the number on the disc when it was read with the measurement.
function disc({ min }: Form, wheel: RecordState): Record<string, Json> {
  return min === undefined || valueOf(wheel, "rotor_min_mm") === min ? {} : { rotor_min_mm: min };
}

// droppedChange is what the record has to say once a value is taken away: the next newest one, where it said this one.
export function droppedChange(entry: RecordState, entries: readonly RecordState[], state: RecordState, now: number): Change | undefined {
  const what = valueOf(entry, "what") as What;
  const [gone] = measuresOf([entry], state.rec, what);
  if (gone === undefined) return undefined;
  const rest = entries.filter(({ rec }) => rec !== entry.rec);
  const next = newestMeasure(rest, state.rec, what, what === "load" || what === "room" ? gone.side : undefined, gone.place);
  const said = renewed(what, asResult(gone), gone.day, now);
  const [field] = Object.keys(said);
  if (field === undefined || !sameValue(valueOf(state, field) ?? null, said[field] ?? null)) return undefined;
  const none = Object.fromEntries(Object.keys(said).map((each) => [each, null]));
  return { rec: state.rec, kind: state.kind, set: next === undefined ? none : renewed(what, asResult(next), next.day, now), shown: state };
}

function asResult({ field, value, side }: Measure): Result {
  return { field, value, ...(side !== undefined && { side }) };
}
