import type { Json } from "../../log/op/json.ts";
import type { RecordState } from "../../log/op/merge.ts";
import { equal, test } from "../../ui/testing.ts";
import { hex, merged, now, op } from "../value/kit.test.ts";
import { buildOf } from "./build.ts";
import { isSpared, standsFor, trainersIn } from "./indoors.ts";

const made = (name: string, kind: string, set: Record<string, Json>): RecordState => merged(op(hex(name), kind, set, { at: now }));

// spared tells of both ends of a bike, the front first.
function spared(bike: Record<string, Json>, front: Record<string, Json>, rear: Record<string, Json>, ...loose: readonly Record<string, Json>[]): readonly boolean[] {
  const ends = [made("f", "wheel", front), made("r", "wheel", rear)] as const;
  const own = made("b", "bike", { front: ends[0].rec, rear: ends[1].rec, ...bike });
  const find = (rec: string): RecordState | undefined => ends.find((each) => each.rec === rec);
  const trainers = trainersIn([own], [...ends, ...loose.map((set, n) => made(`l${n}`, "wheel", set))]);
  const build = buildOf(own, find, trainers);
  const both = (["front", "rear"] as const).map((side) => isSpared(own, side, find, trainers));
  equal([build.front?.spared_indoors ?? false, build.rear?.spared_indoors ?? false], both); // the calculator hears the same
  return both;
}

const inside = { indoors: true };

test("indoors: sweat counts on what is marked, and on all of a bike while nothing is", () => {
  equal(spared({}, {}, {}), [false, false], "nothing marked");
  equal(spared(inside, {}, {}), [false, false], "the bike");
  equal(spared({}, inside, {}), [false, true], "its front wheel");
  equal(spared({}, inside, inside), [false, false], "both wheels");
  equal(spared({}, {}, {}, { side: "front", ...inside }), [true, false], "a loose front wheel");
  equal(spared({}, {}, {}, inside), [true, true], "a loose wheel of either end");
  equal(spared(inside, {}, {}, { side: "front", ...inside }), [false, false], "the bike and a loose wheel");
  equal(spared({}, {}, {}, { side: "front" }), [false, false], "a loose wheel that is not marked");
  equal(spared({}, {}, {}, { side: "front", retired: true, ...inside }), [false, false], "one out of use");
});

test("indoors: a marked wheel on another bike stands for nobody here", () => {
  const wheel = made("w", "wheel", inside);
  equal(trainersIn([made("o", "bike", { front: wheel.rec })], [wheel]), []);
  equal(standsFor(made("b", "bike", {}), "front", () => undefined, [wheel]).map(({ rec }) => rec), [wheel.rec]);
});
