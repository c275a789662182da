import { equal, test } from "../../ui/testing.ts";
import { airOf, movedWords, noneTold, readRideTold, rideChanges, shiftWords } from "./after_ride.ts";
import type { PressureAnswer, WheelAnswer } from "./answer.ts";
import { emptyDraft, type PressureDraft } from "./draft.ts";
import { noTables } from "./kept.ts";
import { hex, merged, now, op } from "../value/kit.test.ts";
import { noteLines } from "../wheels/notes.ts";
import { type Learned, learnedQuestion } from "./learned.ts";
import { read } from "./request.ts";
import { rideDue, setForRide } from "./ride_due.ts";

const draft: PressureDraft = {
  ...emptyDraft, links: { "bike": "b1", "person": "p1", "front.wheel": "w1", "rear.wheel": "w2", "front.tyre": "t1" }, firmness: -1, wet: true,
  texts: { rider: "72", "front.label": "40", "front.inner": "25", "set.c": "18", "set.m": "240", "ride.c": "8", "ride.m": "900", "gaugeError": "0.1" },
  picks: { "front.profile": "hooked" },
};

const set = (hours: number, more: Record<string, string | number> = {}): ReturnType<typeof merged> =>
  merged(op(hex(`set${hours}`), "pressure_set", { wheel: "w1", gauge_kpa: 205, c: 18, m: 240, ...more }, { at: now - hours * 3600e3 }));

test("after the ride: an entry for each wheel of which something was said, with what the setting kept", () => {
  const told = { front: { felt: "hard", struck: false }, rear: { felt: undefined, struck: true } } as const;
  const setting = set(3, { p0_kpa: 210.4, label_mm: 40, sidewall: "glove", setup: "tubeless", tyre: "t9" });
  const changes = rideChanges(told, { front: { kpa: 201.26, setting }, rear: {} }, draft, [], () => "id");
  equal(changes, [
    { rec: "id", kind: "note", set: { bike: "b1", side: "front", wheel: "w1", tyre: "t9", person: "p1", ride: setting.rec, p0_kpa: 210.4, label_mm: 40, sidewall: "glove", setup: "tubeless", felt: "hard", ridden_kpa: 201.3 } },
    { rec: "id", kind: "note", set: { bike: "b1", side: "rear", wheel: "w2", person: "p1", rim_strike: true } },
  ]);
  const silent = { felt: undefined, struck: false };
  equal(rideChanges({ front: silent, rear: silent }, { front: {}, rear: {} }, draft, [], () => "id"), []);
  equal(rideChanges(told, { front: {}, rear: {} }, { ...draft, links: {} }, [], () => "id"), []);
  const first = merged(op(hex("first"), "note", { bike: "b1", ride: setting.rec, side: "front", felt: "right" }, { at: now }));
  equal(rideChanges(told, { front: { setting }, rear: {} }, draft, [first], () => "id")[0]?.set["corrects"], first.rec);
});

test("after the ride: what was ridden is the true pressure of the last setting, carried to the ride", () => {
  const reading = read(draft, "bar", noTables);
  equal(airOf(setForRide("front", draft, [set(20), set(60, { gauge_kpa: 150 })], now), reading), { kpa: 195, from: { c: 18, m: 240 }, to: { c: 8, m: 900 } });
  equal(setForRide("rear", draft, [set(20)], now), undefined);
  equal(setForRide("front", draft, [set(60)], now), undefined); // too long ago for this ride
  equal(airOf(set(2, { c: "mild" }), reading), undefined);
  equal(airOf(set(2), { ...reading, body: undefined }), undefined);
});

test("after the ride: the screen asks once the wheels can have been ridden, and once", () => {
  const both = (hours: number): ReturnType<typeof merged>[] => [set(hours), merged(op(hex(`rear${hours}`), "pressure_set", { wheel: "w2", gauge_kpa: 205 }, { at: now - hours * 3600e3 }))];
  const note = merged(op(hex("n"), "note", { ride: set(3).rec }, { at: now }));
  equal([rideDue(draft, [], [], now), rideDue(draft, both(0.2), [], now), rideDue(draft, both(3), [], now), rideDue(draft, both(3), [note], now), rideDue(draft, both(60), [], now)],
    ["never_set", "set", "ridden", "noted", "never_set"]);
});

test("after the ride: notes go to the sums with what they were measured against; an old one without", () => {
  const body = read(draft, "bar", noTables).body;
  if (body === undefined) throw new Error("a body");
  const notes = [
    merged(op(hex("old"), "note", { bike: "b1", side: "front", felt: "hard", ridden_kpa: 200, custom_kpa: 220 }, { at: now - 9 })),
    merged(op(hex("new"), "note", { bike: "b1", side: "rear", rim_strike: true, ridden_kpa: 220, p0_kpa: 222, ride: hex("r"), label_mm: 40, sidewall: "glove", setup: "tubeless" }, { at: now })),
  ];
  const tyre = { label_mm: 40, sidewall: "glove", setup: "tubeless" } as const;
  equal(learnedQuestion(notes, "b1", body), {
    notes: [{ wheel: "front", struck: false, felt: "hard", ridden_kpa: 200 }, { wheel: "rear", struck: true, ride: hex("r"), ridden_kpa: 220, p0_kpa: 222, tyre }], front: tyre, rear: tyre,
  });
  equal(learnedQuestion(notes, "other", body), undefined);
});

const answer = (front: number | null, rear: number | null, limited: WheelAnswer["limited_by"] = "none"): PressureAnswer => {
  const wheel = (gauge_kpa: number | null): WheelAnswer => ({ here_gauge_kpa: gauge_kpa, limited_by: limited }) as unknown as WheelAnswer;
  return { front: wheel(front), rear: wheel(rear), notices: [], bigger_tyre: [] };
};

test("after the ride: how much each wheel moved, or why it did not", () => {
  equal(movedWords(answer(205, 231), answer(199, 233.1), "bar"), "front 0.06 bar softer, rear 0.02 bar harder");
  equal(movedWords(answer(205, 231), answer(205.2, 231), "bar"), "front as before, rear as before");
  equal(movedWords(answer(205, 231), answer(205, 231, "floor"), "bar"), "front as before, held by the floor, rear as before, held by the floor");
  equal(movedWords(answer(null, 231), answer(null, 228), "kpa"), "rear 3 kPa softer");
  const wheel = (by: number, notes: number, trials: number): Learned["front"] => ({ shift: Math.log(by), notes, trials, other_tyre: 0, unknown: 0 });
  const learned = (front: number, rear: number, notes: number, trials = 0): Learned => ({ front: wheel(front, notes, trials), rear: wheel(rear, notes, 0) });
  equal([shiftWords(undefined), shiftWords(learned(1, 1, 5)), shiftWords(learned(0.96, 0.96, 5)), shiftWords(learned(1, 1.03, 1))],
    ["", "", "your 5 rides: 4 % softer", "your ride: front as computed, rear 3 % firmer"]);
  equal([shiftWords(learned(0.96, 0.96, 5, 1)), shiftWords(learned(0.96, 1, 0, 1)), shiftWords(learned(0.96, 0.96, 0, 2))],
    ["your 5 rides and 1 trial: 4 % softer", "your trial: front 4 % softer, rear as computed", "your 2 trials: 4 % softer"]);
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
