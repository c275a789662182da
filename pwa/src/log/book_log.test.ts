import { equal, rejected, test } from "../ui/testing.ts";
import { BookLog, newRec, OpTrouble } from "./book_log.ts";
import { opOf } from "./op/erase.ts";
import { Database, StorageTrouble, storeNames } from "./db/idb.ts";
import type { Json } from "./op/json.ts";
import { t0 } from "./db/kit.test.ts";
import { type RecordState, valueOf } from "./op/merge.ts";
import { endAt, minAt } from "./op/op.ts";
import { refuse } from "./db/rejected.ts";
import type { Tables } from "./db/tables.ts";
import { onDisk, inMemory, phone, added, edited, passed, state } from "./book_log_kit.test.ts";

for (const [where, tables] of [["memory", inMemory], ["IndexedDB", onDisk]] as const) {
  test(`book log in ${where}: what was saved is there, and the first save brings this phone's own record`, async () => {
    const held = tables();
    const { log } = phone(held);
    const tyre = await added(log, { name: "Ochre", label_mm: 40 });
    equal([valueOf(tyre, "name"), valueOf(tyre, "label_mm"), tyre.newest], ["Ochre", 40, t0]);
    equal((await log.all("device")).map((each) => each.rec), [log.device]);
    await added(log, { name: "Umber" });
    equal((await log.all("device")).length, 1);
    const again = phone(held).log;
    await again.ready;
    equal([again.device, (await again.all("tyre")).map((each) => valueOf(each, "name")).sort()], [log.device, ["Ochre", "Umber"]]);
  });

  test(`book log in ${where}: lists follow edits, removals and erasing`, async () => {
    const { log } = phone(tables());
    const names = async (): Promise<unknown> => (await log.all("tyre")).map((each) => valueOf(each, "name"));
    equal(await names(), []);
    let tyre = await added(log, { name: "Ochre" });
    equal(await names(), ["Ochre"]);
    tyre = await edited(log, tyre, { name: "Umber" });
    equal(await names(), ["Umber"]);
    await log.remove(tyre);
    equal(await names(), []);
    await log.restore(await state(log, tyre));
    equal(await names(), ["Umber"]);
    await log.erase(tyre.rec, "tyre");
    equal([await names(), (await state(log, tyre)).erased], [[], true]);
  });

  test(`book log in ${where}: what was erased is in no store`, async () => {
    const held = tables();
    const { log } = phone(held);
    let person = await added(log, { name: "Secret-1" }, "person");
    const other = await added(log, { name: "Ana" }, "person");
    person = await edited(log, person, { name: "Secret-2" });
    await log.save([{ rec: person.rec, kind: "rider", set: { name: "Secret-3" }, shown: person }]);
    const clashing = (await log.exportText()).split("\n").find((line) => line.includes("Secret-1")) ?? "";
    await (await log.tables).write(["rejected"], (tx) => refuse(tx, newRec(), [{ id: newRec(), bytes: clashing, code: "other_content", message: "" }]));
    await log.erase(person.rec, "person");
    equal([(await everyRow(log)).includes("Secret"), (await everyRow(log)).includes("Ana")], [false, true]);
    equal([(await log.all("person")).map((each) => each.rec), (await log.all("rider")).length], [[other.rec], 0]);
    equal((await phone(held).log.all("person")).map((each) => each.rec), [other.rec], "read anew");
  });

  test(`book log in ${where}: several records are erased, and others changed by it, as one`, async () => {
    const held = tables();
    const { log } = phone(held);
    const [person, note] = [await added(log, { name: "Secret-1" }, "person"), await added(log, { note: "Secret-2" }, "note")];
    const bike = await added(log, { name: "Ochre", rider: person.rec }, "bike");
    const full = new BookLog(Promise.resolve(failing(await log.tables)), { now: () => t0 });
    const change = { rec: bike.rec, kind: "bike", set: { rider: null }, shown: bike };
    await rejected(full.eraseAll([person, note], [change]));
    equal([(await state(log, person)).erased, (await everyRow(log)).includes("Secret-2"), valueOf(await state(log, bike), "rider")], [false, true, person.rec], "nothing by halves");
    await log.eraseAll([person, note], [change]);
    equal([(await everyRow(log)).includes("Secret"), valueOf(await state(log, bike), "rider"), (await state(log, bike)).clashes], [false, null, []]);
    equal([(await state(log, person)).erased, (await state(log, note)).erased], [true, true]);
  });

  test(`book log in ${where}: a record that changes its kind is in one list`, async () => {
    const held = tables();
    const { log } = phone(held);
    await Promise.all([log.all("tyre"), log.all("wheel")]);
    const tyre = await added(log, { name: "x" });
    await log.save([{ rec: tyre.rec, kind: "wheel", set: { name: "y" }, shown: tyre }]);
    for (const each of [log, phone(held).log]) equal([(await each.all("tyre")).length, (await each.all("wheel")).length, (await each.everything()).length], [0, 1, 2]);
    const other = await added(log, { name: "z" });
    await log.save([{ rec: tyre.rec, kind: "tyre", set: { name: "and back" }, shown: await state(log, tyre) }]);
    await log.erase(other.rec, "tyre"); // makes one row of many
    for (const each of [log, phone(held).log]) equal([(await each.all("tyre")).length, (await each.all("wheel")).length], [1, 0]);
  });

  test(`book log in ${where}: many writes are made few rows, and nothing changes by it`, async () => {
    const held = tables();
    const { log } = phone(held);
    const tyres = await log.save(Array.from({ length: 600 }, (_, i) => ({ rec: newRec(), kind: "tyre", set: { n: i } })));
    for (let i = 0; i < 130; i++) await edited(log, tyres[i % 20] as RecordState, { name: `name ${i}` });
    await log.remove(tyres[599] as RecordState);
    const rows = async (): Promise<number> => (await log.tables).read(["records"], async (tx) => (await tx.statesOf("tyre")).length);
    equal(await rows(), 132);
    const before = sorted(await phone(held).log.all("tyre"));
    for (let waited = 0; (await rows()) !== 2 && waited < 100; waited++) await new Promise((resolve) => setTimeout(resolve, 20));
    equal([await rows(), sorted(await phone(held).log.all("tyre")), before.length], [2, before, 599]);
    await edited(log, tyres[0] as RecordState, { name: "after" });
    equal(sorted(await log.all("tyre")), sorted(await phone(held).log.all("tyre")));
  });

  test(`book log in ${where}: several records and a draft are one transaction`, async () => {
    const held = tables();
    const { log } = phone(held);
    await log.ready;
    const full = new BookLog(Promise.resolve(failing(await log.tables)), { now: () => t0 });
    await full.ready;
    const changes = ["a", "b"].map((name) => ({ rec: newRec(), kind: "tyre", set: { name } }));
    const error = await rejected(full.save(changes, { name: "form", value: 1 }));
    equal(error instanceof StorageTrouble && error.code, "full");
    const left = async (): Promise<unknown> => (await log.tables).read(["ops", "records", "drafts"], async (tx) =>
      [await tx.count("ops"), await tx.count("records"), await tx.count("drafts")]);
    equal(await left(), [0, 0, 0], "nothing half saved");
    await log.save(changes, { name: "form", value: 1 });
    equal(await left(), [3, 2, 1]);
  });
}

