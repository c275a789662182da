import { equal, test } from "../../ui/testing.ts";
import type { Json } from "../../log/op/json.ts";
import type { RecordState } from "../../log/op/merge.ts";
import { buildOf } from "./build.ts";
import { type DueLine, dueReminders, dueSummary, dueView, dueWhy, intervalsOf, wayOf } from "./due_view.ts";
import { eventsOf } from "./past.ts";
import { dayWords } from "../value/when.ts";
import { hex, merged, now, op } from "../value/kit.test.ts";
import { coupleWords, logOf, materialsOf, saltLog } from "./salt_view.ts";

const made = (name: string, kind: string, set: Record<string, Json>): RecordState => merged(op(hex(name), kind, set, { at: now }));
const tyre = made("t", "tyre", { sealant_day: "2026-05-01" });
const front = made("f", "wheel", { tyre: tyre.rec, setup: "tubeless", rim_material: "carbon", nipple_material: "aluminium", axle_mm: 12, rotor_min_mm: 1.5, brake: "disc" });
const rear = made("r", "wheel", { axle_mm: 10 });
const bike = made("b", "bike", { front: front.rec, rear: rear.rec, brake: "disc" });
const all = [tyre, front, rear, bike];
const find = (rec: string): RecordState | undefined => all.find((each) => each.rec === rec);

test("build: what is known of a bike, and nothing that is not", () => {
  equal(buildOf(bike, find), {
    front: { setup: "tubeless", rim_material: "carbon", nipple_material: "aluminium", brake: "disc", wheel: front.rec, tyre: tyre.rec, axle: "through_axle", rotor_min_mm: 1.5 },
    rear: { wheel: rear.rec, axle: "quick_release" }, brake: "disc",
  });
  equal(buildOf(undefined, find), {});
  equal(materialsOf(front), { rim: "carbon", nipple: "aluminium" });
});

test("events: sealant, rides, washes, walk-arounds, services and rotors of this bike, by day", () => {
  const states = [...all,
    made("1", "ride", { bike: bike.rec, day: "2026-06-01", kind: "indoor", hours: 1.5, sweat: "high" }), made("2", "ride", { bike: hex("other"), day: "2026-06-01", kind: "dry" }),
    made("3", "wash", { bike: bike.rec, day: "2026-06-03", kind: "wipe" }), made("4", "check", { bike: bike.rec, day: "2026-06-04", moment: "crash", done: true }),
    made("5", "service", { bike: bike.rec, day: "2026-06-05", what: "pads_rear" }), made("6", "service", { bike: bike.rec, day: "2026-06-06", what: "something else" }),
    made("7", "measure", { of: front.rec, day: "2026-05-30", what: "rotor_thickness", mm: 1.7 }), made("8", "measure", { of: front.rec, day: "2026-05-30", what: "rim_runout", mm: 0.4 }),
    made("9", "service", { bike: bike.rec, day: "2026-06-07", what: "sealant_front" }),
  ];
  equal(eventsOf(states, bike.rec), [
    { kind: "sealant", day: "2026-05-01", side: "front" }, { kind: "rotor", day: "2026-05-30", side: "front", mm: 1.7 },
    { kind: "ride", day: "2026-06-01", conditions: "indoor", hours: 1.5, sweat: "high" }, { kind: "wipe", day: "2026-06-03" }, { kind: "check", day: "2026-06-04", moment: "crash" },
    { kind: "pads", day: "2026-06-05", side: "rear", new: true }, { kind: "sealant", day: "2026-06-07", side: "front" },
  ]);
  const log = saltLog(states.filter(({ kind }) => kind === "ride" || kind === "wash"), bike.rec);
  equal(log, [{ day: "2026-06-03", kind: "wipe" }, { day: "2026-06-01", kind: "indoor", hours: 1.5, sweat: "high" }]);
  equal(logOf([made("x", "ride", { bike: bike.rec })], bike.rec), []);
});

test("events: a fitted tyre's day, and its width's, go along with it", () => {
  const worn = made("t", "tyre", { fitted: "2026-06-01", measured_mm: 41, measured_at: new Date("2026-06-02T12:00").getTime() });
  equal(eventsOf([worn, front, bike], bike.rec), [{ kind: "fitted", day: "2026-06-01", side: "front" }, { kind: "width", day: "2026-06-02", side: "front" }]);
  equal(eventsOf([worn, bike], bike.rec), []); // a tyre that is on no wheel of this bike
});

