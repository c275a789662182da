// A measured value and its circumstances in words.

import { type Key, listed, w } from "../../words/index.ts";
import { plain } from "../../words/number.ts";
import type { Measure, ValueField, What } from "./measure.ts";
import { dayAge } from "./measure_days.ts";
import { type PressureUnit, showKpa } from "../value/quantity.ts";

const unitKeys: Readonly<Record<Exclude<ValueField, "kpa">, Key>> = { mm: "unit.mm", kg: "unit.kg", ml: "unit.ml", degrees: "recUnit.deg" };

// valueText is a value with its unit.
export function valueText(field: ValueField, value: number, unit: PressureUnit): string {
  if (field === "degrees") return w("recValue.degrees", { n: value });
  if (field !== "kpa") return w("recValue.with", { n: plain(value), unit: w(unitKeys[field] as "unit.mm") });
  const by = { by: showKpa(Math.abs(value), unit), unit: w(`unit.${unit}`) };
  if (by.by === showKpa(0, unit)) return w("measure.exact");
  return value > 0 ? w("measure.high", by) : w("measure.low", by);
}

// aboutWords tells how a value was measured: "12 days ago, at 2.10 bar, 3 days after fitting".
export function aboutWords({ day, kpa, days }: Measure, now: number, unit: PressureUnit): string {
  return listed([
    dayAge(day, now),
    ...(kpa === undefined ? [] : [w("measure.atPressure", { n: showKpa(kpa, unit), unit: w(`unit.${unit}`) })]),
    ...(days === undefined ? [] : [w("measure.daysAfter", { n: days })]),
  ]);
}

const ways = ["sideways", "radial", "saddle_height", "setback", "reach", "stack", "bar_angle"] as const;

// placeWords names a place: one of ours, or what a person called it.
export function placeWords(place: string): string {
  const ours = ways.find((each) => each === place);
  return ours === undefined ? place : w(`measurePlace.${ours}`);
}

export function whatWords(what: What): string {
  return w(`measureWhat.${what}`);
}
