// Taking ops in, from a person's hand, a server or a file: stored once, erased where their record is, and the records
// they touch merged anew from all their ops.

import { blobsIn, erasedRow, opOf, sameOp } from "./erase.ts";
import { type Held, lookIn, type Lookup } from "./held.ts";
import type { StoreName } from "./idb.ts";
import { frameOf, merge, type RecordState } from "./merge.ts";
import { erases, type Op, type StoredOp } from "./op.ts";
import { forgetValues } from "./rejected.ts";
import { type Merged, standing, stateStores, writeStates } from "./states.ts";
import type { Tx } from "./tables.ts";

export interface Taken {
  readonly stored: readonly string[];
  readonly known: readonly string[];
  readonly refused: readonly StoredOp[]; // an op of that id with other content is here already
  readonly states: readonly RecordState[]; // of the records touched
  readonly version: number; // of the states
}

export const receiveStores = ["ops", "photos", "rejected", ...stateStores] as const satisfies readonly StoreName[];

// rowOf makes an op's row.
export function rowOf(op: Op, bytes: string, came: Pick<StoredOp, "via" | "receivedAt"> = {}): StoredOp {
  const { id, rec, at, kind } = op;
  return { id, rec, at, kind, bytes, ...came };
}

// receive takes rows in whose envelope was checked. It belongs into one write transaction over receiveStores.
export async function receive(tx: Tx, arrived: readonly StoredOp[], held?: Held): Promise<Taken> {
  const now = await standing(tx);
  const lookup = held?.isCurrent(now.version) === true ? held : lookIn(tx);
  const { fresh, known, refused } = await sorted(lookup, arrived);
  const byRec = new Map<string, StoredOp[]>();
  for (const row of fresh.values()) {
    const more = byRec.get(row.rec);
    if (more === undefined) byRec.set(row.rec, [row]);
    else more.push(row);
  }
  const touched = [...byRec.keys()];
  const others = await lookup.opsOf(touched);
  const merged: Merged[] = [];
  const changed: StoredOp[] = [];
  const lost = new Set<string>();
  touched.forEach((rec, i) => {
    const rows = new Map((others[i] ?? []).map((row) => [row.id, row]));
    const before = new Map(rows);
    for (const row of byRec.get(rec) ?? []) rows.set(row.id, row);
    const { kept, state, gone } = settled(rec, [...rows.values()]);
    const kinds = [...new Set(kept.map((row) => row.kind))];
    merged.push({ before: before.size === 0 ? undefined : frameOf([...before.values()].map(opOf)), state, kinds });
    changed.push(...kept.filter((row) => before.get(row.id) !== row));
    gone.forEach((blob) => lost.add(blob));
  });
  tx.put("ops", changed);
  const version = merged.length > 0 ? await writeStates(tx, now, merged) : now.version;
  if (lookup === held) held.take(changed, version);
  if (lost.size > 0) await dropPhotos(tx, lost);
  const erased = merged.filter(({ state }) => state.erased).map(({ state }) => state.rec);
  if (erased.length > 0) await forgetValues(tx, new Set(erased));
  const knownIds = new Set(known);
  return { stored: [...fresh.keys()].filter((id) => !knownIds.has(id)), known, refused, states: merged.map(({ state }) => state), version };
}

interface Sorted {
  readonly fresh: ReadonlyMap<string, StoredOp>; // to be written
  readonly known: readonly string[];
  readonly refused: readonly StoredOp[];
}

async function sorted(lookup: Lookup, arrived: readonly StoredOp[]): Promise<Sorted> {
  const held = new Map<string, StoredOp>();
  for (const row of await lookup.ops(arrived.map((row) => row.id))) if (row !== undefined) held.set(row.id, row);
  const fresh = new Map<string, StoredOp>();
  const known: string[] = [];
  const refused: StoredOp[] = [];
  for (const row of arrived) {
    const here = held.get(row.id);
    if (here === undefined) {
      held.set(row.id, row);
      fresh.set(row.id, row);
    } else if (!sameOp(here.bytes, row.bytes)) {
      refused.push(row);
    } else {
      known.push(row.id);
      if (isFrame(row) && !isFrame(here)) fresh.set(row.id, erasedRow(here)); // its record was erased elsewhere
    }
  }
  return { fresh, known, refused };
}

function isFrame(row: StoredOp): boolean {
  return row.bytes.includes('"erased"') && opOf(row).erased === true;
}

// settled merges a record. When it is erased, only the frames of its ops are kept, and the photos they named are gone.
function settled(rec: string, rows: readonly StoredOp[]): { kept: readonly StoredOp[]; state: RecordState; gone: string[] } {
  const ops = rows.map(opOf);
  const state = merge(rec, ops);
  if (!ops.some(erases)) return { kept: rows, state, gone: [] };
  return { kept: rows.map(erasedRow), state, gone: ops.flatMap((op) => blobsIn(op.set)) };
}

const pageSize = 500;

// dropPhotos deletes photos that an erased record named, unless an op that is left names them too.
async function dropPhotos(tx: Tx, lost: ReadonlySet<string>): Promise<void> {
  const photos = await tx.get("photos", [...lost]);
  const left = new Set(photos.flatMap((photo) => photo?.sha256 ?? []));
  for (let after = ""; left.size > 0; ) {
    const rows = await tx.page("ops", after, pageSize);
    for (const row of rows) {
      const named = [...left].filter((blob) => row.bytes.includes(blob));
      if (named.length > 0) blobsIn(opOf(row).set).forEach((blob) => left.delete(blob));
    }
    const last = rows.at(-1);
    if (last === undefined) break;
    after = last.id;
  }
  tx.remove("photos", [...left]);
}
