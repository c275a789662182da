import { equal, rejected, test } from "../../ui/testing.ts";
import { answered, Database, StorageTrouble, storeNames } from "./idb.ts";
import { read, write } from "./write.ts";

let count = 0;

async function fresh(): Promise<Database> {
  const name = `rimside-test-${++count}`;
  await new Promise((resolve) => (indexedDB.deleteDatabase(name).onsuccess = resolve));
  return new Database(name);
}

const put = (db: Database, name: string, value: unknown): Promise<void> =>
  write(db, ["meta"], (tx) => void tx.objectStore("meta").put({ name, value }));

const get = (db: Database, name: string): Promise<unknown> =>
  read(db, ["meta"], async (tx) => ((await answered(tx.objectStore("meta").get(name))) as { value: unknown } | undefined)?.value);

test("write: all stores are there from the start", async () => {
  const handle = await (await fresh()).handle();
  equal([...handle.objectStoreNames], [...storeNames].sort());
  equal(handle.version, 1);
  const tx = handle.transaction(["ops", "records"]);
  equal([...tx.objectStore("ops").indexNames], ["at", "rec"]);
  equal([...tx.objectStore("records").indexNames], ["kind"]);
});

test("write: what was resolved is there for another handle", async () => {
  const db = await fresh();
  await put(db, "a", [1, 2]);
  equal(await get(new Database(db.name), "a"), [1, 2]);
});

test("write: work that throws leaves nothing behind and keeps its error", async () => {
  const db = await fresh();
  const wanted = new Error("no");
  const error = await rejected(write(db, ["meta", "drafts"], (tx) => {
    tx.objectStore("meta").put({ name: "a", value: 1 });
    throw wanted;
  }));
  equal([error === wanted, await get(db, "a")], [true, undefined]);
});

test("write: awaiting anything but a request is found out", async () => {
  const db = await fresh();
  const error = await rejected(write(db, ["meta"], async (tx) => {
    tx.objectStore("meta").put({ name: "a", value: 1 });
    await new Promise((resolve) => setTimeout(resolve, 50));
  }));
  equal(error instanceof Error && error.message.includes("awaited"), true);
});

test("write: a handle that died is replaced, once", async () => {
  const db = await fresh();
  await put(db, "a", 1);
  (await db.handle()).close(); // as a phone does in the background
  await put(db, "a", 2);
  equal(await get(db, "a"), 2);
  const handle = await db.handle();
  handle.dispatchEvent(new Event("close"));
  equal((await db.handle()) === handle, false, "after the close event");
  equal(await get(db, "a"), 2);
});

test("write: another tab may delete the database; the next write starts afresh", async () => {
  const db = await fresh();
  await put(db, "a", 1);
  await new Promise((resolve) => (indexedDB.deleteDatabase(db.name).onsuccess = resolve));
  equal(await get(db, "a"), undefined);
  await put(db, "a", 3);
  equal(await get(db, "a"), 3);
});

test("write: a full phone and a refusing one are told apart", async () => {
  const db = await fresh();
  const throwing = (name: string): Promise<unknown> => rejected(write(db, ["meta"], () => {
    throw new DOMException("x", name);
  }));
  const code = (error: unknown): string => (error instanceof StorageTrouble ? error.code : "other");
  equal([code(await throwing("QuotaExceededError")), code(await throwing("NotAllowedError"))], ["full", "refused"]);
});

test("write: a dead handle is tried again once only", async () => {
  const db = await fresh();
  let runs = 0;
  const error = await rejected(write(db, ["meta"], () => {
    runs++;
    throw new DOMException("gone", "InvalidStateError");
  }));
  equal([runs, error instanceof StorageTrouble], [2, true]);
});

test("write: the first request that failed is the reason, not those that fell with it", async () => {
  const db = await fresh();
  await put(db, "a", 1);
  const error = await rejected(write(db, ["meta"], async (tx) => {
    tx.objectStore("meta").add({ name: "a", value: 2 });
    await answered(tx.objectStore("meta").get("a"));
  }));
  equal(error instanceof StorageTrouble && error.message.startsWith("ConstraintError"), true);
  equal(await get(db, "a"), 1);
});

test("write: it asks for the disk, commits at once, and counts as saved only when all of it is there", async () => {
  const db = await fresh();
  await put(db, "warm", "up");
  const [begin, commit] = [IDBDatabase.prototype.transaction, IDBTransaction.prototype.commit];
  const seen: string[] = [];
  IDBDatabase.prototype.transaction = function (this: IDBDatabase, ...args: Parameters<typeof begin>) {
    const tx = begin.apply(this, args);
    seen.push(tx.durability);
    tx.addEventListener("complete", () => seen.push("complete"));
    return tx;
  };
  IDBTransaction.prototype.commit = function (this: IDBTransaction) {
    seen.push("commit");
    commit.call(this);
  };
  try {
    await put(db, "a", 1).then(() => seen.push("saved"));
  } finally {
    IDBDatabase.prototype.transaction = begin;
    IDBTransaction.prototype.commit = commit;
  }
  equal(seen, ["strict", "commit", "complete", "saved"]);
});
