import { equal, test } from "../../ui/testing.ts";
import { emptyDraft, type PressureDraft, readDraft } from "./draft.ts";
import { restated } from "./restate.ts";
import { read } from "./request.ts";
import type { Tables } from "./tables.ts";

const tables: Tables = {
  bounds: new Map([["rider_kg", { min: 15, max: 250 }], ["front.tyre.label_mm", { min: 18, max: 132 }], ["ground.*.kmh", { min: 2, max: 80 }]]),
  usualInner: [{ up_to: 34, value: 21 }, { up_to: 46, value: 23 }],
};

const draft = (texts: Record<string, string>, more: Partial<PressureDraft> = {}): PressureDraft =>
  ({ ...emptyDraft, picks: { "front.profile": "hooked" }, texts: { rider: "72", "front.label": "40", ...texts }, ...more });

const faults = (d: PressureDraft): unknown => [...read(d, "bar", tables).faults].map(([id, fault]) => `${id} ${fault.why}`);

test("six answers are enough on a hooked rim, and what is assumed is said", () => {
  const reading = read(draft({}), "bar", tables);
  equal([...reading.faults], []);
  equal([...reading.assumed].sort(), ["bike", "inner.front", "km", "setup", "sidewall", "weather"]);
  equal(JSON.stringify(reading.body).includes('"inner_mm":23'), true);
});

test("a straight or unknown edge needs the inner width", () => {
  for (const profile of ["hookless", "unknown", ""]) {
    equal(faults(draft({}, { picks: { "front.profile": profile } })), ["front.inner measure"]);
  }
});

test("what is wrong is named at its field", () => {
  equal(faults(draft({ rider: "" })), ["rider missing"]);
  equal(faults(draft({ rider: "abc" })), ["rider number"]);
  equal(faults(draft({ rider: "7000" })), ["rider bounds"]);
  equal(faults(draft({ rider: "-72" })), ["rider bounds"]);
  equal(faults(draft({ rider: "72 mm" })), ["rider unit"]);
  equal(faults(draft({ rider: "1,000.5" })), ["rider separator"]);
  equal(faults(draft({ rider: "158,7 lb" })), []);
});

test("bare pressures are in the person's unit, others in the unit typed", () => {
  const body = (unit: "bar" | "psi"): string => JSON.stringify(read(draft({ "front.tyreMax": "5", "now.front": "32 psi" }), unit, tables).body);
  equal(/"max_kpa":500[,}]/.test(body("bar")), true);
  equal(/"max_kpa":34\.47/.test(body("psi")), true);
  equal(/"front_gauge_kpa":220\.63/.test(body("bar")), true);
});

test("a change of unit keeps what was meant, and leaves alone what cannot be read", () => {
  const before = draft({ "front.tyreMax": "5", "now.front": "about 2" });
  const after = restated(before, "psi");
  equal([after.texts["front.tyreMax"], after.texts["now.front"], after.unit], ["72.5", "about 2", "psi"]);
  equal(restated(after, "psi") === after, true);
});

test("every stretch but a lone one needs its length", () => {
  const stretch = (id: string, km: string): PressureDraft["ground"][number] => ({ id, kind: "pea", km, kmh: "", gd0: "", washboard: false });
  equal(faults(draft({}, { ground: [stretch("a", "")] })), []);
  equal(faults(draft({}, { ground: [stretch("a", "12"), stretch("b", "")] })), ["ground.b.km missing"]);
  equal(faults(draft({}, { ground: [{ ...stretch("a", ""), kind: "typed" }] })), ["ground.a.gd0 missing", "ground.a.kmh missing"]);
});

test("a draft of any age or damage can be read", () => {
  for (const stored of [undefined, null, 3, "x", [], {}, { ground: [{}], texts: { rider: 3 }, firmness: 9, picks: null }]) {
    const d = readDraft(stored);
    equal(d.ground.length > 0 && Math.abs(d.firmness) <= 2, true);
  }
});
