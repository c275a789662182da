// A phone for tests of the sync: the real log and the real sync, and a way to a server that can be turned.

import { BookLog, newRec } from "../book_log.ts";
import type { FakeServer } from "./fake_server.test.ts";
import type { Database } from "../db/idb.ts";
import type { Json } from "../op/json.ts";
import { t0 } from "../db/kit.test.ts";
import { MemoryTables } from "../db/memory.ts";
import type { RecordState } from "../op/merge.ts";
import { Sync } from "./sync.ts";
import type { Tables } from "../db/tables.ts";

export const book = newRec();
export interface Phone {
  readonly tables: Tables | Database;
  readonly log: BookLog;
  readonly sync: Sync;
  readonly clock: { now: number };
  readonly way: { server: FakeServer }; // where its requests go
}

export function phone(server: FakeServer, tables: Tables | Database = new MemoryTables(`rimside-${book}`)): Phone {
  const [clock, way] = [{ now: t0 }, { server }];
  const log = new BookLog(Promise.resolve(tables), { now: () => clock.now });
  const sync = new Sync(log, { fetch: (path, init) => way.server.fetch(path, init), now: () => clock.now });
  return { tables, log, sync, clock, way };
}

export async function added({ log }: Phone, set: Record<string, Json> = { name: "Ochre" }, kind = "tyre"): Promise<RecordState> {
  return (await log.save([{ rec: newRec(), kind, set }]))[0] as RecordState;
}

export async function edited({ log }: Phone, rec: string, set: Record<string, Json>): Promise<RecordState> {
  const shown = (await log.get(rec)) as RecordState;
  return (await log.save([{ rec, kind: shown.kind, set, shown }]))[0] as RecordState;
}
