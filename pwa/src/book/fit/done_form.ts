// What was done, as a form: which fields it asks, and what was typed, read.

import { w } from "../../words/index.ts";
import { isDay } from "../wheels/measure_days.ts";
import { daysFrom } from "../wheels/measure_days.ts";
import type { PressureUnit } from "../value/quantity.ts";
import { readTyped } from "../value/typed_value.ts";

export const directions = ["arrow", "against", "none"] as const;

export interface Done {
  readonly day: string;
  readonly direction: (typeof directions)[number] | "";
  readonly newValve: boolean;
  readonly newTape: boolean;
  readonly layers: number | undefined;
  readonly tapeMm: number | undefined;
  readonly sealantMl: number | undefined;
}

export interface DoneForm {
  readonly faults: Readonly<Record<string, string>>;
  readonly done: Done | undefined; // undefined while something cannot be
}

// readDone reads what was typed. What is empty was not done, or is not known.
export function readDone(texts: Readonly<Record<string, string>>, today: string, unit: PressureUnit): DoneForm {
  const faults: Record<string, string> = {};
  const number = (id: string, kind: string, field: string): number | undefined => {
    const read = readTyped(kind, field, texts[id] ?? "", unit);
    if ("fault" in read) faults[id] = read.fault;
    return "fault" in read || typeof read.value !== "number" ? undefined : read.value;
  };
  const day = texts["day"] ?? today;
  if (!isDay(day)) faults["day"] = w("measure.dayNone");
  else if (daysFrom(today, day) > 0) faults["day"] = w("measure.dayAhead");
  const newTape = texts["tape"] === "new";
  const done: Done = {
    day, direction: directions.find((each) => each === texts["direction"]) ?? "", newValve: texts["valve"] === "new", newTape,
    layers: newTape ? number("layers", "wheel", "tape_layers") : undefined, tapeMm: newTape ? number("tapeMm", "wheel", "tape_mm") : undefined,
    sealantMl: number("sealant", "tyre", "sealant_ml"),
  };
  return { faults, done: Object.keys(faults).length === 0 ? done : undefined };
}
