// What a step is called and what is said about it, in the language of the words.

import { w } from "../../words/index.ts";
import type { PressureUnit } from "../value/quantity.ts";
import { showKpa } from "../value/quantity.ts";
import type { GoodLine, Step } from "./pack_view.ts";

type Values = Step["values"];

// numbers takes the named ones out of an answer's values; a code's words use those that it comes with.
function numbers<N extends string>(values: Values, ...names: readonly N[]): Record<N, number> {
  return Object.fromEntries(names.map((name) => [name, typeof values[name] === "number" ? values[name] : 0])) as Record<N, number>;
}

export function stepWords(step: Step): string {
  return w(`step.${step.id}`);
}

export function toolWords(tool: Step["tool"]): string {
  return tool === "" ? "" : w(`tool.${tool}`);
}

// noteWords are the sentences about a step, in order.
export function noteWords({ notes, values }: Step, unit: PressureUnit): readonly string[] {
  const margin = typeof values["margin_kpa"] === "number" ? `${showKpa(values["margin_kpa"], unit)} ${w(`unit.${unit}`)}` : "";
  const all = {
    margin,
    ...numbers(values, "most_wh", "desk_kg", "hands_kg", "low_nm", "high_nm", "pull_kg", "handle_cm", "cap_low_nm", "cap_high_nm",
      "bolts_low_nm", "bolts_high_nm", "bolts_pull_kg", "bolts_handle_cm", "ring_low_nm", "ring_pull_kg", "ring_handle_cm"),
  };
  return notes.map((note) => w(`note.${note}`, all));
}

export function whyWords({ why, values }: Pick<GoodLine, "why" | "values">): string {
  return w(`goodWhy.${why}`, numbers(values, "most", "most_g", "most_ml", "most_wh", "free_wh", "all_ml", "cabin_ml", "most_c"));
}
