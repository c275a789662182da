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

// erasedBytes writes the frame byte for byte as the server does, names sorted: two holders of an erased op then hold the same,
// and either can mend the other's. An object would put names that look like numbers first.
function erasedBytes({ id, at, kind, rec, set, bases }: Op): string {
  const nulls = byName(set).map(([name]) => `${quoted(name)}:null`);
  const lists = bases && byName(bases).map(([name, ids]) => `${quoted(name)}:${JSON.stringify(ids)}`);
  return `{"id":"${id}","at":${at},"kind":${quoted(kind)},"rec":"${rec}","set":{${nulls.join(",")}}${lists ? `,"bases":{${lists.join(",")}}` : ""},"erased":true}`;
}

const escaped = /[<>&\u2028\u2029]/g; // as Go's encoding/json writes them

function quoted(text: string): string {
  return JSON.stringify(text).replace(escaped, (sign) => `\\u${sign.charCodeAt(0).toString(16).padStart(4, "0")}`);
}

// byName sorts members by the bytes of their names in UTF-8, which is the order of their code points.
function byName<T>(from: Readonly<Record<string, T>>): [string, T][] {
  return Object.entries(from).sort(([a], [b]) => comparePoints([...a], [...b]));
}

function comparePoints(a: readonly string[], b: readonly string[]): number {
  const at = a.findIndex((sign, i) => sign !== b[i]);
  return at < 0 ? a.length - b.length : (a[at]?.codePointAt(0) ?? 0) - (b[at]?.codePointAt(0) ?? -1);
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
