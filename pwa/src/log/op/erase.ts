// Erasing takes a record's values away for good. Of its ops only a frame is kept, which merging, digests and clocks need.

import { canonical, isList, isObject, type Json } from "./json.ts";
import { eraseKind, type Op, type StoredOp } from "./op.ts";

const read = new WeakMap<StoredOp, Op>();

// opOf reads a row's op. Its envelope was checked when it came.
export function opOf(row: StoredOp): Op {
  let op = read.get(row);
  if (op === undefined) read.set(row, (op = JSON.parse(row.bytes) as Op));
  return op;
}

// erasedRow is what is kept of an op once its record was erased. The erase op itself is kept as it is.
export function erasedRow(row: StoredOp): StoredOp {
  if (row.kind === eraseKind) return row;
  const bytes = erasedBytes(opOf(row));
  return bytes === row.bytes ? row : { ...row, bytes };
}

function erasedBytes(op: Op): string {
  const { id, at, kind, rec } = op;
  const set = Object.fromEntries(Object.keys(op.set).sort().map((name) => [name, null]));
  const bases = op.bases && { bases: sorted(op.bases) };
  return JSON.stringify({ id, at, kind, rec, set, ...bases, erased: true });
}

function sorted<T>(from: Readonly<Record<string, T>>): Record<string, T> {
  return Object.fromEntries(Object.entries(from).sort(([a], [b]) => (a < b ? -1 : 1)));
}

// isSame tells whether two rows of one id are the same op. An erased form has no values to compare, but it still says whose
// it is: a frame of another record's must never erase this one.
export function isSame(held: StoredOp, arrived: StoredOp): boolean {
  return held.rec === arrived.rec && sameOp(held.bytes, arrived.bytes);
}

// sameOp tells whether two texts of one id are the same op: spaces and the order of members do not count, and an erased
// form and a full one are the same.
export function sameOp(held: string, arrived: string): boolean {
  if (held === arrived) return true;
  const [a, b] = [JSON.parse(held) as Json, JSON.parse(arrived) as Json];
  return isErased(a) || isErased(b) || canonical(a) === canonical(b);
}

function isErased(op: Json): boolean {
  return isObject(op) && op["erased"] === true;
}

const hash = /^[0-9a-f]{64}$/;

// blobsIn names the files that values refer to: every text of 64 lowercase hex digits is a file's SHA-256.
export function blobsIn(value: Json): string[] {
  if (typeof value === "string") return hash.test(value) ? [value] : [];
  if (isList(value)) return value.flatMap(blobsIn);
  return isObject(value) ? Object.values(value).flatMap(blobsIn) : [];
}
