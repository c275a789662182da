// What a person does to a record, as an op that is yet to get its id and time. An op names what it replaces: not what
// this phone knows when it saves, but what the person saw.

import { type Json, member, mended } from "./json.ts";
import { type FieldState, type RecordState, heads } from "./merge.ts";
import { type Bases, deletedField, eraseKind } from "./op.ts";

// Change is an edit of a record, or a new record.
export interface Change {
  readonly rec: string;
  readonly kind: string;
  readonly set: Readonly<Record<string, Json>>;
  readonly shown?: RecordState; // the state the person saw; absent for a new record
}

export interface Intent {
  readonly rec: string;
  readonly kind: string;
  readonly set: Readonly<Record<string, Json>>;
  readonly bases: Bases;
  readonly seen?: readonly string[];
}

// edit replaces, in each field, all values equal to the one that was shown.
export function edit({ rec, kind, set, shown }: Change): Intent {
  const bases = Object.keys(set).map((name) => [name, fieldOf(shown, name)?.shown.ops ?? []] as const);
  return { rec, kind, set, bases: Object.fromEntries(bases.filter(([, ops]) => ops.length > 0)) };
}

// removal hides a record; it names every value that the person who removes it knew.
export function removal(shown: RecordState): Intent {
  return deletion(shown, true, shown.deletion?.shown.ops ?? []);
}

// confirmation hides a record for good in spite of what others did meanwhile.
export function confirmation(shown: RecordState): Intent {
  return deletion(shown, true, heads(shown.deletion));
}

export function restoration(shown: RecordState): Intent {
  return deletion(shown, false, heads(shown.deletion));
}

// choice ends a clash: it replaces all values of the field.
export function choice(shown: RecordState, field: string, value: Json): Intent {
  if (field === deletedField) return value === true ? confirmation(shown) : restoration(shown);
  const { rec, kind } = shown;
  return { rec, kind, set: Object.fromEntries([[field, value]]), bases: Object.fromEntries([[field, heads(fieldOf(shown, field))]]) };
}

export function erasure(rec: string, kind: string): Intent {
  return { rec, kind: eraseKind, set: { kind }, bases: {} };
}

function deletion(shown: RecordState, deleted: boolean, replaced: readonly string[]): Intent {
  const { rec, kind } = shown;
  const bases: Bases = replaced.length > 0 ? { [deletedField]: replaced } : {};
  const seen = [...new Set(Object.values(shown.fields).flatMap(heads))].sort();
  return { rec, kind, set: { [deletedField]: deleted }, bases, ...(deleted && { seen }) };
}

function fieldOf(shown: RecordState | undefined, name: string): FieldState | undefined {
  return name === deletedField ? shown?.deletion : shown && member(shown.fields, name);
}

export interface Stamp {
  readonly id: string;
  readonly at: number;
  readonly author: string;
  readonly device: string;
}

export const schema = 1;

// textOf is the text of a new op.
export function textOf({ rec, kind, set, bases, seen }: Intent, { id, at, author, device }: Stamp): string {
  const values = mended(set);
  const some = Object.keys(bases).length > 0 && { bases: mended(bases) };
  return JSON.stringify({ id, at, kind, rec, set: values, ...some, ...(seen && { seen }), author, device, schema }, onlyJson);
}

// A number that is none would be stored as null, and nobody would ever know.
function onlyJson(name: string, value: unknown): unknown {
  if (typeof value === "number" && !Number.isFinite(value)) throw new TypeError(`${name} is ${value}, which JSON cannot hold`);
  return value;
}
