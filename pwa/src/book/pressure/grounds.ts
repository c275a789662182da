// Grounds kept by name, to be used again.

import type { Change } from "../../log/book_log.ts";
import { isList, isObject, type Json } from "../../log/op/json.ts";
import { type RecordState, valueOf } from "../../log/op/merge.ts";
import { type PressureDraft, readStretches } from "./draft.ts";
import { byName } from "../../words/order.ts";

export interface GroundLine {
  readonly rec: string;
  readonly name: string;
}

// groundLines lists the kept grounds by name. Two of one name are two entries: the newer counts.
export function groundLines(grounds: readonly RecordState[]): readonly GroundLine[] {
  const named = new Map<string, RecordState>();
  for (const ground of grounds) {
    const name = nameOf(ground);
    const before = named.get(name);
    if (name !== "" && (before === undefined || ground.newest > before.newest)) named.set(name, ground);
  }
  return [...named].map(([name, { rec }]) => ({ rec, name })).sort((a, b) => byName(a.name, b.name));
}

function nameOf(ground: RecordState): string {
  const name = valueOf(ground, "name");
  return typeof name === "string" ? name.trim() : "";
}

// groundChange keeps today's ground under a name.
export function groundChange(draft: PressureDraft, name: string, newRec: () => string): Change {
  const stretches = draft.ground.map(({ kind, km, kmh, gd0, washboard, low, high }): Json => ({ kind, length: km, kmh, gd0, washboard, ...(low !== undefined && high !== undefined && { low, high }) }));
  return { rec: newRec(), kind: "ground", set: { name: name.trim(), by: "km", stretches } };
}

// groundEdit makes a kept ground today's. Old ones kept percents: as kilometres they part the day the same way.
export function groundEdit(ground: RecordState): Partial<PressureDraft> | undefined {
  const kept = valueOf(ground, "stretches");
  const stretches = isList(kept) ? kept.filter(isObject).map((each, n) => ({ ...each, km: each["length"], id: `kept${n}-${ground.rec.slice(0, 6)}` })) : [];
  if (stretches.length === 0) return undefined;
  return { ground: readStretches(stretches) };
}
