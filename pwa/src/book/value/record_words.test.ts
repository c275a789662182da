import { equal, test } from "../../ui/testing.ts";
import type { Json } from "../../log/op/json.ts";
import type { Entry } from "../../words/entry.ts";
import { catalogue } from "../../words/locale.ts";
import { ana, anaPhone, at, benPhone, byBen, hex, merged, now, op, record, told } from "./kit.test.ts";
import { fieldWords, kindWords, optionWords } from "./kind_words.ts";
import { kinds } from "./kinds.ts";
import { describeRecord, phoneWords, whoWords } from "./record_words.ts";
import { knowsUnit, valueWords } from "./value_words.ts";
import { clockWords, dayWords, whenWords } from "./when.ts";

test("record words: every kind, field, option and unit has words of its own", () => {
  const words: Readonly<Record<string, Entry>> = catalogue();
  const missing: string[] = [];
  for (const [kind, { fields }] of Object.entries(kinds)) {
    if (words[`recKind.${kind}`] !== kindWords(kind)) missing.push(kind);
    for (const [field, spec] of Object.entries(fields)) {
      if (fieldWords(kind, field) === field) missing.push(`${kind}.${field}`);
      for (const option of spec.options ?? []) if ((words[`recOption.${field}.${option}`] ?? words[`recOption.${option}`]) === undefined) missing.push(`${kind}.${field} ${option}`);
      if ((spec.type === "number" || spec.type === "time") && spec.unit !== "ms" && !knowsUnit(spec.unit ?? "?")) missing.push(`${kind}.${field} ${spec.unit}`);
    }
  }
  equal([missing, Object.keys(kinds).length >= 28], [[], true]);
});

test("record words: no words are left for what no longer exists", () => {
  const fields = new Set(Object.entries(kinds).flatMap(([kind, each]) => Object.keys(each.fields).flatMap((field) => [field, `${kind}.${field}`])));
  const options = new Set(Object.values(kinds).flatMap((each) => Object.entries(each.fields).flatMap(([field, { options = [] }]) => options.flatMap((option) => [option, `${field}.${option}`]))));
  const left = Object.keys(catalogue()).filter((key) => {
    const [, family, name = ""] = /^(recKind|recField|recOption)\.(.*)$/.exec(key) ?? [];
    if (family === "recKind") return name !== "other" && !Object.hasOwn(kinds, name);
    if (family === "recField") return name !== "deleted" && !fields.has(name);
    return family === "recOption" && !options.has(name);
  });
  equal(left, []);
});

test("record words: what only a newer app knows is named as it stands", () => {
  equal([kindWords("lamp"), fieldWords("lamp", "glow"), optionWords("brake", "magnet")], ["Something newer (lamp)", "glow", "magnet"]);
  equal([kindWords("constructor"), fieldWords("tyre", "__proto__")], ["Something newer (constructor)", "__proto__"]);
  equal([kindWords("other"), fieldWords("tyre", "")], ["Something newer (other)", ""]);
});

const value = (kind: string, field: string, of: Json, device = ""): string => valueWords({ rec: hex("x"), kind, field, value: of, device }, told());

test("values: numbers with their units, pressures in the person's", () => {
  equal(value("tyre", "measured_mm", 41.5), "41.5 mm");
  equal(value("tyre", "max_kpa", 500), "5.00 bar");
  equal(valueWords({ rec: "", kind: "tyre", field: "max_kpa", value: 500 }, told([], { unit: "psi" })), "72.5 psi");
  equal(value("bike", "front_share", 0.42), "42 %");
  equal(value("note", "shift", -0.05), "-5 %");
  equal([value("bike", "firmness", -1), value("bike", "firmness", 0)], ["1 step softer", "as computed"]);
  equal([value("pressure_set", "c", -4), value("pressure_set", "m", 1100), value("ride", "hours", 2.5)], ["-4 °C", "1100 m", "2.5 h"]);
  equal([value("finding", "clock", 3), value("measure", "degrees", 12), value("wheel", "spokes", 24)], ["at 3 o’clock", "12°", "24"]);
});

test("values: choices, flags, days, moments, nothing", () => {
  equal([value("wheel", "setup", "insert"), value("note", "felt", "right"), value("finding", "side", "right")], ["tubeless with insert", "about right", "right"]);
  equal([value("bike", "retired", true), value("bike", "retired", false)], ["yes", "no"]);
  equal([value("tyre", "fitted", "2026-03-09"), value("tyre", "fitted", "2024-03-09"), value("tyre", "fitted", "soon")], ["Mar 9", "Mar 9, 2024", "soon"]);
  equal([value("tyre", "note", null), value("tyre", "note", "")], ["nothing", "nothing"]);
  equal(value("event", "start", at(10, 2)).endsWith("today"), true);
  equal(value("photo", "sha256", "0".repeat(64)), "a picture");
});

test("values: what does not fit its field, or is not known, stands as it is", () => {
  equal([value("tyre", "measured_mm", "41,5"), value("tyre", "measured_mm", [1]), value("bike", "retired", "maybe")], ["41,5", "[1]", "maybe"]);
  equal([value("lamp", "glow", { a: 1 }), value("lamp", "glow", 0.25), value("tyre", "toString", 1)], ['{"a":1}', "0.25", "1"]);
  equal(value("tyre", "note", "x".repeat(500)), `${"x".repeat(160)}…`);
  equal(value("ground", "stretches", [{ kind: "pea" }]), '[{"kind":"pea"}]');
});

