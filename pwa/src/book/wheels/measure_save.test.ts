import { edit } from "../../log/op/change.ts";
import type { Json } from "../../log/op/json.ts";
import type { RecordState } from "../../log/op/merge.ts";
import { equal, test } from "../../ui/testing.ts";
import { at, hex, now, record } from "../value/kit.test.ts";
import type { What } from "./measure.ts";
import { readForm, type Typed } from "./measure_form.ts";
import { droppedChange, type Place, type Saving, savingOf } from "./measure_save.ts";

const tyre = record("tyre", "tyre", { measured_mm: 41, measured_at: at(8, 0, 30) });

function saving(what: What, typed: Typed, change: Partial<Place> = {}): Saving {
  const form = readForm(what, typed, { unit: "bar", now, fitted: undefined, min: "" });
  let drawn = 0;
  return savingOf(what, form, { state: tyre, entries: [], mounted: {}, gauge: "", now, ...change }, () => hex(`new${++drawn}`));
}

const sets = ({ changes }: Saving): readonly [string, Readonly<Record<string, Json>>][] => changes.map(({ kind, set }) => [kind, set]);

test("saving: the entry and the field it renews, as one; the edit replaces what was seen", () => {
  const mounted = { wheel: hex("w"), bike: hex("b"), side: "rear" } as const;
  const saved = saving("width", { place1: "41.5", kpa: "2.1", days: "3" }, { mounted });
  equal(sets(saved), [
    ["measure", { of: tyre.rec, what: "width", mm: 41.5, day: "2026-07-14", bike: hex("b"), wheel: hex("w"), side: "rear", kpa: 210, days_fitted: 3 }],
    ["tyre", { measured_mm: 41.5, measured_at: now }],
  ]);
  equal([saved.before, saved.older], [{ measured_mm: 41, measured_at: at(8, 0, 30) }, false]);
  const [, description] = saved.changes;
  equal(description && Object.keys(edit(description).bases), ["measured_mm", "measured_at"]);
});

test("saving: what was measured earlier than the value that stands renews nothing", () => {
  const old = saving("width", { place1: "41.5", day: "2026-06-01" });
  equal([old.changes.length, old.before, old.older], [1, {}, true]);
  const entries = [record("measure", "m", { of: hex("wheel"), what: "inner", mm: 23, day: "2026-07-10" })];
  const wheel = record("wheel", "wheel", { inner_mm: 23 });
  equal(saving("inner", { inner: "24", day: "2026-07-09" }, { state: wheel, entries }).changes.length, 1);
  equal(sets(saving("inner", { inner: "24", day: "2026-07-10" }, { state: wheel, entries }))[1], ["wheel", { inner_mm: 24 }]);
});

test("saving: two loads say how the weight falls; one alone does not", () => {
  const bike = record("bike", "bike", {});
  equal(sets(saving("load", { front: "38" }, { state: bike }))[1], ["bike", { front_load_kg: 38 }]);
  equal(sets(saving("load", { front: "38", rear: "47" }, { state: bike }))[2], ["bike", { front_load_kg: 38, rear_load_kg: 47, weigh: "scale" }]);
  const half = record("bike", "bike", { rear_load_kg: 47 });
  const saved = saving("load", { front: "38" }, { state: half });
  equal([sets(saved)[1], saved.before], [["bike", { front_load_kg: 38, weigh: "scale" }], { front_load_kg: null, weigh: null }]);
});

test("saving: each thing renews its own field", () => {
  const of = (kind: string): Partial<Place> => ({ state: record(kind, kind, {}) });
  const renewed = (what: What, typed: Typed, kind: string): unknown => sets(saving(what, typed, of(kind))).find(([each]) => each === kind)?.[1];
  equal(renewed("sealant", { ml: "60", day: "2026-07-13" }, "tyre"), { sealant_ml: 60, sealant_day: "2026-07-13" });
  equal(renewed("rotor_thickness", { thickness: "1.62", min: "1.5" }, "wheel"), { rotor_thickness_mm: 1.62, rotor_min_mm: 1.5 });
  equal(renewed("room", { front: "52", rear: "50" }, "bike"), { room_front_mm: 52, room_rear_mm: 50 });
  equal(renewed("gauge_error", { mine: "2.1", theirs: "2" }, "gauge"), { error_kpa: 10 });
  for (const what of ["rotor_runout", "rim_runout"] as const) equal(renewed(what, { runout: "0.1" }, "wheel"), undefined, what);
});

test("saving: the other gauge and a place's name stand in the entry", () => {
  equal(sets(saving("gauge_error", { mine: "2.1", theirs: "2" }, { state: record("gauge", "g", {}), gauge: hex("other") }))[0]?.[1],
    { of: hex("g"), what: "gauge_error", kpa: 10, day: "2026-07-14", gauge: hex("other") });
  equal(sets(saving("as_built", { stack: "15" }, { state: record("bike", "b", {}), mounted: { bike: hex("b") } })), [
    ["measure", { of: hex("b"), what: "as_built", mm: 15, day: "2026-07-14", bike: hex("b"), place: "stack" }],
  ]);
});

test("taking away: the next newest value counts, where the record said the one that goes", () => {
  const width = (name: string, mm: number, day: string): RecordState => record("measure", name, { of: tyre.rec, what: "width", mm, day });
  const [old, last] = [width("a", 40, "2026-06-01"), width("b", 41, "2026-06-20")] as const;
  const dropped = (entry: RecordState, entries: readonly RecordState[]): unknown => droppedChange(entry, entries, tyre, now)?.set;
  equal(dropped(last, [old, last]), { measured_mm: 40, measured_at: new Date("2026-06-01T12:00:00").getTime() });
  equal([dropped(last, [last]), dropped(old, [old, last])], [{ measured_mm: null, measured_at: null }, undefined]);
  const bike = record("bike", "bike", { rear_load_kg: 47, front_load_kg: 38 });
  const load = (name: string, side: string, kg: number): RecordState => record("measure", name, { of: bike.rec, what: "load", side, kg, day: "2026-06-01" });
  const rear = load("r", "rear", 47);
  equal(droppedChange(rear, [load("f", "front", 38), rear, load("s", "rear", 46)], bike, now)?.set, { rear_load_kg: 46 });
  equal(droppedChange(record("measure", "x", { of: hex("w"), what: "rim_runout", mm: 1 }), [], record("wheel", "w", {}), now), undefined);
});