test("due: intervals keep what is valid, and say what is not", () => {
  equal(intervalsOf({ sealant_days: 45, pads_days: "x" }).intervals, { sealant_days: 45 });
  const typing = intervalsOf({ sealant_days: 45 }, { sealant_days: "0", bolts_days: "30" });
  equal([typing.intervals, typing.rows[0]?.fault], [{ sealant_days: 45, bolts_days: 30 }, "From 1 to 3650 days."]);
  equal(intervalsOf({ sealant_days: 45 }, { sealant_days: "" }).intervals, {});
});

test("events: what a walk-around looked at or measured is looked at; journeys and crashes are told", () => {
  const items = [{ id: "front_wheel.sealant", state: "ok" }, { id: "rear_wheel.spokes", state: "skipped" }, { id: "rear_brake.pads", state: "found" }, { id: "bar.stem_bolts", state: "ok" }];
  const states = [bike, front, rear,
    made("1", "check", { bike: bike.rec, day: "2026-06-04", moment: "evening", done: true, items }), made("2", "check", { bike: bike.rec, day: "2026-06-05", moment: "crash", done: false }),
    made("3", "trip", { bikes: [bike.rec], from: "2026-06-06", to: "2026-06-09" }), made("4", "measure", { of: bike.rec, what: "pads", side: "rear", mm: 1.4, day: "2026-06-10" }),
    made("5", "service", { of: rear.rec, bike: hex("other"), day: "2026-06-11", what: "rotor_front" }), made("6", "service", { of: hex("elsewhere"), bike: bike.rec, day: "2026-06-12", what: "rotor_rear" }),
  ];
  equal(eventsOf(states, bike.rec), [
    { kind: "check", day: "2026-06-04", moment: "evening" }, { kind: "sealant", day: "2026-06-04", side: "front" }, { kind: "pads", day: "2026-06-04", side: "rear" }, { kind: "bolts", day: "2026-06-04" },
    { kind: "crash", day: "2026-06-05" }, { kind: "transport", day: "2026-06-06" }, { kind: "transport", day: "2026-06-09" }, { kind: "pads", day: "2026-06-10", side: "rear", mm: 1.4 },
    { kind: "rotor", day: "2026-06-11", side: "rear", new: true },
  ]);
});

const line: DueLine = { id: "wash", due: "2026-07-01", overdue_days: 13, why: { code: "every", values: { day: "2026-06-01", days: 30 } }, source: "ours" };
const never: DueLine = { id: "bolts", due: "2026-07-14", overdue_days: 0, why: { code: "never_noted", values: {} }, source: "ours" };

test("due: reminders keep their ids and name the bike; what is overdue rings today, what nobody noted once", () => {
  const made = dueReminders([line, { ...line, id: "pads_front", due: "2026-08-01" }, never, { ...never, id: "spokes_front" }], "b", "Ochre", now, "2026-07-14");
  equal(made.map(({ uid, day, title }) => [uid, day, title]), [
    ["wash.b@rimside", "2026-07-14", "Ochre: Wet wash"], ["pads_front.b@rimside", "2026-08-01", "Ochre: Disc pads, front"], ["never.b@rimside", "2026-07-14", "Ochre: 2 never noted"],
  ]);
  equal([wayOf("walk_around", "b", {}), wayOf("rotor_rear", "b", { rear: "r" }), wayOf("wash", "b", {}), wayOf("width_front", "b", {}, { front: "t" })], ["#/checks/walk/b/evening", "#/wheels/measure/r/rotor_thickness", "", "#/wheels/measure/t/width"]);
});

test("due: in a line, and the reason in a sentence", () => {
  equal(dueSummary(dueView([line, never])), "Wet wash: 13 days · 1 never noted");
  equal(dueSummary(dueView([])), "");
  equal(dueWhy(line, now), `Last looked at or done ${dayWords("2026-06-01", now)}; every 30 days.`);
  equal(dueWhy({ ...line, id: "rotor_rear", why: { code: "measured", values: { mm: 1.45, limit_mm: 1.5, day: "2026-07-01", severity: "stop" } } }, now), `Measured 1.45 mm ${dayWords("2026-07-01", now)}; under 1.5 mm nobody rides.`);
});

test("salt: a couple is told as a rank, not as a forecast", () => {
  const couple = { where: "rim_nipple", anode: "aluminium", cathode: "carbon", gap_v: 1.3, over_v: 1.15, rank: "strong" } as const;
  equal(coupleWords(couple), "Rim and nipples: aluminium against carbon, 1.30 V: a known way to fail: look closely, wash sooner");
  equal(coupleWords({ ...couple, where: "spoke_hub", cathode: "stainless", rank: "usual" }).endsWith("usual in good wheels: wash it, keep it greased"), true);
});
