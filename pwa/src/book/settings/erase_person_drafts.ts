// What is half typed on this phone, cleared of records that were erased, here or elsewhere.

import { isObject, type Json } from "../../log/op/json.ts";
import type { RecordState } from "../../log/op/merge.ts";
import { isId } from "../../log/op/op.ts";
import type { NamedRow } from "../../log/db/tables.ts";
import { roles } from "../bind/bonds.ts";
import type { States } from "../bind/commit.ts";
import { readDraft } from "../pressure/draft.ts";
import { take } from "../bind/take.ts";

const pressure = "pressure"; // and, put aside, "pressure/<bike>"
const answer = "pressure-answer"; // the last answer with its question, of what lies open
const afterRide = "after-ride";

// draftRecs are the records that drafts have to do with.
export function draftRecs(drafts: readonly NamedRow[]): ReadonlySet<string> {
  return new Set(drafts.flatMap((row) => [...idsIn(row.name), ...Object.values(linksOf(row)), bikeOf(row)]).filter(isId));
}

export interface Cleared {
  readonly kept: readonly NamedRow[]; // written anew
  readonly dropped: readonly string[];
}

// cleared takes out what belongs to erased records.
export function cleared(drafts: readonly NamedRow[], erased: ReadonlyMap<string, RecordState>): Cleared {
  const dropped = new Set<string>();
  const kept: NamedRow[] = [];
  for (const row of drafts) {
    const links = linksOf(row);
    if (idsIn(row.name).some((id) => erased.has(id))) dropped.add(row.name);
    else if (Object.values(links).some((rec) => erased.has(rec))) {
      kept.push({ name: row.name, value: forgetful(row, erased) });
      if (row.name === pressure) dropped.add(answer);
      for (const other of drafts) if (other.name === afterRide && bikeOf(other) === links["bike"]) dropped.add(afterRide);
    }
    if (row.name === afterRide && erased.has(bikeOf(row))) dropped.add(afterRide);
  }
  const there = new Set(drafts.map(({ name }) => name));
  return { kept, dropped: [...dropped].filter((name) => there.has(name)) };
}

function forgetful({ value }: NamedRow, erased: ReadonlyMap<string, RecordState>): object {
  const draft = readDraft(value);
  const states = Object.fromEntries(roles.flatMap((role) => {
    const state = erased.get(draft.links[role] ?? "");
    return state === undefined ? [] : [[role, state] as const];
  })) as States;
  return take(draft, states);
}

function idsIn(name: string): readonly string[] {
  return name.match(/[0-9a-f]{32}/g) ?? [];
}

function linksOf({ name, value }: NamedRow): Readonly<Record<string, string>> {
  return name === pressure || name.startsWith(`${pressure}/`) ? readDraft(value).links : {};
}

function bikeOf({ name, value }: NamedRow): string {
  const bike = name === afterRide && isObject(value as Json) ? (value as { readonly bike?: unknown }).bike : undefined;
  return typeof bike === "string" ? bike : "";
}
