// Which records go out and come in as lists, and what their columns hold.

import { member } from "../../../log/op/json.ts";
import type { RecordState } from "../../../log/op/merge.ts";
import { either, w } from "../../../words/index.ts";
import { type KindField, kinds } from "../../value/kinds.ts";
import type { Who } from "../../bind/take.ts";

export const listKinds = ["bike", "wheel", "tyre", "person", "gauge", "pump"] as const;
export type ListKind = (typeof listKinds)[number];

export type Decimal = "." | ",";

export interface Column {
  readonly name: string; // the field's, as in the file's first line
  readonly spec: KindField;
}

// Shelf is what a list is written from and read against.
export interface Shelf {
  readonly kind: ListKind;
  readonly states: readonly RecordState[]; // all records of the book, removed and erased ones too
  readonly who: Who;
}

export const idColumn = "id";

// columnsOf are a list's columns beside the id.
export function columnsOf(kind: ListKind): readonly Column[] {
  return Object.entries(member(kinds, kind)?.fields ?? {}).map(([name, spec]) => ({ name, spec }));
}

export const listed = (state: RecordState): boolean => !state.deleted && !state.erased;

// standWords say what may stand in a column.
export function standWords({ spec }: Column): string {
  switch (spec.type) {
    case "number": return rangeWords(spec);
    case "text": return w("listStand.text", { max: spec.max ?? 0 });
    case "choice": return either(spec.options ?? []);
    case "flag": return w("listStand.flag");
    case "day": return w("listStand.day");
    case "time": return w("listStand.time");
    case "ref": return w("listStand.ref");
    default: return "";
  }
}

export function rangeWords({ min = 0, max = 0, unit = "" }: KindField): string {
  const range = w("listStand.range", { min: String(min), max: String(max) });
  return unit === "" ? range : w("listStand.with", { range, unit });
}
