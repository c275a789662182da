import { merge, type RecordState } from "../../log/op/merge.ts";
import { equal, test } from "../../ui/testing.ts";
import { expectedOf, expectedQuestion, settingsOf } from "./expected.ts";
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

test("expected: one question for both wheels, with how each was found before it was set anew", () => {
  const front = settingsOf([entry("a", 9, { gauge_kpa: 200 }), entry("b", 2, { gauge_kpa: 205, found_kpa: 190 })], "w", 0);
  equal(expectedQuestion({ front, rear: [] }, 7, { c: 6, m: 1100 }, now), {
    front: { kpa: 205, c: 18, m: 200, at: now - 2 * day, history: [{ set: { kpa: 200, c: 18, m: 200, at: now - 9 * day }, found: { kpa: 190, c: 18, m: 200, at: now - 2 * day } }] },
    at: Math.round(now / 3.6e6) * 3.6e6, here: { c: 6, m: 1100 }, gauge_error_kpa: 7,
  });
  equal(expectedQuestion({ front: [], rear: [] }, 0, { c: 6, m: 1100 }, now), undefined);
});

test("expected: an answer stands beside what it rests on, and a gauge shows nothing below zero", () => {
  const settings = settingsOf([entry("a", 2, { gauge_kpa: 200 })], "w", 0);
  const wheel = { kpa: -3, gauge_kpa: -3, days: 2, loss_per_day: null };
  const found = expectedOf("front", settings, { c: 6, m: 0 }, { front: wheel, rear: null });
  equal([found?.gauge_kpa, found?.loss, found?.last.read], [0, undefined, 200]);
  equal([expectedOf("rear", settings, { c: 6, m: 0 }, { front: wheel, rear: null }), expectedOf("front", [], { c: 6, m: 0 }, undefined)], [undefined, undefined]);
});

test("expected: a reading well above is warmth, one near is not", () => {
  const [last] = settingsOf([entry("a", 1, { gauge_kpa: 200 })], "w", 0);
  const expected = last && { gauge_kpa: 200, last, loss: undefined, here: { c: 18, m: 200 } };
  equal([isWarm(203, expected), isWarm(208, expected), isWarm(undefined, expected), isWarm(208, undefined)], [false, true, false, false]);
});
