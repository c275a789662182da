// Adding a thing in few fields. A bike comes with its two wheels and their tyres; what nobody was asked is not known yet.

import type { Change } from "../../log/book_log.ts";
import type { Json } from "../../log/op/json.ts";
import type { ThingKind } from "./thing_fields.ts";

// newFields are asked for, as "<kind>.<field>"; the first is needed.
export const newFields: Readonly<Record<ThingKind, readonly string[]>> = {
  bike: ["bike.name", "bike.number", "tyre.label_mm", "wheel.setup", "wheel.profile", "bike.brake"],
  wheel: ["wheel.name", "wheel.side", "tyre.label_mm", "wheel.setup", "wheel.profile", "wheel.inner_mm"],
  tyre: ["tyre.name", "tyre.label_mm", "tyre.max_kpa"],
  person: ["person.name", "person.number", "person.mass_kg"],
  gauge: ["gauge.name"],
  pump: ["pump.name", "pump.stroke_ml"],
};

export interface Made {
  readonly rec: string;
  readonly changes: readonly Change[];
}

// newChanges make the records of a thing: the thing itself first.
export function newChanges(kind: ThingKind, values: ReadonlyMap<string, Json>, newRec: () => string): Made {
  const of = (part: string): Record<string, Json> => Object.fromEntries([...values].flatMap(([id, value]) =>
    id.startsWith(`${part}.`) && value !== null ? [[id.slice(part.length + 1), value] as const] : []));
  const changes: Change[] = [];
  const add = (of: string, set: Record<string, Json>): string => {
    const rec = newRec();
    changes.unshift({ rec, kind: of, set });
    return rec;
  };
  const addWheel = (set: Record<string, Json>): string => {
    const tyre = of("tyre");
    return add("wheel", Object.keys(tyre).length === 0 ? set : { ...set, tyre: add("tyre", tyre) });
  };
  const own = of(kind);
  if (kind === "wheel") return { rec: addWheel(own), changes };
  if (kind !== "bike") return { rec: add(kind, own), changes };
  const wheel = { ...of("wheel"), ...(own["brake"] !== undefined && { brake: own["brake"] }) };
  const [front, rear] = [addWheel({ ...wheel, side: "front" }), addWheel({ ...wheel, side: "rear" })];
  return { rec: add("bike", { ...own, front, rear }), changes };
}
