import { equal, rejected, test } from "../ui/testing.ts";
import { knownBooks, openBook, openNext } from "./book.ts";
import { BookLog, newRec } from "./book_log.ts";
import { Database, StorageTrouble } from "./db/idb.ts";
import { t0 } from "./db/kit.test.ts";
import { answered } from "./db/idb.ts";
import { read, write } from "./db/write.ts";

const remembered = "rimside-book";

async function forgetAll(): Promise<void> {
  localStorage.removeItem(remembered);
  for (const book of await knownBooks()) await new Promise((resolve) => (indexedDB.deleteDatabase(`rimside-${book}`).onsuccess = resolve));
}

const none = (): Promise<undefined> => Promise.resolve(undefined);

test("book: drawn at the very first start, the same one ever after", async () => {
  await forgetAll();
  const first = await openBook(none);
  equal([/^rimside-[0-9a-f]{32}$/.test(first.name), (await openBook(none)).name], [true, first.name]);
  equal((await openBook(() => Promise.resolve(newRec()))).name, first.name, "a server is asked at the first start only");
});

test("book: the server's, when it has one at the very first start", async () => {
  await forgetAll();
  const book = newRec();
  equal((await openBook(() => Promise.resolve(book))).name, `rimside-${book}`);
});

test("book: two tabs at the very first start take one", async () => {
  await forgetAll();
  const names = await Promise.all([openBook(none), openBook(() => Promise.resolve(newRec())), openBook(none)]);
  equal(new Set(names.map((each) => each.name)).size, 1);
});

test("book: found again by its database when the browser forgot which it was", async () => {
  await forgetAll();
  const book = newRec();
  await new Database(`rimside-${book}`).handle();
  equal([await knownBooks(), (await openBook(none)).name], [[book], `rimside-${book}`]);
});

test("book: a server that answers with anything else is no book", async () => {
  await forgetAll();
  const fetched = globalThis.fetch;
  try {
    for (const [body, status] of [["<html>", 200], ["{}", 200], ["null", 200], ['{"book":"x"}', 200], [about(newRec()), 401], [about(""), 200]] as const) {
      globalThis.fetch = () => Promise.resolve(new Response(body, { status }));
      localStorage.removeItem(remembered);
      const { name } = await openBook();
      equal([/^rimside-[0-9a-f]{32}$/.test(name), body.includes(name.slice("rimside-".length))], [true, false], body);
    }
    const book = newRec();
    globalThis.fetch = () => Promise.resolve(new Response(about(book)));
    localStorage.removeItem(remembered);
    equal((await openBook()).name, `rimside-${book}`);
  } finally {
    globalThis.fetch = fetched;
  }
});

const about = (book: string): string => JSON.stringify({ book, log: newRec(), server: newRec(), name: "", count: 0, digest: "", version: "", now: t0 });

const draft = (db: Database, name: string): Promise<unknown> => read(db, ["drafts"], (tx) => answered(tx.objectStore("drafts").get(name)));

test("book: an empty phone takes the server's book with its drafts and settings", async () => {
  await forgetAll();
  const [own, theirs] = [await openBook(none), newRec()];
  const log = new BookLog(Promise.resolve(own), { now: () => t0 });
  await log.ready;
  await write(own, ["drafts", "meta"], (tx) => {
    tx.objectStore("drafts").put({ name: "form", value: "72" });
    tx.objectStore("drafts").put({ name: "both", value: "mine" });
    tx.objectStore("meta").put({ name: "log", value: newRec() });
  });
  const there = new Database(`rimside-${theirs}`);
  await write(there, ["drafts"], (tx) => void tx.objectStore("drafts").put({ name: "both", value: "theirs" }));
  await log.takeBook(theirs);
  equal((await openBook(none)).name, there.name);
  equal([await draft(there, "form"), await draft(there, "both")], [{ name: "form", value: "72" }, { name: "both", value: "theirs" }]);
  const again = new BookLog(Promise.resolve(there), { now: () => t0 });
  await again.ready;
  equal([again.device, again.book], [log.device, theirs]);
  equal(await read(there, ["meta"], (tx) => answered(tx.objectStore("meta").get("log"))), undefined, "what was met belongs to the other book");
});

test("book: a phone with data opens the other book beside its own, with nothing of it", async () => {
  await forgetAll();
  const [own, theirs] = [await openBook(none), newRec()];
  const log = new BookLog(Promise.resolve(own), { now: () => t0 });
  await log.save([{ rec: newRec(), kind: "tyre", set: { name: "x" } }], { name: "form", value: "72" });
  await log.takeBook(theirs);
  const there = await openBook(none);
  equal([there.name, await draft(there, "form")], [`rimside-${theirs}`, undefined]);
  equal(await knownBooks(), [own.name, there.name].map((name) => name.slice("rimside-".length)).sort());
  openNext(log.book);
  equal((await openBook(none)).name, own.name, "and back");
});

test("book: a phone that saves while it takes another book stays, and a person decides", async () => {
  await forgetAll();
  const own = await openBook(none);
  const log = new BookLog(Promise.resolve(own), { now: () => t0 });
  await log.ready;
  const taking = log.takeBook(newRec());
  await Promise.all([taking, log.save([{ rec: newRec(), kind: "tyre", set: { name: "x" } }])]);
  equal((await openBook(none)).name, own.name);
});

test("book: a browser that does not remember which book is open says so", async () => {
  const set = Storage.prototype.setItem;
  Storage.prototype.setItem = () => {
    throw new DOMException("no", "QuotaExceededError");
  };
  try {
    const log = new BookLog(Promise.resolve(await openBook(none)), { now: () => t0 });
    equal((await rejected(log.takeBook(newRec()))) instanceof StorageTrouble, true);
  } finally {
    Storage.prototype.setItem = set;
    await forgetAll();
  }
});
