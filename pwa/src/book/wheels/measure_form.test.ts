import { equal, test } from "../../ui/testing.ts";
import { now } from "../value/kit.test.ts";
import type { What } from "./measure.ts";
import { type Form, type Known, readForm, type Typed, typedFrom, unitOf } from "./measure_form.ts";
import { slotRange, slotsOf, slotUnit } from "./measure_slots.ts";

const known: Known = { unit: "bar", now, fitted: undefined, min: "" };
const form = (what: What, typed: Typed, change: Partial<Known> = {}): Form => readForm(what, typed, { ...known, ...change });

test("form: the mean of three places counts, in whatever unit they were typed", () => {
  const three = form("width", { place1: "41.2", place2: "41,5", place3: "4.16 cm", kpa: "2,1" });
  equal([three.results, three.kpa, three.says, three.missing], [[{ field: "mm", value: 41.43 }], 210, "The mean of the three counts: 41.43 mm.", ""]);
  equal(form("width", { place1: "1.62 in" }).results, [{ field: "mm", value: 41.15 }]);
  equal(form("width", { place1: "41.15" }).says, "So far 41.15 mm. Three places are surer.");
  equal(form("width", { place1: "41", place2: "41", place3: "42.5" }).says, "The mean of the three counts: 41.5 mm. The places differ by 1.5 mm: look whether the tyre sits evenly all round.");
  equal(form("width", { kpa: "30" }, { unit: "psi" }).kpa?.toFixed(3), "206.843");
});

test("form: days since fitting are counted from the tyre's day until somebody types others", () => {
  const fitted = { fitted: "2026-07-11" };
  equal([form("width", {}, fitted).days, form("width", { days: "9" }, fitted).days, form("width", { days: "" }, fitted).days], [3, 9, undefined]);
  equal([form("width", { day: "2026-07-12" }, fitted).texts["days"], form("width", { day: "2026-07-01" }, fitted).texts["days"]], ["1", ""]);
});

test("form: a wrong value names its bound, and nothing can be saved", () => {
  const wrong = form("width", { place1: "4", place2: "wide", place3: "41 kg" });
  equal(wrong.faults, { place1: "From 15 to 150 mm.", place2: "That is not a number. Type digits, such as 49.", place3: "That unit does not fit here. Use mm." });
  equal([wrong.missing, wrong.texts["place2"]], ["place1", "wide"]);
  equal(form("rotor_runout", { runout: "21" }).faults, { runout: "From 0 to 20 mm." });
  equal([form("inner", {}).missing, form("gauge_error", { mine: "2" }).missing], ["inner", "theirs"]);
});

test("form: a day that lies ahead or is none is refused", () => {
  equal([form("sealant", { ml: "60", day: "2026-07-15" }).missing, form("sealant", { ml: "60", day: "" }).missing, form("sealant", { ml: "60", day: "2026-07-14" }).missing], ["day", "day", ""]);
});

test("form: two gauges", () => {
  const two = form("gauge_error", { mine: "2.05", theirs: "2.1" });
  equal([two.results, two.says], [[{ field: "kpa", value: -5 }], "Yours reads 0.05 bar too low."]);
  const broken = form("gauge_error", { mine: "4.5", theirs: "2.0" });
  equal([broken.results, broken.missing], [[], "theirs"]);
});

test("form: each filled field is a value of its own; the others stay as they were", () => {
  equal(form("load", { front: "38", rear: "47 kg" }).says, "Together 85 kg, 45 % of it on the front wheel.");
  equal(form("room", { rear: "52" }).results, [{ field: "mm", value: 52, side: "rear" }]);
  const built = form("as_built", { saddle: "745", bar: "-3°", other: "98", place: " lever to bar end " });
  equal(built.results, [{ field: "mm", value: 745, place: "saddle_height" }, { field: "degrees", value: -3, place: "bar_angle" }, { field: "mm", value: 98, place: "lever to bar end" }]);
  equal(form("as_built", { other: "98" }).missing, "place");
  equal(form("as_built", { bar: "3 mm" }).missing, "bar");
  equal(form("as_built", { other: "9", place: "x".repeat(61) }).missing, "place");
  equal(form("rim_runout", { runout: "0.4" }).results, [{ field: "mm", value: 0.4, place: "sideways" }]);
  equal(form("rim_runout", { runout: "0,4", way: "radial" }).results, [{ field: "mm", value: 0.4, place: "radial" }]);
});

test("form: what was kept is taken from whatever version, in its own unit", () => {
  equal([typedFrom({ place1: "41", day: 7, other: null }), typedFrom("text"), typedFrom(undefined)], [{ place1: "41" }, {}, {}]);
  equal([unitOf({ unit: "psi" }, "bar"), unitOf({}, "bar"), unitOf({ unit: "furlong" }, "kpa")], ["psi", "bar", "kpa"]);
});

test("form: every field says its unit and its bounds", () => {
  const whats: readonly What[] = ["width", "sealant", "inner", "rotor_thickness", "rotor_runout", "rim_runout", "load", "room", "as_built", "gauge_error"];
  for (const what of whats) for (const slot of slotsOf(what)) equal([slotUnit(slot, "psi") === "", slotRange(slot, "psi") === ""], [false, false], `${what} ${slot.id}`);
});

test("measure: what a gauge reads is never below zero, though its error may be", () => {
  const ranges = (["width", "gauge_error"] as const).flatMap((what) => slotsOf(what).filter(({ field }) => field === "kpa").map((slot) => slotRange(slot, "bar")));
  equal(ranges, ["0 to 15 bar", "0 to 15 bar", "0 to 15 bar"]);
});
