import type { Json } from "../../log/op/json.ts";
import { equal, test } from "../../ui/testing.ts";
import { at, hex, merged, now, op, record } from "../value/kit.test.ts";
import { measuresOf, mountedOf, newestMeasure, whatsOf } from "./measure.ts";
import { widthAge, widthDue } from "./measure_age.ts";
import { dayAge, dayOf, daysFrom, isDay, momentOf } from "./measure_days.ts";

const tyre = hex("tyre");
const width = (name: string, mm: number, day: string, more: Record<string, Json> = {}): ReturnType<typeof record> =>
  record("measure", name, { of: tyre, what: "width", mm, day, ...more });
const entries = [width("a", 41, "2026-07-02"), width("b", 42, "2026-07-10", { kpa: 210, days_fitted: 9 }), width("c", 41.5, "2026-07-05")];
const values = (list: readonly { value: number }[]): number[] => list.map((each) => each.value);

test("measures: the newest day counts, not the newest writing", () => {
  equal(values(measuresOf(entries, tyre, "width")), [42, 41.5, 41]);
  const { value, kpa, days, day } = newestMeasure(entries, tyre, "width") ?? {};
  equal([value, kpa, days, day], [42, 210, 9, "2026-07-10"]);
  equal(newestMeasure(entries, tyre, "sealant"), undefined);
  equal(newestMeasure(entries, hex("other"), "width"), undefined);
});

test("measures: what was deleted, erased or corrected does not count", () => {
  const fixed = width("d", 40.5, "2026-07-10", { corrects: hex("b") });
  equal(values(measuresOf([...entries, fixed], tyre, "width")), [40.5, 41.5, 41]);
  const gone = merged(op(hex("d"), "measure", { of: tyre, what: "width", mm: 40.5, corrects: hex("b") }), op(hex("d"), "measure", { deleted: true }));
  equal(newestMeasure([...entries, gone], tyre, "width")?.value, 42); // a correction that was taken back corrects nothing
  const erased = merged(op(hex("b"), "measure", { of: tyre, what: "width", mm: 42 }), op(hex("b"), "erase", { kind: "measure" }));
  equal(values(measuresOf([erased], tyre, "width")), []);
});

test("measures: each side and each place for itself; nonsense is left out", () => {
  const bike = hex("bike");
  const load = (name: string, side: string, kg: Json): ReturnType<typeof record> => record("measure", name, { of: bike, what: "load", side, kg, day: "2026-07-01" });
  const loads = [load("f", "front", 38), load("r", "rear", 47), load("x", "rear", "much")];
  equal([newestMeasure(loads, bike, "load", "front")?.value, values(measuresOf(loads, bike, "load", "rear"))], [38, [47]]);
  const built = [
    record("measure", "s", { of: bike, what: "as_built", place: "saddle_height", mm: 745, day: "2026-07-01" }),
    record("measure", "t", { of: bike, what: "as_built", place: "bar_angle", degrees: -3, day: "no day" }),
  ];
  equal(values(measuresOf(built, bike, "as_built", undefined, "bar_angle")), [-3]);
  equal(newestMeasure(built, bike, "as_built", undefined, "bar_angle")?.day, "2026-07-14"); // the day it was written
});

test("measures: what can be measured on which thing, and where it is mounted", () => {
  equal([whatsOf("tyre"), whatsOf("pump"), whatsOf("constructor")], [["width", "sealant"], [], []]);
  const wheel = record("wheel", "w", { tyre });
  const bike = record("bike", "b", { rear: wheel.rec });
  equal(mountedOf(tyre, "tyre", [wheel], [bike]), { wheel: wheel.rec, bike: bike.rec, side: "rear" });
  equal(mountedOf(wheel.rec, "wheel", [wheel], []), { wheel: wheel.rec });
  equal(mountedOf(bike.rec, "bike", [wheel], [bike]), { bike: bike.rec });
  equal([mountedOf(tyre, "tyre", [], [bike]), mountedOf(hex("g"), "gauge", [wheel], [bike])], [{}, {}]);
});

test("days: by the calendar of the place, across months and leap days", () => {
  equal([dayOf(at(0, 0)), dayOf(at(23, 59))], ["2026-07-14", "2026-07-14"]);
  equal([daysFrom("2024-02-28", "2024-03-01"), daysFrom("2026-03-28", "2026-03-30"), daysFrom("2026-07-14", "2026-07-10")], [2, 2, -4]);
  equal(["2026-02-30", "2026-13-01", "14 Jul", 7, "2024-02-29"].map(isDay), [false, false, false, false, true]);
  equal([momentOf("2026-07-14", now), dayOf(momentOf("2026-07-01", now))], [now, "2026-07-01"]);
  equal(["2026-07-15", "2026-07-14", "2026-07-13", "2026-07-02"].map((day) => dayAge(day, now)), ["today", "today", "yesterday", "12 days ago"]);
});

test("width: how old it is, and that a new tyre's is taken again once it has grown", () => {
  const tyreOf = (set: Record<string, Json>): string => widthAge(record("tyre", "tyre", set), now);
  equal([tyreOf({ label_mm: 40 }), tyreOf({ measured_mm: 41 }), widthAge(undefined, now)], ["", "", ""]);
  equal(tyreOf({ measured_mm: 41, measured_at: at(8, 0, 12) }), "measured 12 days ago");
  equal(tyreOf({ measured_mm: 41, measured_at: at(8, 0, 12), fitted: "2026-06-30" }),
    "measured 12 days ago. Measure again: it was new then, and tyres grow in their first week (our choice, common practice).");
  equal(tyreOf({ measured_mm: 41, measured_at: at(8, 0, 2), fitted: "2026-07-10" }), "measured 2 days ago"); // still new: too early to ask
  equal(tyreOf({ measured_mm: 41, measured_at: at(8, 0, 12), fitted: "2026-07-05" }), "measured 12 days ago. Measure again: that was before it was fitted here.");
  equal([widthDue("2026-07-07", "2026-06-30", "2026-07-14"), widthDue("2026-07-06", "2026-06-30", "2026-07-07"), widthDue("2026-07-02", "2026-07-20", "2026-07-14"), widthDue("2026-07-02", 7, "2026-07-14")],
    ["", "grown", "", ""]);
});