const sorted = (states: readonly RecordState[]): RecordState[] => states.toSorted((a, b) => (a.rec < b.rec ? -1 : 1));

async function everyRow(log: BookLog): Promise<string> {
  return (await log.tables).read(storeNames, async (tx) => {
    const rows: unknown[] = [];
    for (const store of storeNames) if (store !== "sent") rows.push(await tx.page(store, "", 10_000));
    return JSON.stringify(rows);
  });
}

// failing plays a phone that is full when it comes to the records: the ops were already put.
function failing(tables: Tables): Tables {
  return {
    name: tables.name,
    read: (stores, work) => tables.read(stores, work),
    write: (stores, work) => tables.write(stores, (tx) => work(new Proxy(tx, {
      get: (target, name) => name !== "put" ? Reflect.get(target, name).bind(target) : (store: "ops", rows: never[]) => {
        if ((store as string) === "records") throw new StorageTrouble("full", "no room");
        target.put(store, rows);
      },
    }))),
  };
}

test("book log: what you typed shows, whatever the clock says", async () => {
  const { log, clock } = phone();
  let tyre = await added(log, { name: "0" });
  let i = 0;
  for (const now of [t0 + 5, t0 + 5, t0 + 5, t0 - 7_200_000, t0 - 400 * 86_400_000, -1, 0, 32503680000000, t0, endAt + 1, t0, minAt - 1]) {
    clock.now = now;
    tyre = await edited(log, tyre, { name: String(++i) });
    equal([valueOf(tyre, "name"), tyre.clashes], [String(i), []], `at ${now}`);
  }
  const ats = (await log.history(tyre.rec)).map((entry) => entry.at);
  equal([ats.every((at) => at >= minAt && at < endAt), Math.max(...ats)], [true, endAt - 1]);
});

