import { equal, test } from "../../ui/testing.ts";
import type { Json } from "../../log/op/json.ts";
import type { RecordState } from "../../log/op/merge.ts";
import { hex, merged, now, op } from "../value/kit.test.ts";
import { arrivalEvents, directionOf, journeyOf } from "./arrivals.ts";
import { builtWords, missingWords, runoutWords, type Built } from "./as_built.ts";
import { readCount, readSize } from "./goods_view.ts";
import { nextOf, progressOf, stagesOf, type Step, stepViews, ticksOf } from "./pack_view.ts";
import { questionsOf } from "./questions.ts";
import { tripReminders } from "./reminders.ts";
import { stepWords } from "./step_words.ts";
import { bikesOf, daysUntil, flown, type Good, goodsOf, itemsOf, legsOf, timeLeft, totalsOf, tripsByDay, wayOf, withItems } from "./trip.ts";

const made = (name: string, kind: string, set: Record<string, Json>, at = now): RecordState => merged(op(hex(name), kind, set, { at }));

test("trip: the time that is left counts days of the calendar", () => {
  const trip = (from: string, to = ""): RecordState => made("t", "trip", { from, to });
  const left = (from: string, to = ""): string => timeLeft(trip(from, to), "2026-10-24");
  equal([left("2026-10-26"), left("2026-10-25"), left("2026-10-24"), left("2026-10-20", "2026-10-28"), left("2026-10-20", "2026-10-21"), left(""), left("soon")],
    ["Leaves in 2 days", "Leaves tomorrow", "Leaves today", "Away", "Over", "No day is set.", "No day is set."]);
  equal([daysUntil("2026-03-01", "2026-02-28"), daysUntil("2028-03-01", "2028-02-28"), daysUntil("x", "2026-01-01")], [1, 2, undefined]);
  const trips = [made("1", "trip", { from: "2026-01-01", to: "2026-01-02" }), made("2", "trip", { from: "2027-01-01" }), made("3", "trip", {}), made("4", "trip", { from: "2026-11-01" })];
  equal(tripsByDay(trips, "2026-10-24").map(({ rec }) => rec), [hex("4"), hex("2"), hex("3"), hex("1")]);
});

test("trip: items and goods live in one list, and nonsense is left out", () => {
  const items = [{ id: "a", name: "Bike 🚲", kg: 12.5, cm: 203 }, { id: "b", name: "חולצה", kg: 0.6 }];
  const goods: Good[] = [{ key: "k", id: "cartridge", count: 2, grams: 16 }, { key: "l", id: "power_bank", count: 1, who: "ana" }];
  const trip = made("t", "trip", { items: withItems(items, goods), bikes: [hex("b"), 7], way: "train", limit_kg: 13, limit_cm: 203, legs_us: false });
  equal([itemsOf(trip), goodsOf(trip), bikesOf(trip), wayOf(trip), legsOf(trip)], [items, goods, [hex("b")], "train", false]);
  equal(totalsOf(trip), { kg: 13.1, cm: 203, overKg: true, overCm: false });
  const odd = made("o", "trip", { items: [7, "x", { name: 3 }, { good: 4 }, { good: "dynamite" }], bikes: "all", way: "rocket" });
  equal([itemsOf(odd), goodsOf(odd), bikesOf(odd), wayOf(odd), legsOf(odd), totalsOf(odd)], [[], [], [], "air_bag", null, { kg: 0, cm: 0, overKg: false, overCm: false }]);
  equal([flown(""), flown("courier"), flown("train"), flown("car")], [true, true, false, false]);
});

test("trip: sizes that an earlier version assumed are not taken over", () => {
  const trip = made("t", "trip", { items: [{ good: "cartridge", count: 2, grams: 16 }, { good: "power_bank", count: 1, wh: 74 }, { good: "sealant", count: 1, ml: 100 }, { good: "power_bank", count: 1, wh: 20, key: "k" }] });
  equal(goodsOf(trip), [{ key: "old 0", id: "cartridge", count: 2, grams: 16 }, { key: "old 1", id: "power_bank", count: 1 }, { key: "old 2", id: "sealant", count: 1 }, { key: "k", id: "power_bank", count: 1, wh: 20 }]);
});

test("goods: a count is whole, a size is read or not known", () => {
  const said = (read: object): unknown => ("value" in read ? read.value : "fault");
  equal(["2", " 3 ", "0", "", "1.5", "101"].map((text) => said(readCount(text))), [2, 3, "fault", "fault", "fault", "fault"]);
  equal(["", "16", "16 g", "0,5", "x", "-3", "99999"].map((text) => said(readSize(text, "grams"))), [undefined, 16, 16, 0.5, "fault", "fault", "fault"]);
  equal([said(readSize("74 Wh", "wh")), said(readSize("100ml", "ml"))], [74, 100]);
});

