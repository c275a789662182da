import first from "../testdata/v1.json";
import second from "../testdata/v2.json";
import { equal, test } from "../../ui/testing.ts";
import { BookLog } from "../book_log.ts";
import { FakeServer } from "../sync/fake_server.test.ts";
import { Database, type StoreName } from "./idb.ts";
import { IdbTables } from "./idb_tables.ts";
import { t0 } from "./kit.test.ts";
import { merge, valueOf } from "../op/merge.ts";
import { opOf } from "../op/erase.ts";
import { DraftBox } from "./draft.ts";
import { everything } from "./states.ts";
import { Sync } from "../sync/sync.ts";

// The files hold databases as earlier versions of this app left them: the first of all; and one with what a person had
// only begun, a question of Pressure, a walk-around and a trip. Phones have such databases for years: the files are never
// written anew, and whatever the app becomes, it must open them.

interface Store {
  readonly keyPath: string | string[];
  readonly indexes: Readonly<Record<string, string>>;
  readonly rows: readonly object[];
}

interface Dump {
  readonly name: string;
  readonly version: number;
  readonly stores: unknown;
}

async function asItWas(dump: Dump = first): Promise<Database> {
  const stores = Object.entries(dump.stores as Record<StoreName, Store>);
  await new Promise((resolve) => (indexedDB.deleteDatabase(dump.name).onsuccess = resolve));
  const old = await new Promise<IDBDatabase>((resolve, reject) => {
    const request = indexedDB.open(dump.name, dump.version);
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error ?? new Error("no database"));
    request.onupgradeneeded = () => {
      for (const [name, { keyPath, indexes, rows }] of stores) {
        const store = request.result.createObjectStore(name, { keyPath });
        for (const [index, path] of Object.entries(indexes)) store.createIndex(index, path);
        for (const row of rows) store.put(withBytes(row));
      }
    };
  });
  old.close();
  return new Database(dump.name);
}

function withBytes(row: object): object {
  const text = (row as { bytes?: { base64?: string } }).bytes?.base64;
  return text === undefined ? row : { ...row, bytes: Uint8Array.from(atob(text), (sign) => sign.charCodeAt(0)).buffer };
}

test("old format: a database of the first version opens with all it holds", async () => {
  const log = new BookLog(Promise.resolve(await asItWas()), { now: () => t0 + 1000 });
  const [tyre] = await log.all("tyre");
  equal([valueOf(tyre, "name"), valueOf(tyre, "measured_mm"), tyre?.clashes], ["Ochre 40s", 42, ["measured_mm"]]);
  equal((await log.clashing()).map((state) => state.rec), [tyre?.rec]);
  equal([(await log.all("gauge")).length, (await log.all("person")).length, (await log.all("lamp")).length], [0, 0, 1]);
  equal([log.me, (await log.all("device")).map((state) => state.rec)], ["0369fd64ead86cfe5618d86a50898ff8", [log.device]]);
  equal((await log.rejected()).map(({ code, op }) => [code, op?.kind]), [["op_malformed", "poison"]]);
  equal((await log.history(tyre?.rec ?? "")).length, 3);
  const [draft] = await (await log.tables).read(["drafts"], (tx) => tx.get("drafts", ["pressure"]));
  equal(draft?.value, { rider: "72", front: { label: "40" } });
});

test("old format: its states are what its ops say today", async () => {
  for (const [dump, held] of [[first, [11, 7]], [second, [16, 15]]] as const) {
    const tables = new IdbTables(await asItWas(dump));
    const [ops, states] = await tables.read(["ops", "records"], async (tx) => [await tx.page("ops", "", 100), await everything(tx)] as const);
    equal([ops.length, states.length], held);
    for (const state of states) {
      const again = merge(state.rec, ops.filter((row) => row.rec === state.rec).map(opOf));
      equal(inOneOrder(again), inOneOrder(state), state.kind);
    }
  }
});

test("old format: what was only begun is still there, letter for letter", async () => {
  const db = await asItWas(second);
  const drafts = new DraftBox(Promise.resolve(db), () => undefined);
  const rows = second.stores.drafts.rows as readonly { name: string; value: unknown }[];
  equal(rows.length, 5);
  for (const { name, value } of rows) equal(await drafts.load(name), value, name);
  const log = new BookLog(Promise.resolve(db), { now: () => t0 });
  equal((await log.all("trip")).map((state) => valueOf(state, "name")), ["Island"]);
  equal((await log.all("pack_tick")).length, 3);
});

// inOneOrder sorts members by name: they need not be stored in today's order.
function inOneOrder(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(inOneOrder);
  if (typeof value !== "object" || value === null) return value;
  return Object.entries(value).sort(([a], [b]) => (a < b ? -1 : 1)).map(([name, each]) => [name, inOneOrder(each)]);
}

test("old format: it goes on where it was: what was sent is not sent again, what was saved is", async () => {
  const log = new BookLog(Promise.resolve(await asItWas()), { now: () => t0 + 1000 });
  const server = new FakeServer();
  const sync = new Sync(log, { fetch: server.fetch, now: () => t0 + 1000 });
  const [known] = await (await log.tables).read(["logs"], (tx) => tx.page("logs", "", 1));
  const [sent] = await (await log.tables).read(["sent", "ops"], async (tx) => [await tx.get("ops", await tx.sentTo(known?.log ?? ""))]);
  server.log = known?.log ?? "";
  server.book = log.book;
  server.ops = (sent ?? []).flatMap((row) => row ?? []);
  equal(server.ops.length, 9);
  equal([await sync.round(), server.ops.length, sync.state.unsent], ["met", 10, 0]);
  equal(server.asked.slice(0, 2), ["GET api/book", "POST api/ops"]);
  equal(server.asked.includes("GET api/ops"), false, "nothing new is there");
  equal(await (await sync.getPhoto("92b2fa58028958317e408bd84ecfa70f5ee35b121991dbc232c49d166353708b"))?.text(), "a picture");
});
