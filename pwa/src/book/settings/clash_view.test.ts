import { equal, test } from "../../ui/testing.ts";
import { at, byAna, byBen, hex, merged, op, record, told } from "../value/kit.test.ts";
import { clashCards, type Question, settled } from "./clash_view.ts";
import type { RecordState } from "../../log/op/merge.ts";

const rec = hex("ochre");
const made = op(rec, "tyre", { name: "Ochre 40s", measured_mm: 41, max_kpa: 500, note: "" });
const bases = (...fields: readonly string[]): { bases: Record<string, string[]> } => ({ bases: Object.fromEntries(fields.map((field) => [field, [made.id]])) });

const plain = (words: string): string => words.replace(/\s/g, " ");

function questions(state: RecordState): readonly Question[] {
  return clashCards([state], told())[0]?.questions ?? [];
}

const answers = (question: Question | undefined): readonly string[] =>
  question?.answers.map((each) => plain(`${each.label} | ${each.by} | ${each.mark}`)) ?? [];

test("clashes: a card per record, a question per field, an answer per value", () => {
  const state = merged(made,
    op(rec, "tyre", { measured_mm: 41.5, name: "A" }, { at: at(10, 2), ...byAna, ...bases("measured_mm", "name") }),
    op(rec, "tyre", { measured_mm: 42, name: "B" }, { at: at(10, 5), ...byBen, ...bases("measured_mm", "name") }));
  const [card] = clashCards([state], told());
  equal([card?.rec, card?.title], [rec, "Tyre · B"]);
  equal(card?.questions.map((each) => each.ask), ["Measured width: which is right?", "Name: which is right?"]);
  equal(answers(card?.questions[0]), ["42 mm | Ben, 10:05 AM today | shown now", "41.5 mm | Ana, 10:02 AM today | "]);
});

test("clashes: values that look alike are told apart", () => {
  const tyres = [record("tyre", "t1", { name: "Ochre" }), record("tyre", "t2", { name: "Ochre" })];
  const wheel = hex("wheel");
  const state = merged(op(wheel, "wheel", { tyre: hex("t1"), max_kpa: 230.1 }), op(wheel, "wheel", { tyre: hex("t2"), max_kpa: 230.4 }));
  const [card] = clashCards([state], told(tyres));
  const labels = card?.questions.map((each) => new Set(each.answers.map((answer) => answer.label)).size);
  equal([card?.questions.map((each) => each.field), labels], [["max_kpa", "tyre"], [2, 2]]);
  const long = "x".repeat(400);
  const texts = merged(op(rec, "tyre", { note: `${long}one` }), op(rec, "tyre", { note: `${long}two` }));
  equal(questions(texts)[0]?.answers.map((each) => each.label), [`…${"x".repeat(20)}two`, `…${"x".repeat(20)}one`]);
});

test("clashes: deleted here, edited there: what happened, and two answers", () => {
  const state = merged(made,
    op(rec, "tyre", { deleted: true }, { at: at(10, 2), ...byAna, seen: [made.id] }),
    op(rec, "tyre", { measured_mm: 42 }, { at: at(10, 5), ...byBen, ...bases("measured_mm") }));
  const [question, ...more] = questions(state);
  equal([question?.field, question?.ask, more.length], ["deleted", "Shall it stay?", 0]);
  equal(question?.facts.map(plain), ["Removed by Ana, 10:02 AM today", "Edited by Ben, 10:05 AM today. Measured width: 42 mm"]);
  equal(answers(question), ["Restore it |  | ", "Remove it |  | removed now"]);
});

test("clashes: deleted and restored apart", () => {
  const removed = op(rec, "tyre", { deleted: true }, { at: at(9, 30), ...byBen, seen: [made.id] });
  const state = merged(made, removed,
    op(rec, "tyre", { deleted: false }, { at: at(10, 6), ...byBen, bases: { deleted: [removed.id] } }),
    op(rec, "tyre", { deleted: true }, { at: at(10, 2), ...byAna, seen: [made.id], bases: { deleted: [removed.id] } }));
  const [question] = questions(state);
  equal(question?.facts.map(plain), ["Restored by Ben, 10:06 AM today", "Removed by Ana, 10:02 AM today"]);
  equal(answers(question), ["Keep it |  | there now", "Remove it |  | "]);
});

test("clashes: a settled question tells what holds, by whom, and what can be said instead", () => {
  const one = op(rec, "tyre", { measured_mm: 41.5 }, { at: at(10, 2), ...byAna, ...bases("measured_mm") });
  const two = op(rec, "tyre", { measured_mm: 42 }, { at: at(10, 5), ...byBen, ...bases("measured_mm") });
  const [question] = questions(merged(made, one, two));
  const choice = op(rec, "tyre", { measured_mm: 41.5 }, { at: at(10, 7), ...byBen, bases: { measured_mm: [one.id, two.id] } });
  if (question === undefined) throw new Error("there is a question");
  const end = settled(question, merged(made, one, two, choice), told());
  equal([end.words, plain(end.by), end.instead.map((each) => each.label)], ["Measured width: 41.5 mm", "Ben, 10:07 AM today", ["42 mm"]]);
  const gone = op(rec, "tyre", { deleted: true }, { at: at(10, 8), ...byBen, seen: [made.id, one.id, two.id, choice.id] });
  equal(settled(question, merged(made, one, two, choice, gone), told()).words, "It is removed.");
  const erase = op(rec, "erase", { kind: "tyre" });
  equal(settled(question, merged(made, erase), told()), { words: "It was erased for good.", by: "", instead: [] });
  equal(settled(question, undefined, told()).instead, []);
});

test("clashes: a settled deletion", () => {
  const remove = op(rec, "tyre", { deleted: true }, { at: at(10, 2), ...byAna, seen: [made.id] });
  const edit = op(rec, "tyre", { measured_mm: 42 }, { at: at(10, 5), ...byBen, ...bases("measured_mm") });
  const [question] = questions(merged(made, remove, edit));
  if (question === undefined) throw new Error("there is a question");
  const kept = op(rec, "tyre", { deleted: false }, { at: at(10, 7), ...byAna, bases: { deleted: [remove.id] } });
  const end = settled(question, merged(made, remove, edit, kept), told());
  equal([end.words, plain(end.by), end.instead.map((each) => each.label)], ["It stays.", "Ana, 10:07 AM today", ["Remove it"]]);
});

test("clashes: fields and kinds that only a newer app knows", () => {
  const lamp = hex("lamp");
  const state = merged(op(lamp, "lamp", { glow: [1], "": 1 }), op(lamp, "lamp", { glow: { a: 2 }, "": 2 }));
  const [card] = clashCards([state], told());
  equal([card?.title, card?.questions.map((each) => each.ask)], ["Something newer (lamp) without a name", [": which is right?", "glow: which is right?"]]);
  equal(card?.questions[1]?.answers.map((each) => each.label).sort(), ["[1]", '{"a":2}']);
});