type Named = Partial<Step> & Pick<Step, "id">;
const step = (named: Named): Step => ({ stage: "before", tool: "", needs: [], must: false, values: {}, notes: [], ...named });
const steps: readonly Step[] = [
  step({ id: "as_built" }), step({ id: "front_wheel_out", stage: "wheels", needs: ["as_built"], loosens: true }), step({ id: "front_rotor", stage: "wheels", needs: ["front_wheel_out"], must: true, tool: "torx_25", loosens: true }),
];
const arrival: readonly Step[] = [step({ id: "front_rotor_on", stage: "rotors", must: true, tool: "torx_25" }), step({ id: "front_wheel_in", stage: "wheels_in", must: true, needs: ["front_rotor_on"] }), step({ id: "tyres", stage: "tyres" })];
let drawn = 0;
const tick = (of: string, ticked: boolean, at: number, more: Record<string, Json> = {}): RecordState => made(`tick${++drawn}`, "pack_tick", { trip: "t", bike: "b", step: of, ticked, ...more }, at);

test("ticks: the newest of each step counts, whoever set it; out and home are two lists, and old ticks are of the way out", () => {
  const ticks = ticksOf([
    tick("as_built", true, 10), tick("as_built", false, 20), tick("front_wheel_out", false, 5), tick("front_wheel_out", true, 6, { direction: "out" }), tick("as_built", true, 30, { bike: "other" }),
    tick("as_built", true, 40, { direction: "home" }), made("6", "pack_tick", { trip: "else", bike: "b", step: "front_rotor", ticked: true }),
  ], "t");
  const views = stepViews(steps, "b", "out", ticks);
  equal(views.map(({ ticked, after }) => [ticked, after === undefined ? "" : stepWords(after)]), [[false, ""], [true, "Measure and photograph it"], [false, ""]]);
  equal([progressOf(views), nextOf(views)?.step.id], [{ done: 1, of: 3, mustLeft: 1 }, "as_built"]);
  const home = stepViews(steps, "b", "home", ticks);
  equal([home.map(({ ticked }) => ticked), nextOf(home)?.step.id], [[true, false, false], "front_wheel_out"]);
  equal(stagesOf(home).map(({ stage, views: own, done }) => [stage, own.length, done]), [["before", 1, 1], ["wheels", 2, 0]]);
});

test("ticks: of a step that stood once for each part it might be about, all of those count that this bike may have", () => {
  const of = (tool: Step["tool"], direction: "out" | "home", ...ids: string[]): boolean | undefined =>
    stepViews([step({ id: "front_rotor_on", tool })], "b", direction, ticksOf(ids.map((id) => tick(id, true, 9)), "t"))[0]?.ticked;
  equal([of("torx_25", "out", "front_rotor_six_on"), of("torx_25", "out", "front_rotor_ring_on"), of("rotor_tools", "out", "front_rotor_ring_on"), of("rotor_tools", "out", "front_rotor_ring_on", "front_rotor_six_on"), of("torx_25", "home", "front_rotor_six_on")],
    [true, false, false, true, false]);
  const taken = ticksOf([tick("front_rotor_six_on", true, 5), tick("front_rotor_on", false, 6)], "t");
  equal(stepViews([step({ id: "front_rotor_on", tool: "torx_25" })], "b", "out", taken)[0]?.ticked, false);
});

test("arrival: what is begun and not finished is told, and a finished outward arrival opens home", () => {
  const pack = { steps, arrival };
  const events = (...entries: RecordState[]): unknown => arrivalEvents(made("t", "trip", {}), "b", () => pack, ticksOf(entries, "t")).map(({ must_left, at, trip }) => [must_left, at, trip]);
  equal(events(), []);
  equal(events(tick("as_built", true, 9)), []);
  equal(events(tick("front_wheel_out", true, now)), [[2, now, hex("t")]]);
  const back = [tick("front_wheel_out", true, now), tick("front_rotor_on", true, now + 1), tick("front_wheel_in", true, now + 2)];
  equal(events(...back), [[0, now + 2, hex("t")]]);
  equal(events(...back, tick("front_wheel_out", true, now + 9, { direction: "home" })), [[2, now + 9, hex("t")]]);
  const direction = (...entries: RecordState[]): string => directionOf([journeyOf(pack, "b", "out", ticksOf(entries, "t"))]);
  equal([direction(), direction(tick("front_wheel_out", true, now)), direction(...back), directionOf([])], ["out", "out", "home", "out"]);
});

