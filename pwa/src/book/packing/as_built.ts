// What was written down before a bike was taken apart, beside the step that puts it together again; and what is missing.

import { type RecordState, valueOf } from "../../log/op/merge.ts";
import { all, listed, w } from "../../words/index.ts";
import { plain } from "../../words/number.ts";
import { type Measure, measuresOf, newestMeasure } from "../wheels/measure.ts";
import type { Side } from "../pressure/answer.ts";
import type { Step } from "./pack_view.ts";

// lengths are the as-built figures as the calculator names them, and as measurements keep them.
const lengths = { saddle_height: "saddle_height", saddle_setback: "setback", reach: "reach", spacer_stack: "stack", bar_angle: "bar_angle" } as const;
type Length = keyof typeof lengths;

export interface Built {
  readonly bike: string;
  readonly wheels: Readonly<Record<Side, string>>;
  readonly measures: readonly RecordState[];
  readonly photos: readonly RecordState[]; // of this trip
}

function figureOf(key: Length, { measures, bike }: Built): number | undefined {
  return newestMeasure(measures, bike, "as_built", undefined, lengths[key])?.value;
}

function isLength(key: string): key is Length {
  return Object.hasOwn(lengths, key);
}

// builtWords are the figures for a step; "" where nothing was written down.
export function builtWords(step: Step, built: Built): string {
  const told = (step.as_built ?? []).flatMap((key): string[] => {
    const value = isLength(key) ? figureOf(key, built) : undefined;
    return value === undefined ? [] : [valueWords(key as Length, value)];
  });
  return told.length === 0 ? "" : w("trip.built", { what: listed(told) });
}

function valueWords(key: Length, value: number): string {
  return w("trip.builtOf", { what: w(`asBuilt.${key}`), value: plain(value), unit: key === "bar_angle" ? w("recUnit.deg") : w("unit.mm") });
}

// missingWords tell what nobody wrote down of what a step asks to. Marks and angles of levers are on the bike and in the photos.
export function missingWords(step: Step, built: Built): string {
  const missing = (step.as_built ?? []).flatMap((key): string[] => {
    if (isLength(key)) return figureOf(key, built) === undefined ? [w(`asBuilt.${key}`)] : [];
    if (key === "photos") return photosOf(built).length === 0 ? [w("asBuilt.photos")] : [];
    if (key === "rotor_runout") return wheelsOf(built).some((wheel) => newestMeasure(built.measures, wheel, "rotor_runout") === undefined) ? [w("asBuilt.rotor_runout")] : [];
    return [];
  });
  return missing.length === 0 ? "" : w("trip.asBuiltMissing", { what: all(missing) });
}

function wheelsOf({ wheels }: Built): readonly string[] {
  return [wheels.front, wheels.rear].filter((wheel) => wheel !== "");
}

// photosOf are the pictures of this bike on this trip, the oldest first.
export function photosOf({ photos, bike }: Built): readonly RecordState[] {
  return photos.filter((photo) => !photo.deleted && !photo.erased && valueOf(photo, "bike") === bike).sort((a, b) => a.newest - b.newest);
}

const slack = 0.05; // mm between two readings by hand; our choice

// runoutWords compare what a rotor measures now with what was written down before its wheel came out, not with a limit.
export function runoutWords(step: Step, built: Built, out: number): string {
  const side = step.id.startsWith("front") ? "front" : "rear";
  if (!step.notes.includes("runout_compare") || built.wheels[side] === "") return "";
  const known = measuresOf(built.measures, built.wheels[side], "rotor_runout");
  const before = known.find(({ at }) => out === 0 || at <= out);
  const now: Measure | undefined = out === 0 ? undefined : known.find(({ at }) => at > out);
  if (before === undefined) return w("trip.asBuiltMissing", { what: w("asBuilt.rotor_runout") });
  const figures = { before: plain(before.value), now: plain(now?.value ?? 0) };
  if (now === undefined) return w("trip.built", { what: w("trip.builtOf", { what: w("asBuilt.rotor_runout"), value: figures.before, unit: w("unit.mm") }) });
  return now.value > before.value + slack ? w("trip.runoutMore", figures) : w("trip.runout", figures);
}