test("book log: at the last moment there is, the later edit still shows beside a clash", async () => {
  const [ana, ben] = [phone(), phone()];
  const tyre = await added(ana.log, { name: "0" });
  await passed(ana.log, ben.log);
  ana.clock.now = ben.clock.now = endAt;
  for (let i = 0; i < 8; i++) {
    await edited(ana.log, tyre, { name: `a${i}` }); // each from the state first seen: they all clash
    await edited(ben.log, tyre, { name: `b${i}` });
    await passed(ana.log, ben.log);
    const both = await state(ben.log, tyre);
    const mine = await edited(ben.log, both, { name: `mine${i}` });
    equal([valueOf(mine, "name"), mine.clashes], [`mine${i}`, ["name"]]);
  }
});

test("book log: an edit replaces what was seen, not what came meanwhile", async () => {
  const [ana, ben] = [phone(), phone()];
  const tyre = await added(ana.log, { name: "0", note: "x" });
  await passed(ana.log, ben.log);
  await edited(ben.log, tyre, { name: "ben" });
  await passed(ben.log, ana.log); // comes while Ana types
  const after = await edited(ana.log, tyre, { name: "ana" });
  equal([valueOf(after, "name"), after.clashes, after.fields["name"]?.others.map((other) => other.value)], ["ana", ["name"], ["ben"]]);
  equal((await ana.log.clashing()).map((each) => each.rec), [tyre.rec]);
  await ana.log.choose(after, "name", "ben");
  const chosen = await state(ana.log, tyre);
  equal([valueOf(chosen, "name"), chosen.clashes, (await ana.log.clashing()).length], ["ben", [], 0]);
});

test("book log: who, when and on which phone, newest first", async () => {
  const { log, clock } = phone();
  const ana = newRec();
  await log.setMe(ana);
  const tyre = await added(log, { name: "0" });
  clock.now += 1000;
  await edited(log, tyre, { name: "1" });
  const entries = await log.history(tyre.rec);
  equal(entries.map(({ at, author, device, set }) => [at, author, device, set]), [
    [t0 + 1000, ana, log.device, { name: "1" }], [t0, ana, log.device, { name: "0" }],
  ]);
});

test("book log: listeners hear after lists are up to date, and of their own records only", async () => {
  const { log } = phone();
  await log.all("tyre");
  const heard: unknown[] = [];
  const stop = log.on((recs) => void log.all("tyre").then((all) => heard.push([recs.size, all.length])));
  await added(log, { name: "0" }); // with the device record
  await added(log, { name: "1" });
  stop();
  await added(log, { name: "2" });
  equal(heard, [[2, 1], [1, 2]]);
});

test("book log: another tab's save is heard, with lists refreshed", async () => {
  const name = onDisk().name;
  const [here, there] = [phone(new Database(name)).log, phone(new Database(name)).log];
  await Promise.all([here.ready, there.ready]);
  equal(here.device, there.device, "one phone, one device record");
  equal((await there.all("tyre")).length, 0);
  const heard = new Promise<number>((resolve) => there.on(() => void there.all("tyre").then((all) => resolve(all.length))));
  await added(here, { name: "0" });
  equal(await heard, 1);
});

test("book log: two tabs that save at the same moment lose nothing", async () => {
  const name = onDisk().name;
  const tabs = [phone(new Database(name)).log, phone(new Database(name)).log];
  const tyre = await added(tabs[0] as BookLog, { name: "0" });
  await Promise.all(Array.from({ length: 20 }, (_, i) => edited(tabs[i % 2] as BookLog, tyre, { [`f${i}`]: i })));
  const after = await state(tabs[1] as BookLog, tyre);
  equal(Array.from({ length: 20 }, (_, i) => valueOf(after, `f${i}`)), Array.from({ length: 20 }, (_, i) => i));
  equal(new Set((await (tabs[0] as BookLog).history(tyre.rec)).map((entry) => entry.at)).size, 21, "each op has a time of its own");
});

test("book log: half a character is mended, what is no JSON or too large is refused", async () => {
  const { log } = phone();
  const tyre = await added(log, { name: "x\ud83d" });
  equal(valueOf(tyre, "name"), "x\uFFFD");
  equal((await rejected(added(log, { n: Number.NaN }))) instanceof TypeError, true);
  const error = await rejected(added(log, { name: "x".repeat(3 << 20) }));
  equal(error instanceof OpTrouble && error.code, "op_too_large");
});

