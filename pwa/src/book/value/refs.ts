// Which records have to be known to tell of others: those that values point to, and who set them.

import { isList, isObject, type Json } from "../../log/op/json.ts";
import type { RecordState } from "../../log/op/merge.ts";
import { isId } from "../../log/op/op.ts";

interface Written {
  readonly author: string;
  readonly device: string;
}

export function refsIn(states: readonly RecordState[]): Set<string> {
  const found = new Set<string>();
  for (const { fields, deletion } of states) {
    for (const { shown, others } of [...Object.values(fields), ...(deletion === undefined ? [] : [deletion])]) {
      for (const candidate of [shown, ...others]) addRefs(found, candidate.value, candidate);
    }
  }
  return found;
}

// refsOf does the same for things that were written: history and refusals.
export function refsOf(written: readonly (Partial<Written> & { readonly set: Readonly<Record<string, Json>> })[]): Set<string> {
  const found = new Set<string>();
  for (const { set, author = "", device = "" } of written) addRefs(found, set, { author, device });
  return found;
}

function addRefs(found: Set<string>, value: Json, { author, device }: Written): void {
  for (const rec of [author, device]) if (rec !== "") found.add(rec);
  addIds(found, value);
}

function addIds(found: Set<string>, value: Json): void {
  if (isId(value)) found.add(value);
  else if (isList(value)) for (const each of value) addIds(found, each);
  else if (isObject(value)) for (const each of Object.values(value)) addIds(found, each);
}
