import type { Json } from "../../log/op/json.ts";
import { merge, type RecordState } from "../../log/op/merge.ts";
import type { Op } from "../../log/op/op.ts";
import { equal, test } from "../../ui/testing.ts";
import { erasePlan, type ErasePlan, erasing, opsIn } from "./erase_person.ts";
import { hex, op } from "../value/kit.test.ts";

const rec = { cleo: hex("cleo"), ochre: hex("ochre"), umber: hex("umber"), front: hex("wheel-f") };

// A book by hand: ops in the order of writing, and the states that they come to.
function book(...ops: readonly Op[]): { readonly states: readonly RecordState[]; readonly ops: readonly Op[] } {
  const timed = ops.map((each, n) => ({ ...each, at: each.at + n }));
  const recs = [...new Set(ops.map((each) => each.rec))];
  return { ops: timed, states: recs.map((one) => merge(one, timed.filter((each) => each.rec === one))) };
}

const wrote = (name: string, kind: string, set: Record<string, Json>): Op => op(hex(name), kind, set);

function over(before: Op, set: Record<string, Json>): Op {
  return op(before.rec, before.kind, set, { bases: Object.fromEntries(Object.keys(set).map((field) => [field, [before.id]])) });
}

function plan(...ops: readonly Op[]): ErasePlan {
  const { states, ops: all } = book(...ops);
  const person = states.find((state) => state.rec === rec.cleo);
  if (person === undefined) throw new Error("nobody to erase");
  return erasePlan(person, states, all);
}

const recs = (states: readonly RecordState[]): readonly string[] => states.map((state) => state.rec).sort();
const names = (...of: readonly string[]): readonly string[] => of.map(hex).sort();
const cleo = wrote("cleo", "person", { name: "Cleo", mass_kg: 61 });
const ochre = wrote("ochre", "bike", { name: "Ochre", rider: rec.cleo, front: rec.front });

test("erasing a person: what names them, and what tells of their weight, goes with them", () => {
  const { entries, offers, ridden } = plan(cleo, ochre, wrote("umber", "bike", { name: "Umber" }),
    wrote("ride", "ride", { person: rec.cleo }), wrote("elses", "ride", { person: hex("ana") }),
    wrote("note", "note", { bike: rec.ochre, note: "soft" }), wrote("set", "pressure_set", { bike: rec.ochre, gauge_kpa: 300 }),
    wrote("load", "measure", { what: "load", of: rec.ochre }), wrote("wheel-load", "measure", { what: "load", of: rec.front }),
    wrote("width", "measure", { what: "width", of: rec.front }), wrote("wash", "wash", { bike: rec.ochre }),
    wrote("other-set", "pressure_set", { bike: rec.umber }), wrote("photo", "photo", { of: hex("note") }), wrote("face", "photo", { of: rec.cleo }));
  equal(recs(entries), names("ride", "note", "set", "load", "wheel-load", "photo", "face"));
  equal([offers, recs(ridden)], [[], [rec.ochre]]);
});

test("erasing a person: deleted things are still there, and go; what once named them does too", () => {
  const note = wrote("note", "note", { bike: rec.ochre });
  const ride = wrote("ride", "ride", { person: rec.cleo });
  const { entries } = plan(cleo, ochre, note, over(note, { deleted: true }), ride, over(ride, { person: null }));
  equal(recs(entries), names("note", "ride"));
});

test("erasing a person: a bike that ever held their loads is offered; another one only loses its rider", () => {
  const loaded = wrote("umber", "bike", { name: "Umber", rider: rec.cleo, front_load_kg: 31 });
  const found = plan(cleo, ochre, loaded, over(loaded, { front_load_kg: null }));
  equal(found.offers.map(({ key, why, ticked, gone }) => [key, why, ticked, recs(gone)]), [[rec.umber, "loads", true, [rec.umber]]]);
  const all = erasing(found, ({ ticked }) => ticked);
  equal([recs(all.gone), all.changes.map((change) => [change.rec, change.set])], [names("cleo", "umber"), [[rec.ochre, { rider: null }]]]);
  const kept = erasing(found, () => false);
  equal([recs(kept.gone), kept.changes.map((change) => change.rec).sort()], [names("cleo"), names("ochre", "umber")]);
});

test("erasing a person: a bike they rode once is for somebody to decide", () => {
  const found = plan(cleo, ochre, over(ochre, { rider: hex("ana") }), wrote("set", "pressure_set", { bike: rec.ochre }), wrote("umber", "bike", {}));
  equal([found.entries, recs(found.ridden)], [[], []]);
  equal(found.offers.map(({ why, ticked, gone }) => [why, ticked, recs(gone)]), [["former", false, names("set")]]);
});

test("erasing a person: texts that name them are offered, as a word, whatever its capitals", () => {
  const clue = wrote("cleo", "person", { name: "Cleo van der Mark" });
  const bike = wrote("umber", "bike", { name: "Cleo’s old one" });
  const found = plan(clue, bike, over(bike, { name: "Umber" }), wrote("t1", "tyre", { note: "from CLEO" }), wrote("t2", "tyre", { note: "Cleopatra" }),
    wrote("t3", "tyre", { note: "mark it" }), wrote("t4", "tyre", { note: "der, van" }), wrote("t5", "check", { items: [{ says: "ask cleo." }] }),
    wrote("d1", "device", { label: "Cleo’s phone" }), wrote("d2", "device", { label: "Cleo’s lost phone", revoked: true }));
  equal(found.offers.map(({ about }) => about.rec).sort(), names("umber", "t1", "t3", "t4", "t5", "d1"));
  equal(found.offers.some(({ ticked }) => ticked), false);
  equal(plan(wrote("cleo", "person", { name: "Al" }), wrote("t1", "tyre", { note: "Al" })).offers, [], "too short to look for");
  equal(plan(wrote("cleo", "person", { name: "C.*+(" }), wrote("t1", "tyre", { note: "x" })).offers, []);
});

test("erasing a person: one who is gone already leaves what came late", () => {
  const found = plan(cleo, op(rec.cleo, "erase", { kind: "person" }), wrote("late", "note", { person: rec.cleo }));
  equal([found.person.erased, recs(found.entries), recs(erasing(found, () => true).gone)], [true, names("late"), names("late")]);
});

test("erasing a person: the book's own copy of itself is read back into ops", () => {
  equal(opsIn(`{"rimside":1,"book":"x"}\n${JSON.stringify(cleo)}\n`), [cleo]);
});
