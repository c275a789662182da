// What is taken for granted where nobody has measured or read the part, said as such.

import { type RecordState, valueOf } from "../../log/op/merge.ts";
import { w } from "../../words/index.ts";
import { plain } from "../../words/number.ts";
import { type Tables, usualInnerFor } from "../pressure/tables.ts";

type Find = (rec: string) => RecordState | undefined;

// assumedOf tells what Pressure assumes about a thing, and how to know better.
export function assumedOf(thing: RecordState, find: Find, tables: Tables): readonly string[] {
  switch (thing.kind) {
    case "wheel": return wheelAssumed(thing, find, tables);
    case "tyre": return tyreAssumed(thing);
    case "bike": return known(thing, "mass_kg") ? [] : [w("taken.bikeMass")];
    default: return [];
  }
}

function wheelAssumed(wheel: RecordState, find: Find, tables: Tables): readonly string[] {
  const tyre = valueOf(wheel, "tyre");
  const label = valueOf(typeof tyre === "string" ? find(tyre) : undefined, "label_mm");
  const usual = typeof label === "number" ? usualInnerFor(label, tables) : undefined;
  const profile = valueOf(wheel, "profile");
  const out: string[] = [];
  if (!known(wheel, "inner_mm")) {
    if (profile !== "hooked") out.push(w("taken.noInner"));
    else if (usual !== undefined) out.push(w("taken.inner", { n: plain(usual) }));
  }
  if (profile !== "hooked" && profile !== "hookless") out.push(w("taken.profile"));
  return out;
}

function tyreAssumed(tyre: RecordState): readonly string[] {
  const out: string[] = [];
  if (!known(tyre, "measured_mm") && known(tyre, "label_mm")) out.push(w("taken.width"));
  if (!known(tyre, "sidewall")) out.push(w("taken.sidewall"));
  return out;
}

function known(thing: RecordState, field: string): boolean {
  const value = valueOf(thing, field);
  return value !== undefined && value !== null && value !== "";
}
