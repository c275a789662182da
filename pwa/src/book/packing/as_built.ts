// What was written down before a bike was taken apart, beside the step that puts it together again.

import type { RecordState } from "../../log/op/merge.ts";
import { w } from "../../words/index.ts";
import { plain } from "../../words/number.ts";
import { newestMeasure } from "../wheels/measure.ts";
import type { Step } from "./pack_view.ts";

// places are the as-built lengths as the calculator names them, and as measurements keep them.
const places = { saddle_height: "saddle_height", saddle_setback: "setback", reach: "reach", spacer_stack: "stack", bar_angle: "bar_angle" } as const;

// builtWords are the values for a step; "" where nothing was written down.
export function builtWords(step: Step, measures: readonly RecordState[], bike: string, wheels: readonly string[]): string {
  const told = (step.as_built ?? []).flatMap((key): string[] => {
    if (key === "rotor_runout") return wheels.flatMap((wheel) => valueWords("rotor_runout", newestMeasure(measures, wheel, "rotor_runout")?.value));
    const known = (Object.keys(places) as (keyof typeof places)[]).find((each) => each === key);
    return known === undefined ? [] : valueWords(known, newestMeasure(measures, bike, "as_built", undefined, places[known])?.value);
  });
  return told.length === 0 ? "" : w("trip.built", { what: told.join(", ") });
}

function valueWords(key: keyof typeof places | "rotor_runout", value: number | undefined): string[] {
  if (value === undefined) return [];
  return [w("trip.builtOf", { what: w(`asBuilt.${key}`), value: plain(value), unit: key === "bar_angle" ? w("recUnit.deg") : w("unit.mm") })];
}
