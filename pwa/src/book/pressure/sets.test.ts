import { merge, type RecordState } from "../../log/op/merge.ts";
import type { Op } from "../../log/op/op.ts";
import { equal, test } from "../../ui/testing.ts";
import { w } from "../../words/index.ts";
import { type PressureAnswer, sides, type WheelAnswer } from "./answer.ts";
import { emptyDraft, type PressureDraft } from "./draft.ts";
import { noTables } from "./kept.ts";
import { read } from "./request.ts";
import { lastSetWords, setChanges, type SetFacts } from "./sets.ts";

const draft = (texts: Record<string, string> = {}): PressureDraft => ({
  ...emptyDraft, unit: "bar", links: { "bike": "b1", "front.wheel": "w1", "rear.wheel": "w2", "gauge": "g1" },
  texts: { rider: "72", "front.label": "40", "front.inner": "25", "set.c": "18", "set.m": "240", ...texts },
  picks: { "front.profile": "hooked" },
});

const wheel = (act: "leave" | "let_out" | "add" | null): WheelAnswer =>
  ({ p0_kpa: 201.26, load_n: 338.4, action: act === null ? null : { do: act, by_kpa: 10, strokes: null } }) as unknown as WheelAnswer;

const answer = (front: WheelAnswer, rear: WheelAnswer): PressureAnswer => ({ front, rear, notices: [], bigger_tyre: [] });

function facts(of: PressureDraft, given: PressureAnswer | undefined, front?: number, rear?: number): SetFacts {
  return { draft: of, reading: read(of, "bar", noTables), answer: given, told: { front, rear }, which: sides };
}

function pressures(of: SetFacts): readonly (readonly [unknown, unknown, unknown])[] {
  return setChanges(of, () => "id").map(({ set }) => [set["found_kpa"] ?? null, set["gauge_kpa"], set["advised_kpa"] ?? null]);
}

test("set: who was told to let out has let out, who was told to leave it has left it", () => {
  const read = draft({ "now.front": "2.30", "now.rear": "2.41" });
  equal(pressures(facts(read, answer(wheel("let_out"), wheel("leave")), 205, 242)), [[230, 205, 205], [241, 241, 242]]);
});

test("set: without a reading it is the number as the screen told it, and one wheel alone is one entry", () => {
  const both = facts(draft(), answer(wheel(null), wheel(null)), 205, 242);
  equal(pressures(both), [[null, 205, 205], [null, 242, 242]]);
  equal(pressures({ ...both, which: ["rear"] }), [[null, 242, 242]]);
});

test("set: where no number was given, only a reading is noted", () => {
  equal(pressures(facts(draft({ "now.rear": "2.5" }), answer(wheel(null), wheel(null)))), [[250, 250, null]]);
  equal(pressures(facts(draft(), undefined)), []);
});

test("set: an entry names wheel, gauge, the air of where one stands, and what it was recommended for", () => {
  const of = { ...draft({ "ride.c": "2", "ride.m": "900" }), here: "ride" as const };
  equal(setChanges({ ...facts(of, answer(wheel(null), wheel(null)), 205), which: ["front"] }, () => "id").map(({ set }) => set), [{
    bike: "b1", side: "front", gauge_kpa: 205, advised_kpa: 205, wheel: "w1", gauge: "g1", c: 2, m: 900,
    label_mm: 40, sidewall: "glove", setup: "tubeless", ground: [{ kind: "patched", share: 1 }], p0_kpa: 201.3, load_n: 338,
  }]);
});

test("set: what a rider weighs does not leave the veil", () => {
  const of = { ...draft(), based: { "person/mass_kg": { text: "", value: 72, veiled: true } } };
  equal(setChanges(facts(of, answer(wheel(null), wheel(null)), 205), () => "id").map(({ set }) => "load_n" in set), [false]);
});

test("set: the newest entry of a wheel is told", () => {
  const entry = (id: string, at: number, of: string, kpa: number): RecordState =>
    merge(id, [{ id, at, kind: "pressure_set", rec: id, set: { wheel: of, gauge_kpa: kpa } } satisfies Op]);
  const now = 1790000000000;
  const entries = [entry("a", now - 3 * 3600e3, "w1", 205), entry("b", now - 50 * 3600e3, "w1", 190), entry("c", now - 3 * 3600e3, "other", 300)];
  equal(lastSetWords(entries, draft(), "bar", now), w("set.last", { side: w("side.front"), p: "2.05 bar", age: w("age.hours", { n: 3 }) }));
  equal(lastSetWords([], draft(), "bar", now), "");
});
