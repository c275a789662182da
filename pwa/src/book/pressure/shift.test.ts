import type { RecordState } from "../../log/op/merge.ts";
import { equal, test } from "../../ui/testing.ts";
import { emptyDraft } from "./draft.ts";
import { noTables } from "./kept.ts";
import { hex, merged, op, record } from "../value/kit.test.ts";
import { read } from "./request.ts";
import { rideNotes, shifted, shiftOf } from "./shift.ts";

const bike = hex("bike");

const harsh = (name: string, more: Record<string, string | number> = {}): RecordState =>
  record("note", name, { bike, felt: "hard", ridden_kpa: 200, custom_kpa: 200, ...more });

test("shift: only notes of this bike count, and neither removed nor corrected ones", () => {
  equal(shiftOf(rideNotes([harsh("a"), harsh("b", { bike: hex("other") })], bike)), { by: -0.025, notes: 1 });
  const removed = merged(op(hex("c"), "note", { bike, felt: "hard", ridden_kpa: 200, custom_kpa: 200 }), op(hex("c"), "note", { deleted: true }));
  equal(shiftOf(rideNotes([removed], bike)).notes, 0);
  const corrects = harsh("d", { corrects: hex("a"), felt: "right" });
  equal(shiftOf(rideNotes([harsh("a"), corrects], bike)), { by: 0, notes: 1 });
  equal(shiftOf(rideNotes([harsh("a")], undefined)).notes, 0);
});

test("shift: a note in words alone, or with strange values, does not count", () => {
  const entries = [
    record("note", "words", { bike, note: "cold hands" }), harsh("text", { ridden_kpa: "200" }), harsh("felt", { felt: "floaty" }),
  ];
  equal(shiftOf(rideNotes(entries, bike)), { by: 0, notes: 0 });
});

test("shift: a question asks for it in the calculator's own field", () => {
  const reading = read({ ...emptyDraft, picks: { "front.profile": "hooked" }, texts: { rider: "72", "front.label": "40", "front.inner": "25" } }, "bar", noTables);
  const before = JSON.stringify(reading.body);
  equal(JSON.stringify(shifted(reading, -0.04).body), before.replace('"shift":{"front":0,"rear":0}', '"shift":{"front":-0.04,"rear":-0.04}'));
  equal(shifted({ ...reading, body: undefined }, 0.1).body, undefined);
});
