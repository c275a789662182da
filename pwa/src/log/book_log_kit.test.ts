// Phones without a server, for the tests of the log as screens see it.

import { equal } from "../ui/testing.ts";
import { BookLog, newRec } from "./book_log.ts";
import { Database } from "./db/idb.ts";
import type { Json } from "./op/json.ts";
import { t0 } from "./db/kit.test.ts";
import { MemoryTables } from "./db/memory.ts";
import { type RecordState } from "./op/merge.ts";
import type { Tables } from "./db/tables.ts";

let count = 0;

export const onDisk = (): Database => new Database(`rimside-test-log-${Date.now()}-${++count}`);
export const inMemory = (): MemoryTables => new MemoryTables(`rimside-${newRec()}`);

export interface Phone {
  readonly log: BookLog;
  readonly clock: { now: number };
}

export function phone(tables: Database | Tables = inMemory()): Phone {
  const clock = { now: t0 };
  return { log: new BookLog(Promise.resolve(tables), { now: () => clock.now }), clock };
}

export const first = (states: readonly RecordState[]): RecordState => states[0] as RecordState;

export async function added(log: BookLog, set: Record<string, Json>, kind = "tyre"): Promise<RecordState> {
  return first(await log.save([{ rec: newRec(), kind, set }]));
}

export async function edited(log: BookLog, shown: RecordState, set: Record<string, Json>): Promise<RecordState> {
  return first(await log.save([{ rec: shown.rec, kind: shown.kind, set, shown }]));
}

// passed copies all ops of one phone to another, as a file would.
export async function passed(from: BookLog, to: BookLog): Promise<void> {
  const text = (await from.exportText()).replace(from.book, to.book);
  const result = await to.importText(text);
  equal(result.kind === "read" && result.bad.length === 0, true, "the file was read");
}

export const state = async (log: BookLog, of: RecordState): Promise<RecordState> => (await log.get(of.rec)) as RecordState;
