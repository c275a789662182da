// "The same again": new records like those that are there. What was measured on the one, and when it was fitted, is not
// known of the other.

import type { Change } from "../../log/book_log.ts";
import type { Json } from "../../log/op/json.ts";
import { type RecordState, valueOf } from "../../log/op/merge.ts";
import { w } from "../../words/index.ts";
import { sides } from "../pressure/answer.ts";

const own = ["number", "rider", "measured_mm", "measured_at", "fitted", "sealant_day", "sealant_ml", "tape_day", "valve_day", "indoors", "rotor_thickness_mm", "error_kpa", "mass_kg", "retired",
  "front_load_kg", "rear_load_kg", "weigh"];

type Find = (rec: string) => RecordState | undefined;

export interface Copy {
  readonly rec: string;
  readonly changes: readonly Change[];
}

// copyOf copies a thing, a wheel with its tyre, a bike with its wheels.
export function copyOf(state: RecordState, find: Find, newRec: () => string): Copy {
  const changes: Change[] = [];
  const copied = (from: RecordState, named: boolean): string => {
    const rec = newRec();
    const set: Record<string, Json> = {};
    for (const field of Object.keys(from.fields)) {
      const value = valueOf(from, field);
      if (own.includes(field) || value === undefined || value === null) continue;
      set[field] = value;
    }
    for (const [field, kind] of partsOf(from.kind)) {
      const part = find(typeof set[field] === "string" ? set[field] : "");
      if (part?.kind !== kind || part.erased || part.deleted) delete set[field];
      else set[field] = copied(part, false);
    }
    if (named && typeof set["name"] === "string" && set["name"] !== "") set["name"] = w("things.copied", { name: set["name"] });
    changes.unshift({ rec, kind: from.kind, set });
    return rec;
  };
  const rec = copied(state, true);
  return { rec, changes };
}

// partsOf names the fields that point to parts, and what these are: nothing can hold itself.
function partsOf(kind: string): readonly (readonly [field: string, kind: string])[] {
  return kind === "bike" ? sides.map((side) => [side, "wheel"] as const) : kind === "wheel" ? [["tyre", "tyre"]] : [];
}
