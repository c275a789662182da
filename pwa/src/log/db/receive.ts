// Taking ops in, from a person's hand, a server or a file: stored once, erased where their record is, and the records
// they touch merged anew from all their ops.

import { blobsIn, erasedRow, isSame, opOf } from "../op/erase.ts";
import { type Held, lookIn, type Lookup } from "./held.ts";
import type { StoreName } from "./idb.ts";
import { frameOf, merge, type RecordState } from "../op/merge.ts";
import type { Op, StoredOp } from "../op/op.ts";
import { forgetValues } from "./rejected.ts";
import { type Merged, edition, stateStores, writeStates } from "./states.ts";
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
  const now = await edition(tx);
  const lookup = held?.isCurrent(now.version) === true ? held : lookIn(tx);
  const { fresh, ...verdict } = await compared(lookup, arrived);
  const byRec = grouped([...fresh.values()]);
  const others = await lookup.opsOf([...byRec.keys()]);
  const touched = [...byRec].map(([rec, rows], i) => joined(rec, others[i] ?? [], rows));
  const changed = touched.flatMap((each) => each.changed);
  tx.put("ops", changed);
  const version = touched.length > 0 ? await writeStates(tx, now, touched) : now.version;
  if (lookup === held) held.take(changed, version);
  await forget(tx, touched);
  return { ...verdict, states: touched.map(({ state }) => state), version };
}

function grouped(rows: readonly StoredOp[]): ReadonlyMap<string, readonly StoredOp[]> {
  const byRec = new Map<string, StoredOp[]>();
  for (const row of rows) {
    const others = byRec.get(row.rec);
    if (others === undefined) byRec.set(row.rec, [row]);
    else others.push(row);
  }
  return byRec;
}

interface Touched extends Merged {
  readonly changed: readonly StoredOp[]; // rows to be written
  readonly blobs: readonly string[]; // photos that its ops no longer name
}

// joined merges a record with what arrived. When it is erased, only the frames of its ops are kept.
function joined(rec: string, before: readonly StoredOp[], arrived: readonly StoredOp[]): Touched {
  const rows = [...new Map([...before, ...arrived].map((row) => [row.id, row])).values()];
  const ops = rows.map(opOf);
  const state = merge(rec, ops);
  const kept = state.erased ? rows.map(erasedRow) : rows;
  const old = new Set(before);
  return {
    state, changed: kept.filter((row) => !old.has(row)), blobs: state.erased ? ops.flatMap((op) => blobsIn(op.set)) : [],
    before: before.length === 0 ? undefined : frameOf(before.map(opOf)), kinds: [...new Set(rows.map((row) => row.kind))],
  };
}

// forget drops what erased records leave elsewhere: their photos, and their refused ops.
async function forget(tx: Tx, touched: readonly Touched[]): Promise<void> {
  const erased = touched.filter(({ state }) => state.erased);
  if (erased.length === 0) return;
  await dropPhotos(tx, new Set(erased.flatMap(({ blobs }) => blobs)));
  await forgetValues(tx, new Set(erased.map(({ state }) => state.rec)));
}

interface Compared extends Pick<Taken, "stored" | "known" | "refused"> {
  readonly fresh: ReadonlyMap<string, StoredOp>; // to be written
}

async function compared(lookup: Lookup, arrived: readonly StoredOp[]): Promise<Compared> {
  const held = new Map<string, StoredOp>();
  for (const row of await lookup.ops(arrived.map((row) => row.id))) if (row !== undefined) held.set(row.id, row);
  const fresh = new Map<string, StoredOp>();
  const [stored, known]: [string[], string[]] = [[], []];
  const refused: StoredOp[] = [];
  for (const row of arrived) {
    const here = held.get(row.id);
    if (here === undefined) {
      held.set(row.id, row);
      fresh.set(row.id, row);
      stored.push(row.id);
    } else if (!isSame(here, row)) {
      refused.push(row);
    } else {
      known.push(row.id);
      if (isFrame(row) && !isFrame(here)) fresh.set(row.id, erasedRow(here)); // its record was erased elsewhere
    }
  }
  return { fresh, stored, known, refused };
}

function isFrame(row: StoredOp): boolean {
  return row.bytes.includes('"erased"') && opOf(row).erased === true;
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
