import { merge, type RecordState } from "../../log/op/merge.ts";
import type { Op } from "../../log/op/op.ts";
import { equal, test } from "../../ui/testing.ts";
import { w } from "../../words/index.ts";
import type { PressureAnswer, WheelAnswer } from "./answer.ts";
import { emptyDraft, type PressureDraft } from "./draft.ts";
import { noTables } from "./kept.ts";
import { read } from "./request.ts";
import { lastSetWords, setChanges } from "./sets.ts";

const draft = (texts: Record<string, string> = {}): PressureDraft => ({
  ...emptyDraft, unit: "bar", links: { "bike": "b1", "front.wheel": "w1", "rear.wheel": "w2", "gauge": "g1" },
  texts: { rider: "72", "front.label": "40", "front.inner": "25", "set.c": "18", "set.m": "240", ...texts },
  picks: { "front.profile": "hooked" },
});

const wheel = (gauge_kpa: number | null, act: "leave" | "let_out" | "add" | null): WheelAnswer =>
  ({ gauge_kpa, action: act === null ? null : { do: act, by_kpa: 10, strokes: null } }) as unknown as WheelAnswer;

const answer = (front: WheelAnswer, rear: WheelAnswer): PressureAnswer => ({ front, rear, notices: [], bigger_tyre: [] });

function sets(of: PressureDraft, given: PressureAnswer | undefined): readonly (readonly [unknown, unknown, unknown])[] {
  return setChanges(of, read(of, "bar", noTables), given, () => "id").map(({ set }) => [set["found_kpa"] ?? null, set["gauge_kpa"], set["advised_kpa"] ?? null]);
}

test("set: who was told to let out has let out, who was told to leave it has left it", () => {
  const read = draft({ "now.front": "2.30", "now.rear": "2.41" });
  equal(sets(read, answer(wheel(205.4, "let_out"), wheel(241.8, "leave"))), [[230, 205, 205], [241, 241, 242]]);
});

test("set: without a reading it is what was advised, as the screen rounded it", () => {
  equal(sets(draft(), answer(wheel(205.4, null), wheel(241.8, null))), [[null, 205, 205], [null, 242, 242]]);
});

test("set: where no number was given, only a reading is noted", () => {
  equal(sets(draft({ "now.rear": "2.5" }), answer(wheel(null, null), wheel(null, null))), [[250, 250, null]]);
  equal(sets(draft(), undefined), []);
});

test("set: an entry names wheel, gauge and weather", () => {
  const of = draft();
  equal(setChanges(of, read(of, "bar", noTables), answer(wheel(205, null), wheel(null, null)), () => "id").map(({ set }) => set),
    [{ bike: "b1", side: "front", gauge_kpa: 205, advised_kpa: 205, wheel: "w1", gauge: "g1", c: 18, m: 240 }]);
});

test("set: the newest entry of a wheel is told", () => {
  const entry = (id: string, at: number, of: string, kpa: number): RecordState =>
    merge(id, [{ id, at, kind: "pressure_set", rec: id, set: { wheel: of, gauge_kpa: kpa } } satisfies Op]);
  const now = 1790000000000;
  const entries = [entry("a", now - 3 * 3600e3, "w1", 205), entry("b", now - 50 * 3600e3, "w1", 190), entry("c", now - 3 * 3600e3, "other", 300)];
  equal(lastSetWords(entries, draft(), "bar", now), w("set.last", { side: w("side.front"), p: "2.05 bar", age: w("age.hours", { n: 3 }) }));
  equal(lastSetWords([], draft(), "bar", now), "");
});
