// The states of records as they were last merged, so that lists need not merge anything. They are a copy of what the ops
// say, written in rows of many; which ones clash, and how often something was written, stands beside them.

import { opOf } from "../op/erase.ts";
import { isFinite } from "../op/json.ts";
import { type FieldState, merge, type RecordState } from "../op/merge.ts";
import type { StatesRow, Tables, Tx } from "./tables.ts";

export const stateStores = ["records", "meta"] as const;

// Edition tells which writing of the states this is: version counts the writes, and whoever has seen a higher one knows better.
export interface Edition {
  readonly version: number;
  readonly clashing: readonly string[];
}

const named = "states";

export async function edition(tx: Tx): Promise<Edition> {
  const [row] = await tx.get("meta", [named]);
  return (row?.value as Edition | undefined) ?? { version: 0, clashing: [] };
}

export interface Merged {
  readonly before: Pick<RecordState, "kind" | "erased"> | undefined; // undefined when it is new
  readonly state: RecordState;
  readonly kinds: readonly string[]; // all that it ever was
}

// writeStates writes what records have become. It gives the new version.
export async function writeStates(tx: Tx, before: Edition, merged: readonly Merged[]): Promise<number> {
  const version = before.version + 1;
  const rows = new Map<string, { states: RecordState[]; gone: string[] }>();
  const row = (kind: string): { states: RecordState[]; gone: string[] } => {
    let found = rows.get(kind);
    if (found === undefined) rows.set(kind, (found = { states: [], gone: [] }));
    return found;
  };
  const clashes = new Set(before.clashing);
  for (const { before, state } of merged) {
    row(state.kind).states.push(state);
    if (before !== undefined && before.kind !== state.kind) row(before.kind).gone.push(state.rec);
    if (state.clashes.length > 0) clashes.add(state.rec);
    else clashes.delete(state.rec);
  }
  tx.put("records", [...rows].map(([kind, { states, gone }]) => packed(version, kind, states, gone)));
  tx.put("meta", [{ name: named, value: { version, clashing: [...clashes] } satisfies Edition }]);
  const erased = merged.flatMap(({ before, state, kinds }) => (state.erased && before?.erased === false ? kinds : []));
  for (const kind of new Set(erased)) await compact(tx, await tx.statesOf(kind), version); // no old state may keep a value
  return version;
}

function packed(version: number, kind: string, states: readonly RecordState[], gone: readonly string[]): StatesRow {
  const rec = `${String(version).padStart(12, "0")} ${kind}`;
  return { rec, kind, count: states.length, states: states.every(isPlain) ? JSON.stringify(states) : states, gone };
}

function unpacked({ states }: StatesRow): readonly RecordState[] {
  return typeof states === "string" ? (JSON.parse(states) as RecordState[]) : states;
}

// isPlain: JSON has no word for numbers too large for a double, though ops may bring them.
function isPlain({ fields, deletion }: RecordState): boolean {
  const isTold = (field: FieldState): boolean => isFinite(field.shown.value) && field.others.every((other) => isFinite(other.value));
  return Object.values(fields).every(isTold) && (deletion === undefined || isTold(deletion));
}

// latest gives the states that rows of a kind hold, of removed and erased records too.
export function latest(rows: readonly StatesRow[]): readonly RecordState[] {
  const found = new Map<string, RecordState>();
  for (const row of rows) {
    for (const state of unpacked(row)) found.set(state.rec, state);
    for (const rec of row.gone) found.delete(rec);
  }
  return [...found.values()];
}

// recordsOf lists all records of a kind, removed and erased ones too.
export async function recordsOf(tx: Tx, kind: string): Promise<readonly RecordState[]> {
  return latest(await tx.statesOf(kind));
}

// everything lists all records of all kinds.
export async function everything(tx: Tx): Promise<readonly RecordState[]> {
  const byKind = new Map<string, StatesRow[]>();
  for (const row of await tx.page("records", "", all)) byKind.set(row.kind, [...(byKind.get(row.kind) ?? []), row]);
  return [...byKind.values()].flatMap(latest);
}

const all = 2 ** 32 - 1;

// compact makes one row of a kind's last rows: what is no longer so is forgotten.
async function compact(tx: Tx, rows: readonly StatesRow[], version: number): Promise<void> {
  const kind = rows[0]?.kind;
  if (kind === undefined) return;
  const states = latest(rows);
  const left = new Set(states.map((state) => state.rec));
  const gone = new Set(rows.flatMap((row) => row.gone).filter((rec) => !left.has(rec)));
  tx.remove("records", rows.map((row) => row.rec));
  tx.put("records", [packed(version, kind, states, [...gone])]);
}

const mostRows = 100; // of a kind
const large = 500; // states of a row that is left alone: writing it anew each time would take long

export function isUntidy(rows: readonly StatesRow[]): boolean {
  return rows.length > mostRows;
}

// tidy makes few rows of a kind's many: of those behind the last large one, or of all when most of them is outdated.
export async function tidy(tables: Tables, kind: string): Promise<void> {
  await tables.write(stateStores, async (tx) => {
    const rows = await tx.statesOf(kind);
    if (!isUntidy(rows)) return;
    const { version } = await edition(tx);
    const isOutdated = rows.reduce((sum, row) => sum + row.count, 0) > 2 * latest(rows).length + large;
    const small = rows.slice(rows.findLastIndex((row) => row.count >= large) + 1);
    await compact(tx, isOutdated || small.length < mostRows / 2 ? rows : small, version);
  });
}

// stateOf merges one record anew from its ops.
export async function stateOf(tx: Tx, rec: string): Promise<RecordState | undefined> {
  return (await statesFor(tx, [rec]))[0];
}

export async function statesFor(tx: Tx, recs: readonly string[]): Promise<readonly (RecordState | undefined)[]> {
  const held = await tx.opsOf(recs);
  return recs.map((rec, i) => {
    const rows = held[i] ?? [];
    return rows.length === 0 ? undefined : merge(rec, rows.map(opOf));
  });
}
