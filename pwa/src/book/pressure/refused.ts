// What to tell when the calculator refuses a question that the form let through.

import type { CalcError } from "../../contract/contract.ts";
import { w } from "../../words/index.ts";
import { labelOf } from "./field_view.ts";
import { allFields } from "./fields.ts";

// refusedWords name the field where there is one.
export function refusedWords([first]: readonly CalcError[]): string {
  if (first === undefined || first.code === "panic") return w("wheel.oldCalc");
  const field = allFields.find(({ path }) => path === first.field);
  if (field !== undefined) return w("wheel.oldField", { field: labelOf(field.id) });
  return w("wheel.cannot");
}
