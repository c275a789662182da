import { equal, test } from "../../ui/testing.ts";
import { movedWords, noneTold, readRideTold, rideChanges, rideNoteOf, setForRide, shiftWords } from "./after_ride.ts";
import type { PressureAnswer, WheelAnswer } from "./answer.ts";
import { emptyDraft, type PressureDraft } from "./draft.ts";
import { noTables } from "./kept.ts";
import { hex, merged, now, op } from "../value/kit.test.ts";
import { noteLines } from "../wheels/notes.ts";
import { read } from "./request.ts";

const draft: PressureDraft = {
  ...emptyDraft, links: { "bike": "b1", "person": "p1", "front.wheel": "w1", "rear.wheel": "w2", "front.tyre": "t1" }, firmness: -1, wet: true,
  texts: { rider: "72", "front.label": "40", "front.inner": "25", "set.c": "18", "set.m": "240", "ride.c": "8", "ride.m": "900", "gaugeError": "0.1" },
  picks: { "front.profile": "hooked" },
};

test("after the ride: an entry for each wheel of which something was said", () => {
  const told = { front: { felt: "hard", struck: false }, rear: { felt: undefined, struck: true } } as const;
  const changes = rideChanges(told, { front: { ridden: 201.26, custom: 220.04 }, rear: {} }, draft, -0.031_234_5, () => "id");
  equal(changes, [
    { rec: "id", kind: "note", set: { bike: "b1", side: "front", wheel: "w1", tyre: "t1", person: "p1", felt: "hard", ridden_kpa: 201.3, custom_kpa: 220, firmness: -2, shift: -0.0312 } },
    { rec: "id", kind: "note", set: { bike: "b1", side: "rear", wheel: "w2", person: "p1", rim_strike: true, firmness: -2, shift: -0.0312 } },
  ]);
  const silent = { felt: undefined, struck: false };
  equal(rideChanges({ front: silent, rear: silent }, { front: {}, rear: {} }, draft, 0, () => "id"), []);
  equal(rideChanges(told, { front: {}, rear: {} }, { ...draft, links: {} }, 0, () => "id"), []);
  equal(rideNoteOf(told.front, { ridden: 200 }, draft), { felt: "hard", struck: false, ridden: 200, custom: undefined, firmness: -2 });
});

const set = (hours: number, more: Record<string, string | number> = {}): ReturnType<typeof merged> =>
  merged(op(hex(`set${hours}`), "pressure_set", { wheel: "w1", gauge_kpa: 205, c: 18, m: 240, ...more }, { at: now - hours * 3600e3 }));

test("after the ride: what was ridden is the true pressure of the last setting, carried to the ride", () => {
  const reading = read(draft, "bar", noTables);
  equal(setForRide("front", draft, [set(20), set(60, { gauge_kpa: 150 })], reading, now), { kpa: 195, from: { c: 18, m: 240 }, to: { c: 8, m: 900 } });
  equal(setForRide("rear", draft, [set(20)], reading, now), undefined);
  equal(setForRide("front", draft, [set(60)], reading, now), undefined); // too long ago for this ride
  equal(setForRide("front", draft, [set(2, { c: "mild" })], reading, now), undefined);
  equal(setForRide("front", draft, [set(2)], { ...reading, body: undefined }, now), undefined);
});

const answer = (front: number | null, rear: number | null, limited: WheelAnswer["limited_by"] = "none"): PressureAnswer => {
  const wheel = (gauge_kpa: number | null): WheelAnswer => ({ gauge_kpa, limited_by: limited }) as unknown as WheelAnswer;
  return { front: wheel(front), rear: wheel(rear), notices: [], bigger_tyre: [] };
};

test("after the ride: how much each wheel moved, or why it did not", () => {
  equal(movedWords(answer(205, 231), answer(199, 233.1), "bar"), "front 0.06 bar softer, rear 0.02 bar harder");
  equal(movedWords(answer(205, 231), answer(205.2, 231), "bar"), "front as before, rear as before");
  equal(movedWords(answer(205, 231), answer(205, 231, "floor"), "bar"), "front as before, held by the floor, rear as before, held by the floor");
  equal(movedWords(answer(null, 231), answer(null, 228), "kpa"), "rear 3 kPa softer");
  equal([shiftWords({ by: 0, notes: 0 }), shiftWords({ by: Math.log(0.96), notes: 5 })], ["", "Your 5 notes moved the starting point by -4.0 %."]);
});

test("after the ride: what was chosen is read back, and nonsense is nothing", () => {
  const told = { bike: "b1", told: { front: { felt: "hard" as const, struck: false }, rear: { felt: undefined, struck: true } } };
  equal(readRideTold(JSON.parse(JSON.stringify(told))), told);
  for (const odd of [undefined, null, 7, {}, { told: 7 }]) equal(readRideTold(odd), noneTold);
  equal(readRideTold({ bike: 7, told: { front: { felt: "odd", struck: "yes" } } }), noneTold);
});

test("notes: a line tells what was felt, of which wheel, and what was written", () => {
  const line = (name: string, set: Record<string, string | boolean>): string =>
    noteLines([merged(op(hex(name), "note", { bike: "b1", ...set }, { at: now }))], "b1", now)[0]?.words ?? "";
  equal(line("a", { side: "front", felt: "hard", rim_strike: true }), "Front: a bit harsh, the rim hit something (just now)");
  equal(line("b", { note: "cold hands" }), "cold hands (just now)");
});
