import { equal, test } from "../../ui/testing.ts";
import type { Json } from "../../log/op/json.ts";
import type { RecordState } from "../../log/op/merge.ts";
import { assumedOf } from "./assumed.ts";
import { hex, merged, now, op } from "../value/kit.test.ts";
import { tellerOf } from "../value/record_words.ts";
import { foundIn, thingLines } from "./thing_list.ts";
import { tiesOf } from "./ties.ts";

const made = (name: string, kind: string, set: Record<string, Json>): RecordState => merged(op(hex(name), kind, set, { at: now }));
const tyre = made("1", "tyre", { label_mm: 45, measured_mm: 46.2, measured_at: now - 12 * 86_400_000 });
const front = made("2", "wheel", { tyre: tyre.rec, inner_mm: 25, rotor_mm: 160, setup: "tubeless" });
const spare = made("3", "wheel", { name: "Spare 24", inner_mm: 24, retired: true });
const rider = made("4", "person", { name: "Rüdi", mass_kg: 72 });
const bike = made("5", "bike", { name: "Ochre", number: "7", rider: rider.rec, front: front.rec, brake: "disc" });
const odd = made("6", "finding", { words: "a crack" });
const all = [odd, bike, rider, spare, front, tyre];
const teller = tellerOf({ states: all, unit: "bar", now, me: "", device: "" });
const lines = thingLines(all, teller);
const names = (query: string): readonly string[] => foundIn(lines, query).map(({ name }) => name);

test("things: a line tells where it belongs and what is known", () => {
  equal(lines.map(({ kind, name, facts }) => [kind, name, facts]), [
    ["bike", "Ochre", "number 7 · Rüdi · 45\u00a0mm tyre, measured 46.2\u00a0mm 12 days ago · disc brake"],
    ["wheel", "front of Ochre", "45\u00a0mm tyre · measured 46.2\u00a0mm 12 days ago · 25 mm inner · 160 mm rotor · tubeless"],
    ["wheel", "Spare 24", "24 mm inner"],
    ["tyre", "45 mm, front of Ochre", "45\u00a0mm tyre · measured 46.2\u00a0mm 12 days ago"],
    ["person", "Rüdi", "rider of Ochre · middle"],
  ]);
  equal(lines.filter((line) => line.retired).map(({ name }) => name), ["Spare 24"]);
});

test("search: by name, number, width and rotor, without accents, by the beginning of a number", () => {
  equal(names("rudi"), ["Ochre", "Rüdi"]);
  equal(names("ROTOR 160"), ["front of Ochre"]);
  equal(names("46,2 tyre"), ["Ochre", "front of Ochre", "45 mm, front of Ochre"]);
  equal(names("number 7"), ["Ochre"]);
  equal(names("wheel 24"), ["Spare 24"]);
  equal(names("5"), []); // 45 and 25 do not begin with it
  equal(names("  ").length, lines.length);
  equal(names("nothing of that"), []);
});

test("ties: what a thing holds, and what holds it", () => {
  equal(tiesOf(front, all, teller).map(({ rec, words }) => [rec, words]), [[tyre.rec, "Tyre: 45 mm"], [bike.rec, "Ochre: Front wheel"]]);
  equal(tiesOf(rider, all, teller).map(({ words }) => words), ["Ochre: Rider"]);
});

test("assumed: said where nobody has measured, and not where a rim edge forbids it", () => {
  const tables = { bounds: new Map(), usualInner: [{ up_to: 46, value: 23 }] };
  const of = (set: Record<string, Json>): readonly string[] => assumedOf(made("8", "wheel", { tyre: tyre.rec, ...set }), () => tyre, tables);
  equal(of({ profile: "hooked" }), ["Assumed 23 mm inner: measure or read the label."]);
  equal(of({ profile: "hooked", inner_mm: 25 }), []);
  equal(of({ profile: "hookless" }).length, 1);
  equal(of({}).length, 2);
  equal(of({ profile: "hookless" }).some((words) => /\d/.test(words)), false);
});
