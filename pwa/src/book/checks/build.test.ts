import { equal, test } from "../../ui/testing.ts";
import type { Json } from "../../log/op/json.ts";
import type { RecordState } from "../../log/op/merge.ts";
import { buildOf, eventsOf } from "./build.ts";
import { dueReminders, intervalsOf, wayOf } from "./due_view.ts";
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
    front: { setup: "tubeless", rim_material: "carbon", nipple_material: "aluminium", brake: "disc", axle: "through_axle", rotor_min_mm: 1.5 },
    rear: { axle: "quick_release" }, brake: "disc",
  });
  equal(buildOf(undefined, find), {});
  equal(materialsOf(front), { rim: "carbon", nipple: "aluminium" });
});

test("events: sealant, rides, washes, walk-arounds, services and rotors of this bike, by day", () => {
  const states = [...all,
    made("1", "ride", { bike: bike.rec, day: "2026-06-01", kind: "indoor", hours: 1.5, sweat: "high" }), made("2", "ride", { bike: hex("other"), day: "2026-06-01", kind: "dry" }),
    made("3", "wash", { bike: bike.rec, day: "2026-06-03", kind: "wipe" }), made("4", "check", { bike: bike.rec, day: "2026-06-04", moment: "crash" }),
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

test("due: intervals keep what is valid, and say what is not", () => {
  equal(intervalsOf({ sealant_days: 45, pads_days: "x" }).intervals, { sealant_days: 45 });
  const typing = intervalsOf({ sealant_days: 45 }, { sealant_days: "0", bolts_days: "30" });
  equal([typing.intervals, typing.rows[0]?.fault], [{ sealant_days: 45, bolts_days: 30 }, "From 1 to 3650 days."]);
  equal(intervalsOf({ sealant_days: 45 }, { sealant_days: "" }).intervals, {});
});

test("due: reminders keep their ids; what is overdue rings today", () => {
  const line = { id: "wash", title: "Wash", due: "2026-07-01", overdue_days: 13, why: "w", source: "" };
  equal(dueReminders([line, { ...line, id: "pads_front", due: "2026-08-01" }], "b", "2026-07-14").map(({ uid, day }) => [uid, day]), [["wash.b@rimside", "2026-07-14"], ["pads_front.b@rimside", "2026-08-01"]]);
  equal([wayOf("walk_around", "b", {}), wayOf("rotor_rear", "b", { rear: "r" }), wayOf("wash", "b", {})], ["#/checks/walk/b/evening", "#/wheels/measure/r/rotor_thickness", ""]);
});

test("salt: a couple is told as a rank, not as a forecast", () => {
  equal(coupleWords({ where: "rim_nipple", anode: "aluminium", cathode: "carbon", gap_v: 1.3, over_v: 1.15 }), "Rim and nipples: aluminium against carbon, 1.30 V: a known way to fail: look closely, wash sooner");
  equal(coupleWords({ where: "spoke_hub", anode: "aluminium", cathode: "stainless", gap_v: 0.1, over_v: 0 }).endsWith("within the limit"), true);
});
