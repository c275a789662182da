// What the page of a record shows of its measurements: the newest of each with its age, what to mind, and how it went.

import type { Json } from "../../log/op/json.ts";
import { member } from "../../log/op/json.ts";
import { type RecordState, valueOf } from "../../log/op/merge.ts";
import { listed, w } from "../../words/index.ts";
import { sides } from "../pressure/answer.ts";
import { type Measure, measuresOf, type ValueField, type What, whatsOf } from "./measure.ts";
import { widthDue } from "./measure_age.ts";
import { dayAge, dayOf, daysFrom, isDay } from "./measure_days.ts";
import { type Around, judge, type Judged, type Limit, limitOf } from "./measure_limits.ts";
import { aboutWords, placeWords, valueText, whatWords } from "./measure_words.ts";
import type { PressureUnit } from "../value/quantity.ts";
import { dayWords } from "../value/when.ts";

export interface TrendPoint {
  readonly key: string;
  readonly day: string;
  readonly value: number;
  readonly words: string;
  readonly about: string;
}

export interface Trend {
  readonly title: string;
  readonly points: readonly TrendPoint[]; // oldest first; two make a picture
  readonly limit: Limit | undefined;
  readonly write: (value: number) => string;
}

export interface MeasuredLine {
  readonly key: string;
  readonly label: string; // "" when the heading says it all
  readonly value: string;
  readonly about: string;
  readonly notices: readonly Judged[];
  readonly trend: Trend | undefined;
}

export interface MeasuredGroup {
  readonly what: What;
  readonly title: string;
  readonly link: string;
  readonly spoken: string;
  readonly href: string;
  readonly lines: readonly MeasuredLine[]; // none: nothing is known
}

export interface MeasuredBook {
  readonly state: RecordState;
  readonly entries: readonly RecordState[];
  readonly find: (rec: string) => RecordState | undefined;
  readonly unit: PressureUnit;
  readonly now: number;
}

export function measureHref(rec: string, what: What): string {
  return `#/wheels/measure/${rec}/${what}`;
}

export function measuredGroups(book: MeasuredBook): readonly MeasuredGroup[] {
  return whatsOf(book.state.kind).map((what) => {
    const lines = linesOf(what, book);
    const title = whatWords(what);
    const link = w(lines.length > 0 ? "measured.again" : "measured.first");
    return { what, title, link, spoken: w("measured.linkOf", { link, what: title }), href: measureHref(book.state.rec, what), lines };
  });
}

function linesOf(what: What, book: MeasuredBook): readonly MeasuredLine[] {
  const all = measuresOf(book.entries, book.state.rec, what);
  if (what === "load" || what === "room") return sides.flatMap((side) => lineOf(what, all.filter((each) => each.side === side), book, side) ?? []);
  if (what !== "as_built" && what !== "rim_runout") return [lineOf(what, all, book) ?? []].flat();
  const places = [...new Set(all.map((each) => each.place))];
  return places.flatMap((place) => lineOf(what, all.filter((each) => each.place === place), book, undefined, place) ?? []);
}

function lineOf(what: What, all: readonly Measure[], book: MeasuredBook, side?: "front" | "rear", place?: string): MeasuredLine | undefined {
  const [newest] = all;
  const held = heldOf(what, book.state, side);
  const { unit, now } = book;
  // What was typed into the record later than the newest measurement is what counts.
  const typed = held !== undefined && (newest === undefined || (held.value !== newest.value && held.at > newest.at)) ? held : undefined;
  const value = typed?.value ?? newest?.value;
  const field = typed?.field ?? newest?.field;
  if (value === undefined || field === undefined) return undefined;
  const label = side !== undefined ? w(`side.${side}`) : place === undefined ? "" : placeWords(place);
  const day = typed === undefined ? newest?.day : typed.day;
  const about = typed === undefined && newest !== undefined ? aboutWords(newest, now, unit) : day === undefined ? w("measured.typed") : w("measured.typedOn", { age: dayAge(day, now) });
  const around = aroundOf(book, side, day);
  return {
    key: side ?? place ?? "", label, value: valueText(field, value, unit), about,
    notices: [...dueOf(what, day, typed === undefined ? newest : undefined, book), ...judge(what, value, around)],
    trend: all.length === 0 ? undefined : trendOf(what, all, label, around, book),
  };
}

const heldFields: Readonly<Partial<Record<What, readonly [string, ValueField]>>> = {
  width: ["measured_mm", "mm"], sealant: ["sealant_ml", "ml"], inner: ["inner_mm", "mm"], rotor_thickness: ["rotor_thickness_mm", "mm"],
  load: ["_load_kg", "kg"], room: ["room_", "mm"], gauge_error: ["error_kpa", "kpa"],
};

interface Held {
  readonly value: number;
  readonly field: ValueField;
  readonly at: number;
  readonly day: string | undefined;
}

// heldOf is what the record itself says.
function heldOf(what: What, state: RecordState, side?: "front" | "rear"): Held | undefined {
  const [name, field] = heldFields[what] ?? ["", "mm" as const];
  const whole = what === "load" ? `${side ?? ""}${name}` : what === "room" ? `${name}${side ?? ""}_mm` : name;
  const shown = member(state.fields, whole)?.shown;
  if (typeof shown?.value !== "number") return undefined;
  const marked: Json | undefined = what === "width" ? valueOf(state, "measured_at") : valueOf(state, "sealant_day");
  const day = what === "width" ? (typeof marked === "number" ? dayOf(marked) : undefined) : what === "sealant" ? (isDay(marked) ? marked : undefined) : dayOf(shown.at);
  return { value: shown.value, field, at: shown.at, day };
}

function aroundOf({ state, find, now }: MeasuredBook, side: "front" | "rear" | undefined, day: string | undefined): Around {
  const min = valueOf(state, "rotor_min_mm");
  const linked = (from: RecordState | undefined, field: string): RecordState | undefined => {
    const rec = valueOf(from, field);
    return typeof rec === "string" ? find(rec) : undefined;
  };
  const tyre = side === undefined ? undefined : linked(linked(state, side), "tyre");
  const width = valueOf(tyre, "measured_mm") ?? valueOf(tyre, "label_mm");
  return {
    rotorMin: typeof min === "number" ? min : undefined,
    tyre: typeof width === "number" ? width : undefined,
    age: day === undefined ? 0 : daysFrom(day, dayOf(now)),
  };
}

function dueOf(what: What, day: string | undefined, measure: Measure | undefined, { state, now }: MeasuredBook): readonly Judged[] {
  if (what !== "width" || day === undefined) return [];
  const counted = measure?.days === undefined ? undefined : dayOf(new Date(`${day}T12:00:00`).getTime() - measure.days * 86_400_000);
  const fitted = valueOf(state, "fitted") ?? counted;
  const due = widthDue(day, fitted, dayOf(now));
  return due === "" ? [] : [{ severity: "care", text: w(`measureDue.${due}`) }];
}

function trendOf(what: What, all: readonly Measure[], label: string, around: Around, { unit, now }: MeasuredBook): Trend {
  const field = all[0]?.field ?? "mm";
  const title = label === "" ? whatWords(what) : w("field.sided", { side: whatWords(what), label });
  const points = all.map((each) => ({
    key: each.rec, day: each.day, value: each.value, words: valueText(each.field, each.value, unit),
    about: listed([dayWords(each.day, now), aboutWords(each, now, unit)]),
  }));
  return { title, points: points.reverse(), limit: limitOf(what, around), write: (value) => valueText(field, value, unit) };
}
