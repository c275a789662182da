// The form for one measurement: what was typed into it, read.

import { w } from "../../words/index.ts";
import { plain } from "../../words/number.ts";
import type { Side } from "../pressure/answer.ts";
import { gaugeCheck } from "../pressure/gauge_check.ts";
import type { ValueField, What } from "./measure.ts";
import { dayOf, daysFrom, isDay } from "./measure_days.ts";
import { readSlot, type SlotId, slotsOf } from "./measure_slots.ts";
import { type PressureUnit, pressureUnits } from "../value/quantity.ts";

// Typed is what stands in the form: the slots' texts, and the day, the place's name, the other gauge.
export type Typed = Readonly<Record<string, string>>;

// typedFrom takes what was kept, from whatever version.
export function typedFrom(stored: unknown): Typed {
  const pairs = typeof stored === "object" && stored !== null ? Object.entries(stored) : [];
  return Object.fromEntries(pairs.filter((pair): pair is [string, string] => typeof pair[1] === "string"));
}

// unitOf is the unit that bare pressures were typed in: a form that was begun keeps it.
export function unitOf(typed: Typed, unit: PressureUnit): PressureUnit {
  return pressureUnits.find((each) => each === typed["unit"]) ?? unit;
}

export interface Known {
  readonly unit: PressureUnit;
  readonly now: number;
  readonly fitted: unknown; // the tyre's day
  readonly min: string; // the number on the disc, as known
}

// Result is one value that was measured.
export interface Result {
  readonly field: ValueField;
  readonly value: number;
  readonly side?: Side;
  readonly place?: string;
}

export interface Form {
  readonly texts: Typed; // as they stand, with what is known filled in
  readonly faults: Readonly<Record<string, string>>;
  readonly results: readonly Result[];
  readonly day: string;
  readonly kpa: number | undefined;
  readonly days: number | undefined;
  readonly min: number | undefined;
  readonly says: string; // what comes of it so far
  readonly missing: string; // the first field that has to be filled in; "" when it can be saved
}

// readForm reads all that was typed.
export function readForm(what: What, typed: Typed, known: Known): Form {
  const day = typed["day"] ?? dayOf(known.now);
  const texts: Typed = { days: daysSince(known.fitted, day), min: known.min, ...typed, day };
  const faults: Record<string, string> = {};
  const values = new Map<SlotId, number>();
  for (const slot of slotsOf(what)) {
    const read = readSlot(slot, texts[slot.id] ?? "", known.unit);
    if ("fault" in read) faults[slot.id] = read.fault;
    else if (typeof read.value === "number") values.set(slot.id, read.value);
  }
  const dayFault = !isDay(day) ? w("measure.dayNone") : day > dayOf(known.now) ? w("measure.dayAhead") : "";
  if (dayFault !== "") faults["day"] = dayFault;
  const place = (texts["place"] ?? "").trim();
  if ([...place].length > 60) faults["place"] = w("fault.long", { n: 60 });
  const results = resultsOf(what, values, place, texts);
  if (what === "as_built" && values.has("other") && place === "") faults["place"] = w("measure.placeNone");
  const check = what === "gauge_error" ? gaugeCheck(texts["mine"] ?? "", texts["theirs"] ?? "", known.unit) : undefined;
  if (check !== undefined && check.words !== "" && check.text === "") faults["theirs"] ??= check.words;
  const says = check === undefined ? saysOf(what, values, results) : check.text === "" ? "" : check.words;
  const missing = Object.keys(faults)[0] ?? (results.length > 0 ? "" : slotsOf(what).find((slot) => !values.has(slot.id))?.id ?? "");
  return { texts, faults, results, day, kpa: values.get("kpa"), days: values.get("days"), min: values.get("min"), says, missing };
}

function daysSince(fitted: unknown, day: string): string {
  const n = isDay(fitted) && isDay(day) ? daysFrom(fitted, day) : -1;
  return n < 0 ? "" : String(n);
}

// exact leaves out what no instrument here can tell.
const exact = (value: number, digits = 3): number => Number(value.toFixed(digits));

function resultsOf(what: What, values: ReadonlyMap<SlotId, number>, place: string, texts: Typed): readonly Result[] {
  if (what === "width") {
    const places = widths(values);
    return places.length === 0 ? [] : [{ field: "mm", value: exact(places.reduce((sum, x) => sum + x, 0) / places.length, 2) }];
  }
  if (what === "gauge_error") {
    const [mine, theirs] = [values.get("mine"), values.get("theirs")];
    return mine === undefined || theirs === undefined || Math.abs(mine - theirs) > 100 ? [] : [{ field: "kpa", value: exact(mine - theirs) }];
  }
  return slotsOf(what).flatMap((slot) => {
    const value = values.get(slot.id);
    if (slot.as === undefined || value === undefined) return [];
    const at = slot.id === "other" ? place : what === "rim_runout" ? texts["way"] ?? "sideways" : slot.place;
    return [{ field: slot.as, value, ...(slot.side && { side: slot.side }), ...(at !== undefined && { place: at }) }];
  });
}

function widths(values: ReadonlyMap<SlotId, number>): readonly number[] {
  return (["place1", "place2", "place3"] as const).flatMap((id) => values.get(id) ?? []);
}

const uneven = 1; // mm between three places; our choice

function saysOf(what: What, values: ReadonlyMap<SlotId, number>, results: readonly Result[]): string {
  if (what === "width") {
    const places = widths(values);
    const [mean] = results;
    if (mean === undefined) return "";
    const spread = exact(Math.max(...places) - Math.min(...places));
    const said = places.length < 3 ? w("measure.fewer", { mm: plain(mean.value) }) : w("measure.mean", { mm: plain(mean.value) });
    return spread > uneven ? `${said} ${w("measure.uneven", { mm: plain(spread) })}` : said;
  }
  const [front, rear] = [values.get("front"), values.get("rear")];
  if (what !== "load" || front === undefined || rear === undefined) return "";
  return w("measure.share", { kg: plain(exact(front + rear)), percent: plain(Math.round((front / (front + rear)) * 100)) });
}