test("values: references by the name of what they point to", () => {
  const bike = record("bike", "gravel", { name: "Gravel bike" });
  const states = [bike, record("tyre", "ochre", { label_mm: 40 })];
  const teller = told(states);
  const words = (field: string, to: Json): string => valueWords({ rec: "", kind: "bike", field, value: to }, teller);
  equal([words("rider", ana.rec), words("front", hex("gone"))], ["Ana", "something not on this phone yet"]);
  equal(valueWords({ rec: "", kind: "trip", field: "bikes", value: [bike.rec, hex("gone")] }, teller), "Gravel bike, something not on this phone yet");
  equal(valueWords({ rec: "", kind: "wheel", field: "tyre", value: hex("ochre") }, teller), "40 mm");
});

test("values: what a person weighs is told in full on their own phone and where it was typed", () => {
  const weight = (kg: number, device: string, me = ""): string =>
    valueWords({ rec: ana.rec, kind: "person", field: "mass_kg", value: kg, device }, told([], { me }));
  equal([weight(61, benPhone), weight(72, benPhone), weight(92, benPhone)], ["light", "middle", "heavy"]);
  equal([weight(61, anaPhone), weight(61, benPhone, ana.rec), weight(61, "")], ["61 kg", "61 kg", "light"]);
  equal(valueWords({ rec: ana.rec, kind: "person", field: "mass_kg", value: "61", device: benPhone }, told()), "not shown here");
});

test("describe: kind and name, and where parts without a name belong", () => {
  const bike = record("bike", "gravel", { name: "Gravel bike", front: hex("w1"), rear: hex("w2"), rider: hex("nobody"), gauge: hex("g") });
  const front = record("wheel", "w1", { tyre: hex("t1") });
  const tyre = record("tyre", "t1", { label_mm: 40 });
  const named = record("tyre", "t2", { name: "Ochre 40s", label_mm: 40 });
  const rider = record("person", "nobody", { mass_kg: 70 });
  const gauge = record("gauge", "g", {});
  const teller = told([bike, front, tyre, named, rider, gauge]);
  equal([bike, front, tyre, named, rider, gauge].map((each) => describeRecord(each, teller)), [
    "Bike · Gravel bike", "Wheel · front of Gravel bike", "Tyre · 40 mm, front of Gravel bike", "Tyre · Ochre 40s",
    "Person · rider of Gravel bike", "Gauge · of Gravel bike",
  ]);
  const set = record("pressure_set", "p", { bike: bike.rec, side: "rear", day: "2026-07-13", kpa: 210 });
  equal(describeRecord(set, teller), "Pressure set · Gravel bike, rear, Jul 13");
});

test("describe: without a name, erased, of a newer kind, or going round in a circle", () => {
  const empty = record("bike", "b", {});
  const erased = merged(op(hex("e"), "tyre", { name: "x" }), op(hex("e"), "erase", { kind: "tyre" }));
  const lamp = record("lamp", "l", { name: "Head lamp", glow: 3 });
  equal([empty, erased, lamp].map((each) => describeRecord(each, told())), ["Bike without a name", "Tyre · erased", "Something newer (lamp) · Head lamp"]);
  const circle = [record("photo", "p1", { of: hex("p2") }), record("photo", "p2", { of: hex("p1") })];
  const self = record("bike", "self", { front: hex("self") });
  equal(describeRecord(circle[0] ?? empty, told(circle)), "Photo · Photo");
  equal(describeRecord(self, told([self])).startsWith("Bike"), true);
});

test("who: the person, else the phone, else somebody", () => {
  equal([whoWords(byBen, told()), whoWords({ author: "", device: anaPhone }, told())], ["Ben", "this phone"]);
  equal([whoWords({ author: "", device: benPhone }, told()), whoWords({ author: hex("x"), device: "" }, told([], { device: "" }))], ["somebody", "somebody"]);
  equal(whoWords({ author: "", device: anaPhone }, told([], { device: benPhone })), "Ana’s phone");
  equal([phoneWords(anaPhone, told()), phoneWords(benPhone, told()), phoneWords("", told())], ["this phone (Ana’s phone)", "another phone", "another phone"]);
});

test("when: today, yesterday and other days, as the calendar says", () => {
  const plain = (words: string): string => words.replace(/\s/g, " ");
  equal(plain(whenWords(at(10, 2), now)), "10:02 AM today");
  equal(plain(whenWords(at(23, 59, 1), now)), "11:59 PM yesterday");
  equal(plain(whenWords(at(10, 2, 2), now)), "Jul 12, 10:02 AM");
  equal(plain(whenWords(at(10, 2, -1), now)), "Jul 15, 10:02 AM");
  equal(plain(whenWords(new Date(2030, 0, 5, 10, 2).getTime(), now)), "Jan 5, 2030, 10:02 AM");
  equal([plain(clockWords(at(10, 2), now)), plain(clockWords(at(10, 2, 1), now))], ["10:02 AM", "10:02 AM yesterday"]);
  equal([dayWords("2026-07-14", now), dayWords("x", now)], ["Jul 14", "x"]);
});