test("book log: field names that are words of the language, and unknown members", async () => {
  const { log } = phone();
  const set = JSON.parse('{"__proto__":1,"constructor":2,"":3,"select":4}') as Record<string, Json>;
  let tyre = await added(log, set);
  equal(["__proto__", "constructor", "", "select", "toString"].map((name) => valueOf(tyre, name)), [1, 2, 3, 4, undefined]);
  tyre = await edited(log, tyre, JSON.parse('{"__proto__":5}') as Record<string, Json>);
  equal([valueOf(tyre, "__proto__"), tyre.clashes], [5, []]);
});

test("book log: export and import bring back every byte", async () => {
  const [ana, ben] = [phone(), phone()];
  const odd = `{"set":{"n":9007199254740993,"s":"\\u00e4\\/"},"rec":"${newRec()}","id":"${newRec()}","at":${t0}.0,"kind":"lamp", "glow":[{}],"schema":9}`;
  const file = `{"rimside":1,"book":"${ana.log.book || (await ana.log.ready, ana.log.book)}","by":"newer"}\r\n${odd}\n\n`;
  const result = await ana.log.importText(file);
  equal(result.kind === "read" && [result.stored.length, result.known, result.bad], [1, 0, []]);
  await passed(ana.log, ben.log);
  equal((await ben.log.exportText()).split("\n")[1], odd);
  const again = await ana.log.importText(file);
  equal(again.kind === "read" && [again.stored.length, again.known], [0, 1]);
});

test("book log: an op that stands in a file twice counts as new once, and waits to be sent", async () => {
  const { log } = phone();
  await log.ready;
  const told: (readonly string[])[] = [];
  log.onSaved((ops) => told.push(ops));
  const [id, rec] = [newRec(), newRec()];
  const op = `{"id":"${id}","at":${t0},"kind":"note","rec":"${rec}","set":{"text":"x"}}`;
  const reversed = `{"set":{"text":"x"},"rec":"${rec}","kind":"note","at":${t0},"id":"${id}"}`;
  const result = await log.importText([`{"rimside":1,"book":"${log.book}"}`, op, reversed, op].join("\n"));
  equal(result.kind === "read" && [result.stored, result.known, result.bad], [[id], 2, []]);
  equal([told, (await log.history(rec)).length], [[[id]], 1]);
});

test("book log: a file's bad lines are named, the good ones kept; another book is refused", async () => {
  const { log } = phone();
  await log.ready;
  const tyre = await added(log, { name: "0" });
  const own = (await log.exportText()).split("\n").find((line) => line.includes(tyre.rec)) ?? "";
  const good = `{"id":"${newRec()}","at":${t0},"kind":"note","rec":"${newRec()}","set":{"text":"ä"}}`;
  const lines = [`{"rimside":1,"book":"${log.book}"}`, "{", good, own.replace('"0"', '"9"'), good.replace(`${t0}`, "7"), good.replace("ä", "\u0000bad\u0001")];
  const bytes = new TextEncoder().encode(lines.join("\n"));
  bytes[bytes.lastIndexOf(0)] = 0xff;
  const result = await log.importFile(new Blob([bytes]));
  equal(result.kind === "read" && [result.stored.length, result.bad.map(({ line, code }) => [line, code])],
    [1, [[2, "op_malformed"], [4, "other_content"], [5, "at_out_of_range"], [6, "op_malformed"]]]);
  equal(valueOf(await state(log, tyre), "name"), "0");
  const other = newRec();
  equal(await log.importText(`{"rimside":1,"book":"${other}"}\n${good}`), { kind: "other_book", book: other });
  equal(await log.importText(`{"rimside":2,"book":"${log.book}"}`), { kind: "newer" });
  for (const text of ["", "x", "null", "{}", good]) equal(await log.importText(text), { kind: "not_ours" });
});

test("book log: a number too large for a double stays one, in lists too", async () => {
  const held = new Database(`rimside-${newRec()}`);
  const { log } = phone(held);
  await log.ready;
  const op = (value: string): string => `{"id":"${newRec()}","at":${t0},"kind":"lamp","rec":"${newRec()}","set":{"n":${value}}}`;
  await log.importText([`{"rimside":1,"book":"${log.book}"}`, op("1e400"), op("[1e400]"), op("-1e400"), op("7")].join("\n"));
  const values = (await phone(held).log.all("lamp")).map((state) => String(valueOf(state, "n"))).sort();
  equal(values, ["-Infinity", "7", "Infinity", "Infinity"]);
});

test("book log: rows keep what they are found by", async () => {
  const { log } = phone();
  const tyre = await added(log, { name: "0" });
  const [rows] = await (await log.tables).read(["ops"], (tx) => tx.opsOf([tyre.rec]));
  const row = rows?.[0];
  equal(row && [row.id, row.rec, row.at, row.kind], row && ((op) => [op.id, op.rec, op.at, op.kind])(opOf(row)));
});
