import { merge, type RecordState } from "../../log/op/merge.ts";
import { equal, test } from "../../ui/testing.ts";
import { airQuestion, leakQuestions, settingsOf, typicalLoss } from "./expected.ts";
import { isWarm } from "./expected_view.ts";

const day = 86_400_000;
const now = 1790000000000;

const entry = (id: string, daysAgo: number, set: Record<string, number | string>): RecordState =>
  merge(id, [{ id, at: now - daysAgo * day, kind: "pressure_set", rec: id, set: { wheel: "w", c: 18, m: 200, ...set } }]);

test("expected: settings are a wheel's own, newest first, by a true gauge", () => {
  const entries = [entry("a", 9, { gauge_kpa: 200 }), entry("b", 2, { gauge_kpa: 205, found_kpa: 190 }), entry("c", 1, { gauge_kpa: 300, wheel: "other" }), entry("d", 1, { gauge_kpa: "?" })];
  equal(settingsOf(entries, "w", 7), [
    { at: now - 2 * day, read: 205, kpa: 198, found: 183, place: { c: 18, m: 200 } }, { at: now - 9 * day, read: 200, kpa: 193, found: undefined, place: { c: 18, m: 200 } },
  ]);
  equal(settingsOf(entries, undefined, 0), []);
});

test("expected: the leak is asked from each time it was read again, not within hours", () => {
  const settings = settingsOf([entry("a", 9, { gauge_kpa: 200 }), entry("b", 2, { gauge_kpa: 205, found_kpa: 190 }), entry("c", 1.9, { gauge_kpa: 205, found_kpa: 204 })], "w", 0);
  equal(leakQuestions(settings), [{
    first: { kpa: 200, c: 18, m: 200 }, second: { kpa: 190, c: 18, m: 200 }, days: 7, ahead_days: 1, ahead: { c: 18, m: 200 },
  }]);
});

test("expected: the typical loss is the middle one", () => {
  equal([typicalLoss([]), typicalLoss([0.02]), typicalLoss([0.02, 0.01]), typicalLoss([0.5, 0.01, 0.02])], [undefined, 0.02, 0.015, 0.02]);
});

test("expected: what is left after two days of one percent", () => {
  const [last] = settingsOf([entry("a", 2, { gauge_kpa: 200 })], "w", 0);
  const question = last && airQuestion(last, 0.01, now, { c: 6, m: 1100 });
  equal(question, { kpa: 196.02, from: { c: 18, m: 200 }, to: { c: 6, m: 1100 } });
  equal(last && airQuestion(last, undefined, now, { c: 6, m: 1100 }).kpa, 200);
});

test("expected: a reading well above is warmth, one near is not", () => {
  const [last] = settingsOf([entry("a", 1, { gauge_kpa: 200 })], "w", 0);
  const expected = last && { gauge_kpa: 200, last, loss: undefined, here: { c: 18, m: 200 } };
  equal([isWarm(203, expected), isWarm(208, expected), isWarm(undefined, expected), isWarm(208, undefined)], [false, true, false, false]);
});
