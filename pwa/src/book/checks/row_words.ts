// What a row of a walk-around asks for: where to look, how, and when not to ride.

import { sentences, w } from "../../words/index.ts";
import { type Name, nameOf, type RowId } from "./rows.ts";
import type { Ask } from "./walk.ts";

type Measured = "rotor_thickness" | "rotor_true" | "pads" | "wall" | "run_out" | "room"; // their limits are figures

export const rowLook = (id: RowId): string => w(`check.look.${nameOf(id)}`);
export const rowHow = (id: RowId): string => w(`check.how.${nameOf(id)}`);

// rowLimit says when not to ride: the limits of a measured value, or in words.
export function rowLimit({ id, measure, limit, care }: Ask): string {
  const mm = limit?.value ?? 0;
  const with2 = care?.value ?? 0;
  switch (measure) {
    case null: return w(`check.limit.${nameOf(id) as Exclude<Name, Measured>}`);
    case "rotor_runout": case "rim_runout": return w(`check.careAt.${measure}`, { mm });
    case "rotor_thickness": case "rim_wall": return w(`check.stopAt.${measure}`, { mm });
    case "pads": case "room": return sentences([w(`check.stopAt.${measure}`, { mm }), w(`check.careAt.${measure}`, { mm: with2 })]);
  }
}

export const rowSource = ({ source }: Ask): string => w(`check.source.${source}`);
