import { equal, test } from "../../ui/testing.ts";
import { eraseKind, type Op } from "../../log/op/op.ts";
import type { HistoryEntry } from "../../log/book_log.ts";
import { anaPhone, at, benPhone, byAna, byBen, hex, merged, op, told } from "../value/kit.test.ts";
import { historyLines } from "./history_view.ts";

const rec = hex("ochre");
const plain = (words: string): string => words.replace(/\s/g, " ");

const entries = (ops: readonly Op[]): HistoryEntry[] =>
  [...ops].reverse().map(({ id, at: when, kind, author = "", device = "", set, erased }) => ({ op: id, at: when, kind, author, device, set, ...(erased === true && { erased }) }));

const first = op(rec, "tyre", { name: "Ochre", measured_mm: 41 }, { at: at(9, 0, 1), ...byAna });
const second = op(rec, "tyre", { measured_mm: 42 }, { at: at(10, 5), ...byBen, bases: { measured_mm: [first.id] } });

test("history: newest first, who, when, where, each value with the one before", () => {
  const lines = historyLines(entries([first, second]), merged(first, second), told());
  equal(lines.map((line) => [line.what, plain(line.when), line.by]), [
    ["Changed", "10:05 AM today", "Ben, on another phone"], ["First written", "9:00 AM yesterday", "Ana, on this phone (Ana’s phone)"],
  ]);
  equal(lines[0]?.shifts.map((each) => [each.label, each.value, each.before]), [["Measured width", "42 mm", "41 mm"]]);
  equal(lines[1]?.shifts.map((each) => [each.label, each.value, each.before]), [["Name", "Ochre", ""], ["Measured width", "41 mm", ""]]);
});

test("history: an earlier value may be used again, once, and not the one that stands", () => {
  const third = op(rec, "tyre", { measured_mm: 41 }, { at: at(10, 6), ...byBen, bases: { measured_mm: [second.id] } });
  const fourth = op(rec, "tyre", { measured_mm: 43 }, { at: at(10, 7), ...byBen, bases: { measured_mm: [third.id] } });
  const all = [first, second, third, fourth];
  const lines = historyLines(entries(all), merged(...all), told());
  equal(lines.map((line) => line.shifts.map((each) => each.again?.words ?? "")), [[""], ["41 mm"], ["42 mm"], ["", ""]]);
});

test("history: entries are written once, and what is deleted is first restored", () => {
  const ride = hex("ride");
  const two = [op(ride, "ride", { km: 40 }), op(ride, "ride", { km: 50 }, { at: at(9, 1) })];
  const offers = (ops: readonly Op[]): number => historyLines(entries(ops), merged(...ops), told()).flatMap((line) => line.shifts).filter((each) => each.again).length;
  equal([offers(two), offers([first, second])], [0, 1]);
  const remove = op(rec, "tyre", { deleted: true }, { at: at(11, 0), ...byAna, seen: [first.id, second.id] });
  const lines = historyLines(entries([first, second, remove]), merged(first, second, remove), told());
  equal([lines[0]?.what, lines[0]?.shifts, offers([first, second, remove])], ["Removed", [], 0]);
  const back = op(rec, "tyre", { deleted: false }, { at: at(11, 1), ...byBen, bases: { deleted: [remove.id] } });
  equal(historyLines(entries([first, second, remove, back]), merged(first, second, remove, back), told())[0]?.what, "Restored");
});

test("history: of what was erased nothing is told but that it was there", () => {
  const frame: Op = { id: first.id, at: first.at, kind: "tyre", rec, set: { name: null }, erased: true };
  const erase = op(rec, eraseKind, { kind: "tyre" }, { at: at(11, 0), ...byAna });
  const lines = historyLines(entries([frame, erase]), merged(frame, erase), told());
  equal(lines.map((line) => [line.what.slice(0, 10), line.shifts]), [["Erased for", []], ["What was w", []]]);
});

test("history: somebody's weight is not told here, nor offered", () => {
  const person = hex("cleo");
  const ops = [
    op(person, "person", { mass_kg: 61 }, { device: benPhone }), op(person, "person", { mass_kg: 62 }, { at: at(9, 1), device: benPhone }),
    op(person, "person", { mass_kg: 63 }, { at: at(9, 2), device: anaPhone }),
  ];
  const lines = historyLines(entries(ops), merged(...ops), told());
  equal(lines.map((line) => [line.shifts[0]?.value, line.shifts[0]?.before, line.shifts[0]?.again]), [["63 kg", "light", undefined], ["light", "light", undefined], ["light", "", undefined]]);
});
