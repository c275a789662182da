import { equal, test } from "../../ui/testing.ts";
import { hex, now, record } from "../value/kit.test.ts";
import { after, buildOf, changeOf, type Heard, knowsNewtons, lacingQuestion, lastSpokes, perSide, readHeard, readHz, readSpokesDraft, sideChange, withHeard } from "./spokes.ts";
import { spokesChanges } from "./spokes_save.ts";

const wheel = record("wheel", "wheel", { spokes: 28, free_left_mm: 280, spoke_mm: 2 });
const heard: readonly Heard[] = [{ side: "left", n: 1, hz: 350 }, { side: "left", n: 2, hz: null }, { side: "right", n: 1, hz: 300 }];

test("spokes: what is typed comes before what the wheel's record knows; a wrong number stands for nothing", () => {
  equal(buildOf({}, wheel).values, { count: 28, left: 280, mm: 2 });
  equal(buildOf({ count: "32", left: "27,5 cm", mm: "" }, wheel).values, { count: 32, left: 275 });
  const wrong = buildOf({ count: "27", left: "9", right: "long" }, wheel);
  equal([wrong.values, Object.keys(wrong.faults)], [{ mm: 2 }, ["count", "left", "right"]]);
  equal([perSide(buildOf({}, wheel)), knowsNewtons(buildOf({}, wheel)), knowsNewtons(buildOf({ mm: "" }, wheel))], [14, true, false]);
  equal(knowsNewtons(buildOf({}, record("wheel", "ti", { spokes: 28, free_left_mm: 280, spoke_mm: 2, spoke_material: "titanium" }))), false);
});

test("spokes: the question holds each with its side, a side that is not known as the other", () => {
  const side = { length_mm: 280, diameter_mm: 2 };
  equal(lacingQuestion(heard, buildOf({ most: "1200" }, wheel)), { spokes: [{ side: "left", hz: 350 }, { side: "left", hz: null }, { side: "right", hz: 300 }], left: side, right: side, most_n: 1200 });
  equal(lacingQuestion([], buildOf({}, wheel)), undefined);
});

test("spokes: on along the side, then the other, past what was heard; the last one stays", () => {
  equal([after({ side: "left", n: 1 }, [], 4), after({ side: "left", n: 4 }, [], 4), after({ side: "right", n: 4 }, [], 4)], [{ side: "left", n: 2 }, { side: "right", n: 1 }, { side: "left", n: 1 }]);
  const all = (["left", "right"] as const).flatMap((side) => [1, 2].map((n): Heard => ({ side, n, hz: 300 })));
  equal([after({ side: "left", n: 1 }, all.slice(0, 2), 2), after({ side: "right", n: 2 }, all, 2)], [{ side: "right", n: 1 }, { side: "right", n: 2 }]);
  equal(withHeard(heard, { side: "left", n: 1, hz: 340 }).map(({ hz }) => hz), [340, null, 300]);
});

test("spokes: a typed pitch is read with its unit; what is kept is read back, and nonsense left out", () => {
  equal([readHz("352,5 Hz"), readHz("352.5")], [352.5, 352.5]);
  equal(["9", "", "loud", "6000"].map((text) => typeof readHz(text)), ["object", "object", "object", "object"]);
  equal(readHeard([...heard, { side: "top", n: 1, hz: 3 }, { side: "left", n: 0, hz: 3 }, { side: "left", n: 3, hz: "x" }, 7, null]), heard);
  equal(readSpokesDraft({ texts: { count: "28", odd: 7 }, heard, at: { side: "right", n: 3 } }), { texts: { count: "28" }, heard, at: { side: "right", n: 3 } });
  for (const odd of [undefined, null, 7, []]) equal(readSpokesDraft(odd).heard, []);
});

test("spokes: tension goes with the square of the pitch, also between two days", () => {
  const before: readonly Heard[] = [{ side: "left", n: 1, hz: 350 }, { side: "right", n: 1, hz: 375 }];
  equal(heard.map((one) => changeOf(one, before)?.toFixed(4)), ["0.0000", undefined, "-0.3600"]); // (300/375)^2 = 0.64
  equal([sideChange("right", heard, before)?.toFixed(2), sideChange("left", heard, [])], ["-0.36", undefined]);
});

test("spokes: the newest measurement counts, none that was removed and none of another wheel", () => {
  const entry = (name: string, set: Record<string, string>): ReturnType<typeof record> => record("measure", name, { what: "spoke_tension", of: wheel.rec, day: "2026-07-01", spokes: heard.map((each) => ({ ...each })), ...set });
  const entries = [entry("a", {}), entry("b", { day: "2026-07-10" }), entry("c", { of: hex("other"), day: "2026-07-12" }), { ...entry("d", { day: "2026-07-13" }), deleted: true }];
  equal([lastSpokes(entries, wheel.rec)?.entry.rec, lastSpokes(entries, wheel.rec)?.heard, lastSpokes([], wheel.rec)], [hex("b"), heard, undefined]);
});

test("spokes: saving writes the entry, what the record did not know, and a finding for a slack one", () => {
  let drawn = 0;
  const newRec = (): string => hex(`new${++drawn}`);
  const changes = spokesChanges(heard, buildOf({ most: "1100" }, wheel), wheel, { wheel: wheel.rec, bike: hex("b"), side: "rear" }, now, newRec);
  equal(changes.map(({ kind }) => kind), ["measure", "wheel", "finding"]);
  const [entry, learnt, finding] = changes;
  equal([entry?.set["of"], entry?.set["what"], entry?.set["day"], entry?.set["bike"], entry?.set["side"]], [wheel.rec, "spoke_tension", "2026-07-14", hex("b"), "rear"]);
  equal([learnt?.set, learnt?.shown], [{ spoke_most_n: 1100 }, wheel]);
  equal([finding?.set["thing"], finding?.set["item"], finding?.set["severity"], finding?.set["words"], finding?.set["side"]], [wheel.rec, "rear_wheel.spokes", "stop", "Slack spoke, gives no note: left 2", undefined]);
  equal(spokesChanges(heard.slice(0, 1), buildOf({}, wheel), wheel, {}, now, newRec).map(({ kind }) => kind), ["measure"]);
});
