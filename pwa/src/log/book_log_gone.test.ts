import { equal, test } from "../ui/testing.ts";
import { newRec } from "./book_log.ts";
import { parsed } from "./db/kit.test.ts";
import { valueOf } from "./op/merge.ts";
import { phone, added, edited, passed, state } from "./book_log_kit.test.ts";

test("book log: deleted here, edited there: a clash, ended by restoring or by removing anew", async () => {
  for (const restore of [true, false]) {
    const [ana, ben] = [phone(), phone()];
    const tyre = await added(ana.log, { name: "0" });
    await passed(ana.log, ben.log);
    await ana.log.remove(tyre);
    await edited(ben.log, tyre, { name: "ben" });
    await passed(ben.log, ana.log);
    const both = await state(ana.log, tyre);
    equal([both.deleted, both.clashes, both.unseen.length], [true, ["deleted"], 1]);
    await (restore ? ana.log.restore(both) : ana.log.confirmRemoval(both));
    await passed(ana.log, ben.log);
    for (const { log } of [ana, ben]) {
      const after = await state(log, tyre);
      equal([after.deleted, after.clashes, valueOf(after, "name")], [!restore, [], "ben"]);
    }
  }
});

test("book log: several records are removed as one", async () => {
  const { log } = phone();
  const [one, two] = [await added(log, { name: "1" }), await added(log, { name: "2" })];
  const left: number[] = [];
  let told = 0;
  log.on(() => {
    told++;
    void log.all("tyre").then((tyres) => left.push(tyres.length));
  });
  await log.remove(one, two);
  await log.remove();
  equal([await log.all("tyre"), told], [[], 1]);
  equal(left, [0]);
});

test("book log: a clash of the deletion itself is chosen like any other", async () => {
  const [ana, ben] = [phone(), phone()];
  const tyre = await added(ana.log, { name: "0" });
  await ana.log.remove(tyre);
  await passed(ana.log, ben.log);
  await ana.log.restore(await state(ana.log, tyre));
  const seen = await state(ben.log, tyre);
  await ben.log.confirmRemoval(seen);
  await passed(ana.log, ben.log);
  const both = await state(ben.log, tyre);
  equal(both.clashes, ["deleted"]);
  await ben.log.choose(both, "deleted", false);
  const after = await state(ben.log, tyre);
  equal([after.deleted, after.clashes], [false, []]);
});

test("book log: erased values are nowhere, and a late edit does not bring them back", async () => {
  const [ana, ben] = [phone(), phone()];
  const person = await added(ana.log, { name: "Secret-1", mass_kg: 72 }, "person");
  const later = await edited(ana.log, person, { name: "Secret-2" });
  await passed(ana.log, ben.log);
  await ana.log.erase(person.rec, "person");
  await edited(ben.log, later, { name: "Secret-3" });
  await passed(ben.log, ana.log); // full ops of an erased record, some known, one late
  await passed(ana.log, ben.log);
  for (const { log } of [ana, ben]) {
    const text = await log.exportText();
    equal([text.includes("Secret"), (await state(log, person)).erased, (await state(log, person)).kind], [false, true, "person"]);
    const entries = (await log.history(person.rec)).map((entry) => `${entry.kind} ${entry.erased ?? false}`);
    equal(entries.sort(), ["erase false", "person true", "person true", "person true"]);
  }
  const kept = parsed((await ana.log.exportText()).split("\n").find((line) => line.includes(later.fields["name"]?.shown.op ?? "?")) ?? "");
  equal(Object.keys(kept), ["id", "at", "kind", "rec", "set", "bases", "erased"]);
  equal(kept.set, { name: null });
  await edited(ana.log, person, { name: "Secret-4" });
  equal((await ana.log.exportText()).includes("Secret"), false, "an edit after erasing");
});

test("book log: an erased frame that comes before the erase op itself erases too", async () => {
  const [ana, ben] = [phone(), phone()];
  const person = await added(ana.log, { name: "Secret" }, "person");
  await passed(ana.log, ben.log);
  await ana.log.erase(person.rec, "person");
  const frames = (await ana.log.exportText()).replace(ana.log.book, ben.log.book).split("\n").filter((line) => !line.includes('"kind":"erase"'));
  await ben.log.importText(frames.join("\n"));
  equal([(await ben.log.exportText()).includes("Secret"), (await state(ben.log, person)).erased], [false, true]);
});

test("book log: a frame of another record under a known id erases nothing, and is listed", async () => {
  const ana = phone();
  const tyre = await added(ana.log, { name: "Ochre" });
  const [entry] = await ana.log.history(tyre.rec);
  const frame = JSON.stringify({ id: entry?.op, at: entry?.at, kind: "tyre", rec: newRec(), set: { name: null }, erased: true });
  const header = JSON.stringify({ rimside: 1, book: ana.log.book });
  const result = await ana.log.importText(`${header}\n${frame}\n`);
  equal(result.kind === "read" && result.bad.map(({ code }) => code), ["other_content"]);
  equal([(await state(ana.log, tyre)).erased, (await ana.log.all("tyre")).length], [false, 1]);
});