test("questions: an answer belongs to the trip, the bike, or the wheel of that end", () => {
  const trip = made("t", "trip", {});
  const bike = { name: "Ochre", state: made("b", "bike", {}), wheels: { front: made("w", "wheel", {}), rear: undefined } };
  const of = (...ask: { field: "legs_us" | "axle" | "brake" | "pedals" | "rotor_mount"; side: "" | "front" | "rear" }[]): unknown =>
    questionsOf(trip, [{ ...bike, ask }]).map(({ label, options, change }) => [label, options.length, change(options[0]?.value ?? "").kind, change(options[0]?.value ?? "").set]);
  equal(of({ field: "legs_us", side: "" }), [["Does any flight start, end or change in the United States?", 2, "trip", { legs_us: false }]]);
  equal(of({ field: "pedals", side: "" }), [["What turns the pedals?", 3, "bike", { pedals: "spanner" }]]);
  equal(of({ field: "axle", side: "front" }, { field: "axle", side: "rear" }), [["Front: Which axle?", 4, "wheel", { axle_mm: 9 }]]);
  equal(of({ field: "brake", side: "" }, { field: "brake", side: "rear" }), [["Which brake?", 2, "bike", { brake: "disc" }], ["Rear: Which brake?", 2, "bike", { brake: "disc" }]]);
});

test("trip: reminders stand on the right day and keep their ids when the days change", () => {
  const at = (set: Record<string, Json>, rotors = true): readonly string[] => tripReminders(made("t", "trip", { name: "Island", ...set }), rotors).map(({ uid, day, alarmHours }) => `${uid.split(".")[0]} ${day} ${alarmHours}`);
  equal(at({ from: "2026-08-01", arrives: "2026-08-02", to: "2026-08-09", home_arrives: "2026-08-10" }),
    ["rotors-off 2026-08-01 -6", "batteries 2026-08-01 -5", "rotors-on 2026-08-02 16", "arrival 2026-08-02 17", "rotors-off-back 2026-08-09 -6", "batteries-back 2026-08-09 -5", "home 2026-08-10 17"]);
  equal(at({ from: "2026-08-01" }, false), ["batteries 2026-08-01 -5", "arrival 2026-08-01 17"]);
  equal([at({}), at({ from: "never" })], [[], []]);
});

const measure = (name: string, of: string, what: string, place: string, field: string, value: number, at = now): RecordState =>
  made(name, "measure", { of, what, place, [field]: value, day: "2026-07-14" }, at);

test("as built: what was written down stands at its step, and what is missing is said", () => {
  const measures = [measure("1", "b", "as_built", "saddle_height", "mm", 742), measure("2", "b", "as_built", "bar_angle", "degrees", 3), measure("3", "w", "rotor_runout", "", "mm", 0.15)];
  const built: Built = { bike: "b", wheels: { front: "w", rear: "v" }, measures, photos: [] };
  const asked = (...as_built: NonNullable<Step["as_built"]>[number][]): Step => step({ id: "as_built", as_built });
  equal([builtWords(asked("saddle_height"), built), builtWords(asked("bar_angle", "photos"), built), builtWords(asked("reach"), built)], ["As built: saddle height 742 mm", "As built: bar angle 3 °", ""]);
  equal(missingWords(asked("saddle_height", "reach", "photos", "rotor_runout"), built), "Not written down: reach, photos and rotor run-out.");
  const photo = made("p", "photo", { bike: "b", sha256: "00" });
  equal(missingWords(asked("saddle_height", "photos"), { ...built, photos: [photo] }), "");
});

test("run-out: what is measured on arrival is held against what was written down before, never against a limit", () => {
  const turned = step({ id: "front_rotor_true", notes: ["runout_compare"] });
  const words = (...values: readonly [mm: number, at: number][]): string =>
    runoutWords(turned, { bike: "b", wheels: { front: "w", rear: "" }, photos: [], measures: values.map(([mm, at], n) => measure(`m${n}`, "w", "rotor_runout", "", "mm", mm, at)) }, now);
  equal([words(), words([0.3, now - 5]), words([0.3, now - 5], [0.32, now + 5]), words([0.1, now - 5], [0.2, now + 5])],
    ["Not written down: rotor run-out.", "As built: rotor run-out 0.3 mm", "Before 0.3 mm, now 0.32 mm.", "Before 0.1 mm, now 0.2 mm: bent on the way. Do not ride it."]);
});
