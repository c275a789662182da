// From the book to a list: one record a row, its values as they are kept, references by name.

import type { Json } from "../../../log/op/json.ts";
import { member } from "../../../log/op/json.ts";
import { type RecordState, valueOf } from "../../../log/op/merge.ts";
import { csvText, guard } from "./csv.ts";
import { type Column, columnsOf, type Decimal, idColumn, listed, type Shelf } from "./lists.ts";
import { Names } from "./lists_names.ts";
import { isVeiled } from "../../value/value_words.ts";
import { byName } from "../../../words/order.ts";

// listText is the whole file.
export function listText(shelf: Shelf, decimal: Decimal): string {
  const names = new Names(shelf.states);
  const columns = columnsOf(shelf.kind);
  const rows = shelf.states.filter((state) => state.kind === shelf.kind && listed(state)).sort(inOrder)
    .map((state) => [state.rec, ...columns.map((column) => cellOf(state, column, shelf, names, decimal))]);
  return csvText([[idColumn, ...columns.map(({ name }) => name)], ...rows], decimal === "," ? ";" : ",");
}

// cellOf is what stands in a record's cell; "" for what is not known, and for what this phone may not show.
export function cellOf(state: RecordState, column: Column, { who }: Shelf, names: Names, decimal: Decimal): string {
  return isKept(state, column, who) ? "" : written(valueOf(state, column.name) ?? null, column, names, decimal);
}

// isKept: what somebody weighs does not go out from everybody's phone.
export function isKept(state: RecordState, { name }: Column, who: Shelf["who"]): boolean {
  return isVeiled({ rec: state.rec, kind: state.kind, field: name, device: member(state.fields, name)?.shown.device ?? "" }, who);
}

// What does not fit its column (a newer app may have written it) stays out, and is left alone when the list comes back.
function written(value: Json, { spec }: Column, names: Names, decimal: Decimal): string {
  if (spec.type === "flag") return value === true ? "yes" : value === false ? "no" : "";
  if (spec.type === "number") return typeof value === "number" && Number.isFinite(value) ? String(value).replace(".", decimal) : "";
  if (spec.type === "time") return typeof value === "number" && Math.abs(value) <= lastMoment ? new Date(value).toISOString() : "";
  if (typeof value !== "string") return "";
  return guard(spec.type === "ref" && value !== "" ? names.write(value, spec.kinds?.[0] ?? "") : value);
}

const lastMoment = 8.64e15; // ms: what a date can tell

function inOrder(a: RecordState, b: RecordState): number {
  return byName(text(a), text(b)) || (a.rec < b.rec ? -1 : 1);
}

function text(state: RecordState): string {
  const name = valueOf(state, "name");
  return typeof name === "string" ? name : "";
}
