import { equal, test } from "../../ui/testing.ts";
import type { Json } from "../../log/op/json.ts";
import type { RecordState } from "../../log/op/merge.ts";
import { hex, merged, now, op } from "../value/kit.test.ts";
import { progressOf, type Step, stepViews, ticksOf, tripReminders } from "./pack_view.ts";
import { builtWords } from "./as_built.ts";
import { bikesOf, daysUntil, goodsAsked, goodsOf, itemsOf, timeLeft, totalsOf, tripsByDay, wayOf, withItems } from "./trip.ts";

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
  const goods = [{ id: "cartridge", count: 2, grams: 16 }];
  const trip = made("t", "trip", { items: withItems(items, goods), bikes: [hex("b"), 7], way: "train", limit_kg: 13, limit_cm: 203 });
  equal([itemsOf(trip), goodsOf(trip), bikesOf(trip), wayOf(trip)], [items, goods, [hex("b")], "train"]);
  equal(totalsOf(trip), { kg: 13.1, cm: 203, overKg: true, overCm: false });
  const odd = made("o", "trip", { items: [7, "x", { name: 3 }, { good: 4 }], bikes: "all", way: "rocket" });
  equal([itemsOf(odd), goodsOf(odd), bikesOf(odd), wayOf(odd), totalsOf(odd)], [[], [], [], "air_bag", { kg: 0, cm: 0, overKg: false, overCm: false }]);
});

const step = (id: string, needs: readonly string[] = [], must = false): Step => ({ id, stage: "s", text: `do ${id}`, tool: "", needs, must });
const steps = [step("as_built"), step("wheel_out", ["as_built"]), step("rotor_on", ["wheel_out"], true)];

test("ticks: the newest of each step counts, whoever set it; two people tick one list", () => {
  const tick = (name: string, of: string, ticked: boolean, at: number, bike = "b"): RecordState => made(name, "pack_tick", { trip: "t", bike, step: of, ticked }, at);
  const ticks = ticksOf([tick("1", "as_built", true, 10), tick("2", "as_built", false, 20), tick("3", "wheel_out", false, 5), tick("4", "wheel_out", true, 6), tick("5", "as_built", true, 30, "other"), made("6", "pack_tick", { trip: "else", bike: "b", step: "rotor_on", ticked: true })], "t");
  const views = stepViews(steps, "b", ticks);
  equal(views.map(({ ticked, waits }) => [ticked, waits]), [[false, ""], [true, "do as_built"], [false, ""]]);
  equal(progressOf(views), { done: 1, of: 3, mustOpen: ["do rotor_on"] });
  equal(progressOf(stepViews(steps, "b", new Map([["b rotor_on", true]]))).mustOpen, []);
});

test("pack: what only a newer app knows is kept in the list and not asked about", () => {
  const goods = [{ id: "cartridge", count: 2, grams: 16, colour: "red" }, { id: "jet pack", count: 1 }];
  equal([goodsAsked(goods), goodsAsked([])], [[{ id: "cartridge", count: 2, grams: 16 }], []]);
});

test("trip: reminders keep their ids when the days change", () => {
  const at = (from: string, to = ""): readonly string[] => tripReminders(made("t", "trip", { name: "Island", from, to }), true).map(({ uid, day }) => `${uid.split(".")[0]} ${day}`);
  equal(at("2026-08-01", "2026-08-09"), ["rotors-off 2026-08-01", "batteries 2026-08-01", "arrival 2026-08-01", "rotors-on 2026-08-01", "rotors-off-back 2026-08-09", "home 2026-08-09"]);
  equal(tripReminders(made("t", "trip", { from: "2026-08-01" }), false).map(({ uid }) => uid.split(".")[0]), ["batteries", "arrival"]);
  equal([at(""), at("never")], [[], []]);
});

test("as built: what was written down stands at its step", () => {
  const measure = (name: string, of: string, what: string, place: string, field: string, value: number): RecordState =>
    made(name, "measure", { of, what, place, [field]: value, day: "2026-07-14" });
  const measures = [measure("1", "b", "as_built", "saddle_height", "mm", 742), measure("2", "b", "as_built", "bar_angle", "degrees", 3), measure("3", "w", "rotor_runout", "", "mm", 0.15)];
  const of = (...as_built: string[]): string => builtWords({ ...step("x"), as_built }, measures, "b", ["w", "v"]);
  equal([of("saddle_height"), of("bar_angle", "photos"), of("rotor_runout"), of("reach"), of()],
    ["As built: saddle height 742 mm", "As built: bar angle 3 °", "As built: rotor run-out 0.15 mm", "", ""]);
});
