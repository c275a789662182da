import type { Json } from "../../log/op/json.ts";
import type { RecordState } from "../../log/op/merge.ts";
import { equal, test } from "../../ui/testing.ts";
import { at, hex, merged, now, op, record } from "../value/kit.test.ts";
import type { What } from "./measure.ts";
import { judge, limitOf } from "./measure_limits.ts";
import { type MeasuredGroup, measuredGroups, type MeasuredLine } from "./measure_view.ts";
import { placeWords, valueText } from "./measure_words.ts";

const nothing = { rotorMin: undefined, tyre: undefined, age: 0 };
const severities = (what: What, value: number, around: Partial<typeof nothing> | { rotorMin: number } | { tyre: number } | { age: number }): readonly string[] =>
  judge(what, value, { ...nothing, ...around }).map(({ severity }) => severity);

test("limits: the number on the rotor wins over the usual one", () => {
  equal(judge("rotor_thickness", 1.48, { ...nothing, rotorMin: 1.5 }), [{ severity: "stop", text: "Do not ride: thinner than the 1.5 mm on the rotor. Change the rotor. The number on the rotor wins." }]);
  equal([severities("rotor_thickness", 1.5, { rotorMin: 1.5 }), severities("rotor_thickness", 1.61, { rotorMin: 1.5 }), severities("rotor_thickness", 1.8, { rotorMin: 1.85 })], [["care"], [], ["stop"]]);
  equal([severities("rotor_thickness", 1.54, {}), severities("rotor_thickness", 1.8, {})], [["stop", "care"], ["care"]]);
});

test("limits: run-out, room and sealant", () => {
  equal([severities("rotor_runout", 0.2, {}), severities("rotor_runout", 0.21, {}), severities("rim_runout", 0.8, {}), severities("rim_runout", 0.9, {})], [[], ["care"], [], ["care"]]);
  const room = (opening: number): readonly string[] => severities("room", opening, { tyre: 42 });
  equal([room(45), room(45.2), room(49), room(50), room(54)], [["stop"], ["care"], ["care"], ["note"], ["note"]]);
  equal(judge("room", 40, { ...nothing, tyre: 42 })[0]?.text, "Do not ride: clearance only 0 mm each side of the tyre. The least is 1.6 mm.");
  equal([severities("room", 45, {}), severities("sealant", 60, { age: 59 }), severities("sealant", 60, { age: 60 })], [["note"], [], ["care"]]);
  equal([limitOf("room", { ...nothing, tyre: 42 })?.value, limitOf("room", nothing), limitOf("width", nothing), limitOf("rotor_thickness", nothing)?.value], [50, undefined, undefined, 1.55]);
});

test("words: values with their units, and places by name", () => {
  equal([valueText("mm", 41.5, "psi"), valueText("degrees", -3, "bar"), valueText("kpa", -5, "bar"), valueText("kpa", 10, "kpa"), valueText("kpa", 0.2, "bar")],
    ["41.5 mm", "-3°", "0.05 bar too low", "10 kPa too high", "reads right"]);
  equal([placeWords("sideways"), placeWords("lever to bar end")], ["Sideways", "lever to bar end"]);
});

function groups(state: RecordState, entries: readonly RecordState[], others: readonly RecordState[] = []): readonly MeasuredGroup[] {
  return measuredGroups({ state, entries, find: (rec) => others.find((each) => each.rec === rec), unit: "bar", now });
}

const line = (of: readonly MeasuredGroup[], what: What): MeasuredLine | undefined => of.find((each) => each.what === what)?.lines[0];
const width = (name: string, set: Record<string, Json>): RecordState => record("measure", name, { of: hex("tyre"), what: "width", ...set });

test("card: the newest value with its age, pressure and days, and a way to measure again", () => {
  const tyre = record("tyre", "tyre", { measured_mm: 41.5 });
  const shown = groups(tyre, [width("a", { mm: 41.5, day: "2026-07-02", kpa: 210, days_fitted: 8 })]);
  const first = line(shown, "width");
  equal([first?.value, first?.about, first?.notices, first?.trend?.points.length], ["41.5 mm", "12 days ago, at 2.10 bar, 8 days after fitting", [], 1]);
  equal(shown.map(({ link, href, lines }) => [link, href, lines.length]), [
    ["Measure again", `#/wheels/measure/${tyre.rec}/width`, 1], ["Measure", `#/wheels/measure/${tyre.rec}/sealant`, 0],
  ]);
});

test("card: what was typed into the record later is what counts", () => {
  const later = merged(op(hex("tyre"), "tyre", { measured_mm: 43, measured_at: at(10, 0) }, { at: at(10, 0) }));
  const shown = line(groups(later, [width("a", { mm: 41.5, day: "2026-07-02" })]), "width");
  equal([shown?.value, shown?.about], ["43 mm", "typed today"]);
  const typed = line(groups(record("tyre", "tyre", { measured_mm: 43 }), []), "width");
  equal([typed?.about, typed?.trend], ["typed, no date", undefined]);
});

test("card: a tyre measured when it was new is asked for again, also when only the entry knows its age", () => {
  const tyre = record("tyre", "tyre", { measured_mm: 41 });
  const due = (days: number): number | undefined => line(groups(tyre, [width("a", { mm: 41, day: "2026-07-02", days_fitted: days })]), "width")?.notices.length;
  equal([due(1), due(7)], [1, 0]);
});

test("card: two values make a trend, oldest first, with its limit", () => {
  const wheel = record("wheel", "wheel", { rotor_min_mm: 1.5, rotor_thickness_mm: 1.48 });
  const thick = (name: string, mm: number, day: string): RecordState => record("measure", name, { of: wheel.rec, what: "rotor_thickness", mm, day });
  const shown = line(groups(wheel, [thick("a", 1.48, "2026-07-14"), thick("b", 1.8, "2026-01-14")]), "rotor_thickness");
  equal([shown?.trend?.points.map(({ value }) => value), shown?.trend?.limit], [[1.8, 1.48], { value: 1.5, label: "on the rotor: 1.5 mm" }]);
  equal(shown?.notices.map(({ severity }) => severity), ["stop"]);
});

test("card: room is judged by the tyre that is on that wheel", () => {
  const tyre = record("tyre", "tyre", { label_mm: 40, measured_mm: 42 });
  const wheel = record("wheel", "wheel", { tyre: tyre.rec });
  const bike = record("bike", "bike", { rear: wheel.rec, room_front_mm: 60, room_rear_mm: 48 });
  const room = groups(bike, [], [tyre, wheel]).find(({ what }) => what === "room");
  equal(room?.lines.map(({ label, value, notices }) => [label, value, notices[0]?.text.slice(0, 27)]), [
    ["Front", "60 mm", "The tyre’s width is not kno"], ["Rear", "48 mm", "Clearance only 3 mm each si"],
  ]);
});

test("card: each as-built length stands for itself", () => {
  const bike = record("bike", "bike", {});
  const built = (name: string, set: Record<string, Json>): RecordState => record("measure", name, { of: bike.rec, what: "as_built", day: "2026-07-14", ...set });
  const shown = groups(bike, [built("a", { place: "saddle_height", mm: 745 }), built("b", { place: "bar_angle", degrees: 3 })]).find(({ what }) => what === "as_built");
  equal(shown?.lines.map(({ label, value }) => [label, value]).sort(), [["Bar angle", "3°"], ["Saddle height", "745 mm"]]);
});
