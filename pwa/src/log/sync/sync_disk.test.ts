import { equal, rejected, test, until } from "../../ui/testing.ts";
import { BookLog, newRec } from "../book_log.ts";
import { opOf } from "../op/erase.ts";
import { FakeServer } from "./fake_server.test.ts";
import { Database, StorageTrouble } from "../db/idb.ts";
import { t0 } from "../db/kit.test.ts";
import { MemoryTables } from "../db/memory.ts";
import { merge } from "../op/merge.ts";
import type { StoredOp } from "../op/op.ts";
import { added, edited, phone } from "./phone.test.ts";
import { everything } from "../db/states.ts";
import { Sync } from "./sync.ts";

// The sync on a real database: tabs, refusals, and what is remembered.

let count = 0;

test("sync: what is saved in the middle of a long fetch, here or in another tab, is merged with what comes", async () => {
  const server = new FakeServer();
  const name = `rimside-${newRec()}`;
  const ana = phone(server, new MemoryTables(name));
  const [here, there] = [phone(server, new Database(name)), phone(server, new Database(name))];
  const recs = Array.from({ length: 1300 }, newRec);
  await ana.log.save(recs.map((rec) => ({ rec, kind: "tyre", set: { name: "Ochre", note: "x" } })));
  for (const shown of await ana.log.all("tyre")) if (shown.rec > "e") await edited(ana, shown.rec, { note: "y" });
  await ana.sync.round();
  const fetch = server.fetch;
  let page = 0;
  Object.assign(server, { fetch: async (path: string, init: RequestInit) => {
    if (path.startsWith("api/ops?") && ++page <= 3) {
      for (const [i, each] of [here, there].entries()) await each.log.save([{ rec: recs[page * 2 + i] ?? "", kind: "tyre", set: { name: `mine ${page}` } }]);
    }
    return fetch(path, init);
  } });
  await Promise.all([here.log.all("tyre"), there.log.all("tyre"), there.log.clashing()]);
  equal(await here.sync.round(), "met");
  const [ops, states] = await (await here.log.tables).read(["ops", "records"], async (tx) => [await tx.page("ops", "", 10_000), await everything(tx)] as const);
  const rows = new Map<string, StoredOp[]>();
  for (const row of ops) rows.set(row.rec, [...(rows.get(row.rec) ?? []), row]);
  equal(states.length, rows.size);
  for (const state of states) equal(state, merge(state.rec, (rows.get(state.rec) ?? []).map(opOf)), state.rec);
  equal(states.filter((state) => state.clashes.length > 0).length, 6);
  for (const { log } of [here, there]) {
    let clashing = 0;
    for (let tries = 0; clashing !== 6 && tries < 100; tries++) {
      clashing = (await log.all("tyre")).filter((state) => state.clashes.length > 0).length;
      if (clashing !== 6) await new Promise((resolve) => setTimeout(resolve, 20)); // until the other tab's word is here
    }
    equal([clashing, (await log.clashing()).length, (await log.all("tyre")).length], [6, 6, 1300]);
  }
});

test("sync: IndexedDB: a phone that is full in the middle of a page has nothing of it, and says so", async () => {
  const server = new FakeServer();
  const ana = phone(server);
  for (let i = 0; i < 3; i++) await added(ana);
  await ana.sync.round();
  const database = new Database(`rimside-test-sync-${Date.now()}-${++count}`);
  Object.defineProperty(database, "name", { value: database.name });
  const put = IDBObjectStore.prototype.put;
  const real = phone(server, database);
  await real.log.ready;
  server.book = real.log.book; // the name of a test's database stands for its book
  IDBObjectStore.prototype.put = function (this: IDBObjectStore, ...args: Parameters<typeof put>) {
    if (this.name === "sent") throw new DOMException("no room", "QuotaExceededError");
    return put.apply(this, args);
  };
  try {
    equal([await real.sync.round(), real.sync.state.trouble?.code], ["storage", "full"]);
  } finally {
    IDBObjectStore.prototype.put = put;
  }
  const rows = await (await real.log.tables).read(["ops", "records", "logs"], async (tx) => [await tx.count("ops"), await tx.count("records"), await tx.count("logs")]);
  equal(rows, [0, 0, 0]);
  equal([await real.sync.round(), real.sync.state.trouble, (await real.log.all("tyre")).length], ["met", undefined, 3]);
});

test("sync: IndexedDB: what was met is remembered at the next start", async () => {
  const server = new FakeServer();
  const database = new Database(`rimside-test-sync-${Date.now()}-${++count}`);
  const ana = phone(server, database);
  await added(ana);
  await ana.sync.round();
  await added(ana);
  const again = phone(server, new Database(database.name));
  await again.sync.ready;
  const { phase, unsent, lastMet, server: at } = again.sync.state;
  equal([phase, unsent, lastMet, at], ["idle", 1, t0, "car"]);
});

test("sync: a second tab shows what the first one does", async () => {
  const server = new FakeServer();
  const databaseName = `rimside-test-sync-${Date.now()}-${++count}`;
  const [one, two] = [phone(server, new Database(databaseName)), phone(server, new Database(databaseName))];
  await Promise.all([one.sync.ready, two.sync.ready]);
  await added(two);
  await one.sync.round();
  await until("the other tab's word", () => two.sync.state.phase === "idle" && two.sync.state.unsent === 0);
  await added(two);
  await until("the count", () => two.sync.state.unsent === 1);
});

test("sync: a refusing phone is told as such", async () => {
  const server = new FakeServer();
  const refusing = new BookLog(Promise.reject(new StorageTrouble("refused", "no")), { now: () => t0 });
  const sync = new Sync(refusing, { fetch: server.fetch, now: () => t0 });
  equal([await sync.round(), sync.state.trouble?.code], ["storage", "refused"]);
  equal((await rejected(refusing.save([]))) instanceof StorageTrouble, true);
});
