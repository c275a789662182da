import { equal, test } from "../../ui/testing.ts";
import type { Json } from "../../log/op/json.ts";
import { type RecordState, valueOf } from "../../log/op/merge.ts";
import { copyOf } from "./copy_thing.ts";
import { hex, merged, now, op } from "../value/kit.test.ts";
import { newChanges } from "./new_thing.ts";
import { doublesIn, keptChanges, slotsOf, swapChanges, undoneChanges } from "./swap.ts";

const made = (name: string, kind: string, set: Record<string, Json>): RecordState => merged(op(hex(name), kind, set, { at: now }));
const [a, b, c] = [hex("a1"), hex("b1"), hex("c1")];
const one = made("1", "bike", { name: "One", front: a, rear: b });
const two = made("2", "bike", { name: "Two", front: c });
const bikes = [one, two];
const sets = (changes: readonly { rec: string; set: object }[]): unknown => changes.map(({ rec, set }) => [rec, set]);

test("swap: a wheel from another bike changes places with the one that was there", () => {
  equal(sets(swapChanges(bikes, one, "front", c)), [[one.rec, { front: c }], [two.rec, { front: a }]]);
  equal(sets(swapChanges(bikes, two, "rear", b)), [[two.rec, { rear: b }], [one.rec, { rear: null }]]);
  equal(sets(swapChanges(bikes, one, "front", b)), [[one.rec, { front: b, rear: a }]]);
  equal(sets(swapChanges(bikes, one, "front", hex("d1"))), [[one.rec, { front: hex("d1") }]]);
  equal(sets(swapChanges(bikes, one, "front", "")), [[one.rec, { front: null }]]);
  equal(swapChanges(bikes, one, "front", a), []);
  equal(swapChanges(bikes, two, "rear", ""), []);
});

test("swap: taken back, all is as before", () => {
  const changes = swapChanges(bikes, one, "front", c);
  equal(sets(undoneChanges(changes, [one, two])), [[one.rec, { front: a }], [two.rec, { front: c }]]);
});

test("swap: a wheel on two bikes is found, and stays where it is said to be", () => {
  const three = made("3", "bike", { rear: a });
  equal(doublesIn(bikes), []);
  const [double, ...more] = doublesIn([...bikes, three]);
  equal([double?.wheel, double?.slots.map(({ bike, side }) => [bike.rec, side]), more], [a, [[one.rec, "front"], [three.rec, "rear"]], []]);
  const [first, second] = slotsOf([...bikes, three], a);
  if (double === undefined || first === undefined || second === undefined) throw new Error("no double");
  equal(sets(keptChanges(double, first)), [[three.rec, { rear: null }]]);
  equal(sets(keptChanges(double, second)), [[one.rec, { front: null }]]);
});

test("the same again: parts are copied, what was measured is not", () => {
  const tyre = made("7", "tyre", { label_mm: 45, measured_mm: 46.2, measured_at: 5, fitted: "2026-01-01" });
  const wheel = made("8", "wheel", { name: "Spare", tyre: tyre.rec, inner_mm: 25, rotor_thickness_mm: 1.7, retired: true });
  const bike = made("9", "bike", { name: "One", number: "41", rider: hex("f1"), front: wheel.rec, rear: hex("gone") });
  const all = [tyre, wheel, bike];
  let n = 0;
  const copy = copyOf(bike, (rec) => all.find((each) => each.rec === rec), () => `new${++n}`);
  equal(copy.rec, "new1");
  equal(copy.changes, [
    { rec: "new1", kind: "bike", set: { name: "One, again", front: "new2" } },
    { rec: "new2", kind: "wheel", set: { name: "Spare", tyre: "new3", inner_mm: 25 } },
    { rec: "new3", kind: "tyre", set: { label_mm: 45 } },
  ]);
});

test("the same again: a wheel that says it is its own tyre is copied once", () => {
  const odd = made("6", "wheel", { name: "Odd", tyre: hex("6") });
  equal(copyOf(odd, () => odd, () => "new").changes, [{ rec: "new", kind: "wheel", set: { name: "Odd, again" } }]);
});

test("a new bike comes with two wheels and their tyres; nothing unasked is made up", () => {
  let n = 0;
  const values = new Map<string, Json>([["bike.name", "One"], ["bike.number", null], ["tyre.label_mm", 45], ["wheel.setup", "tubeless"], ["bike.brake", "disc"]]);
  const { rec, changes } = newChanges("bike", values, () => `r${++n}`);
  const of = (name: unknown): Record<string, Json> => ({ ...changes.find((each) => each.rec === name)?.set });
  const bike = of(rec);
  equal([bike["name"], bike["brake"], Object.keys(bike).sort()], ["One", "disc", ["brake", "front", "name", "rear"]]);
  equal(["front", "rear"].map((side) => ({ ...of(bike[side]), tyre: "" })), [{ setup: "tubeless", brake: "disc", side: "front", tyre: "" }, { setup: "tubeless", brake: "disc", side: "rear", tyre: "" }]);
  equal(of(of(bike["front"])["tyre"]), { label_mm: 45 });
  equal([changes.length, new Set(changes.map((each) => each.rec)).size], [5, 5]);
  equal(newChanges("wheel", new Map<string, Json>([["wheel.name", "W"], ["tyre.label_mm", null]]), () => "w").changes, [{ rec: "w", kind: "wheel", set: { name: "W" } }]);
  equal(valueOf(one, "front"), a);
});
