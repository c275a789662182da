import type { Json } from "../../log/op/json.ts";
import { equal, test } from "../../ui/testing.ts";
import { learnedQuestion } from "../pressure/learned.ts";
import type { RequestBody } from "../pressure/request.ts";
import { trialNotes } from "../pressure/trial_note.ts";
import { hex, now, record } from "../value/kit.test.ts";
import { type Basis, type Judged, mayStrike, nextSlot, noTrial, readArms, readTrialDraft, readValue, type Run, type TrialDraft, trialQuestion } from "./trial.ts";
import { trialChange } from "./trial_save.ts";
import { pastTrials, resultShown } from "./trial_view.ts";

const basis: Basis = { p0_kpa: 226, floor_kpa: 194, ceiling_kpa: 250, recommended_kpa: 226, label_mm: 40, sidewall: "glove", setup: "tubeless" };
const draft: TrialDraft = { ...noTrial, ends: "front", basis: { front: basis }, error_kpa: 5, texts: { "A.front": "2.1", "B.front": "2.4" }, order: ["A", "B", "B", "A"], round: 4, rounds: 1 };
const run = (slot: number, value: number, why = ""): Run => ({ slot, arm: draft.order[slot] ?? "A", value, why, wind: "", c: null, at: slot + (why === "" ? 1 : 100) });

test("trial: pressures are readings of a gauge, held to the wheel's limits; equal ones are no trial", () => {
  equal(readArms(draft, "bar"), { arms: [{ name: "A", tyre: "", gauge: { front: 210 } }, { name: "B", tyre: "", gauge: { front: 240 } }], faults: {} });
  const faults = (a: string, b: string): unknown => readArms({ ...draft, texts: { "A.front": a, "B.front": b } }, "bar").faults;
  // the gauge reads 5 kPa high: 1.98 is 193 kPa, under the floor; 2.56 is 251, over the limit
  equal([faults("1.98", "2.56"), faults("1.99", "2.55"), faults("", "soft"), faults("2.1", "210 kPa")], [{ "A.front": "low", "B.front": "high" }, {}, { "A.front": "missing", "B.front": "number" }, { "B.front": "same" }]);
  equal(readArms({ ...draft, ends: "both" }, "bar").faults, { "A.rear": "none", "B.rear": "none" });
  equal(readArms({ ...draft, kind: "tyre", texts: { "A.name": "Ochre", "B.name": " " } }, "bar").faults, { "B.name": "missing" });
});

test("trial: a time is read in seconds or in minutes", () => {
  equal(["62.4", "62,35 s", "1:02.4", "12", "1:60", "0", "fast", "", "-3", "1:2:3"].map(readValue), [62.4, 62.35, 62.4, 12, undefined, undefined, undefined, undefined, undefined, undefined]);
});

test("trial: a struck run's place is ridden again; what a look has counted stands", () => {
  equal([nextSlot({ ...draft, runs: [] }), nextSlot({ ...draft, runs: [run(0, 61), run(1, 62, "traffic"), run(2, 62)] }), nextSlot({ ...draft, runs: [0, 1, 2, 3].map((slot) => run(slot, 61)) })], [0, 1, undefined]);
  equal(trialQuestion({ ...draft, runs: [run(0, 61), run(1, 62, "traffic")] }), { arms: ["A", "B"], runs: [{ arm: "A", value: 61, struck: false }, { arm: "B", value: 62, struck: true }], better: "less", looks: 3 });
  equal([mayStrike(draft, { slot: 3 }), mayStrike({ ...draft, looked: 1 }, { slot: 3 }), mayStrike({ ...draft, looked: 1, look: 2 }, { slot: 3 }), mayStrike({ ...draft, looked: 1, look: 2 }, { slot: 4 })], [true, false, false, true]);
  equal(readTrialDraft(JSON.parse(JSON.stringify(draft))), draft);
  for (const odd of [undefined, 7, {}, { texts: {} }]) equal(readTrialDraft(odd), noTrial);
});

const pair = { first: "A", second: "B", difference: 1.2, low: 0.8, high: 1.6, chance_first_better: 0.9995, shown: true, runs_to_settle: 0 };
const settled: Judged = { ...pair, best: "A", level: 0.9779, arms: [{ arm: "A", runs: 4, mean: 61.2 }, { arm: "B", runs: 4, mean: 62.4 }], pairs: [pair] };
const level = { ...pair, difference: 0.1, low: -1, high: 1.2, chance_first_better: 0.61, shown: false, runs_to_settle: null };
const open: Judged = { ...settled, ...level, best: null, pairs: [level] };

test("trial: what was shown is said, and so is that nothing was", () => {
  const { arms } = readArms(draft, "bar");
  equal(resultShown(settled, { better: "less", look: 1, count: 2 }, arms, "bar").verdict, "A · front 2.10 bar is better, by 1.20 s over B.");
  const none = resultShown(open, { better: "less", look: 1, count: 2 }, arms, "bar");
  equal([none.verdict, none.goOn, none.lines.includes("Chance that A is better than B: 61.0 %.")], ["No difference shown.", "More runs than anybody rides would be needed: take them as equal.", true]);
  equal(resultShown({ ...open, runs_to_settle: 20 }, { better: "less", look: 1, count: 2 }, arms, "bar").goOn, "About 20 more runs would settle it, if the difference is as large as it looks.");
});

function saved(judged: Judged): ReturnType<typeof record> {
  const { arms } = readArms(draft, "bar");
  const { set } = trialChange({ ...draft, runs: [run(0, 61.2), run(1, 62.4, "braked")] }, arms, judged, "A / B", { bike: hex("b1") }, now, () => hex("new"));
  return record("trial", "trial", set as Record<string, Json>);
}

test("trial: a settled one teaches the wheel that it was about, against what was recommended that day; any other nothing", () => {
  const tyre = { label_mm: 40, sidewall: "glove", setup: "tubeless" } as const;
  const taught = { wheel: "front", ridden_kpa: 205, p0_kpa: 226, trial: { difference: 1.2, low: 0.8, high: 1.6 }, tyre } as const;
  equal([trialNotes(saved(settled)), trialNotes(saved(open)), trialNotes(record("trial", "odd", { values: { result: 7 } }))], [[taught], [], []]);
  const body = { front: { tyre }, rear: { tyre } } as unknown as RequestBody;
  const note = record("note", "note", { bike: hex("b1"), side: "rear", felt: "right", ridden_kpa: 240, p0_kpa: 247 });
  equal(learnedQuestion([saved(settled), note], hex("b1"), body)?.notes.map(({ wheel, trial }) => [wheel, trial !== undefined]).sort(), [["front", true], ["rear", false]]);
  equal([learnedQuestion([saved(open)], hex("b1"), body), learnedQuestion([{ ...saved(settled), deleted: true }], hex("b1"), body), learnedQuestion([saved(settled)], hex("b2"), body)], [undefined, undefined, undefined]);
  equal(pastTrials([saved(settled), saved(open)], hex("b1"), now).map(({ line }) => line.split(". ").at(-1)), ["A better by 1.20 s.", "No difference shown."]);
});
