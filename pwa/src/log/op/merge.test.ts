import mergeCases from "../../../../store/oplog/testdata/merge.json";
import { equal, test } from "../../ui/testing.ts";
import { canonical, type Json, sameValue } from "./json.ts";
import { chance, hexId, parsed, pick, shuffled, t0 } from "../db/kit.test.ts";
import { type FieldState, merge, type RecordState, heads, valueOf } from "./merge.ts";
import type { Op } from "./op.ts";

const rec = "7ec00000000000000000000000000000";

// inCaseForm gives what the shared cases write down of a state.
function inCaseForm(state: RecordState): Json {
  const field = ({ shown, others }: FieldState): Json => ({ value: shown.value, op: shown.op, others: others.map((other) => other.value) });
  const fields = Object.fromEntries(Object.entries(state.fields).map(([name, each]) => [name, field(each)]));
  const { kind, erased, deleted, newest, clashes, unseen } = state;
  return { kind, erased, deleted, newest, fields, clashes, unseen };
}

test("merge: the shared cases, in any order", () => {
  equal(mergeCases.length >= 30, true, "cases");
  const random = chance(1);
  for (const { name, ops, state } of mergeCases as unknown as { name: string; ops: Json[]; state: Json }[]) {
    const read = ops.map((op) => parsed(JSON.stringify(op)));
    for (let round = 0; round < 20; round++) {
      equal(canonical(inCaseForm(merge(rec, shuffled(random, read)))), canonical(state), name);
    }
  }
});

// history draws ops of one record as phones would that know some of each other's: an op replaces some of the earlier
// ones, clocks stutter and go back.
function history(random: () => number, length: number): Op[] {
  const ops: Op[] = [];
  for (let i = 0; i < length; i++) {
    const known = shuffled(random, ops.map((op) => op.id)).slice(0, Math.floor(random() * 4));
    const names = ["deleted", "name", "note", "__proto__"].filter(() => random() < 0.4);
    const set = Object.fromEntries(names.map((name) => [name, name === "deleted" ? random() < 0.6 : pick<Json>(random, [1, "1", null, [1], false])]));
    const bases = Object.fromEntries(names.filter(() => random() < 0.7).map((name) => [name, known]));
    const seen = ops.map((op) => op.id).filter(() => random() < 0.7);
    const id = hexId(random);
    if (random() < 0.3) known.push(id); // names itself
    ops.push({ id, at: t0 + Math.floor(random() * 5), kind: pick(random, ["tyre", "wheel"]), rec, set, bases, seen, author: "", device: "" });
  }
  return ops;
}

test("merge: random histories give one state in every order, each op twice too", () => {
  for (let seed = 0; seed < 300; seed++) {
    const random = chance(seed);
    const ops = history(random, 1 + Math.floor(random() * 12));
    const want = merge(rec, ops);
    for (let round = 0; round < 6; round++) {
      const order = round === 0 ? ops.toReversed() : shuffled(random, [...ops, ...ops.slice(round)]);
      equal(merge(rec, order), want, `seed ${seed}`);
    }
  }
});

test("merge: in random histories every value stands that nothing replaced, and each once", () => {
  for (let seed = 1000; seed < 1300; seed++) {
    const random = chance(seed);
    const ops = history(random, 1 + Math.floor(random() * 12));
    const state = merge(rec, ops);
    for (const name of ["deleted", "name", "note", "__proto__"]) {
      const setters = ops.filter((op) => Object.hasOwn(op.set, name));
      const replaced = (op: Op): boolean =>
        setters.some((by) => by !== op && Object.hasOwn(by.bases ?? {}, name) && by.bases?.[name]?.includes(op.id));
      const free = setters.filter((op) => !replaced(op));
      const want = (free.length > 0 ? free : setters).map((op) => op.id).sort();
      const field = name === "deleted" ? state.deletion : Object.hasOwn(state.fields, name) ? state.fields[name] : undefined;
      equal([...heads(field)].sort(), want, `seed ${seed} ${name}`);
      if (field === undefined) continue;
      const values = [field.shown, ...field.others].map((candidate) => candidate.value);
      equal(values.some((value, i) => values.some((other, j) => i !== j && sameValue(value, other))), false, `twice, seed ${seed}`);
      const newest = ops.filter((op) => want.includes(op.id)).sort((a, b) => b.at - a.at || (a.id < b.id ? 1 : -1))[0];
      equal([field.shown.op, field.shown.value], [newest?.id, newest?.set[name]], `shown, seed ${seed}`);
    }
  }
});

test("merge: in random histories a delete that was replaced has seen nothing", () => {
  let found = 0;
  for (let seed = 2000; seed < 2300; seed++) {
    const random = chance(seed);
    const ops = history(random, 1 + Math.floor(random() * 12));
    const state = merge(rec, ops);
    if (!state.deleted) continue;
    const deletes = ops.filter((op) => op.set["deleted"] === true && heads(state.deletion).includes(op.id));
    const values = Object.values(state.fields).flatMap(heads);
    const want = values.filter((id) => !deletes.some((op) => op.seen?.includes(id)));
    equal(state.unseen, [...new Set(want)].sort(), `seed ${seed}`);
    equal(state.clashes.includes("deleted"), want.length > 0 || (state.deletion?.others.length ?? 0) > 0, `seed ${seed}`);
    found += want.length;
  }
  equal(found > 100, true, "unseen edits among the histories");
});

test("merge: who set a value, and when, stands beside it", () => {
  const ops = [
    { id: "a".repeat(32), at: t0, kind: "tyre", rec, set: { name: "A" }, author: "ana", device: "one" },
    { id: "b".repeat(32), at: t0 + 1, kind: "tyre", rec, set: { name: "B" } },
  ];
  const { shown, others } = merge(rec, ops).fields["name"] as FieldState;
  equal([shown.author, shown.device, shown.at], ["", "", t0 + 1]);
  equal([others[0]?.author, others[0]?.device, others[0]?.at], ["ana", "one", t0]);
});

test("merge: no ops, no value", () => {
  const none = merge(rec, []);
  equal([none.kind, none.newest, none.erased, none.deleted, none.clashes], ["", 0, false, false, []]);
  equal([valueOf(none, "constructor"), valueOf(none, "__proto__"), valueOf(undefined, "x")], [undefined, undefined, undefined]);
});
