import { equal, test } from "../../ui/testing.ts";
import { showKpa, steppedKpa } from "../value/quantity.ts";
import { placeEdit, partEdit, partTexts, kilometres } from "./edits.ts";
import { emptyDraft } from "./draft.ts";
import { rulerView } from "./ruler_view.ts";
import { toldNumber, toldRange } from "./told.ts";
import { wheelAnswer } from "./team_view.test.ts";

const scene = { unit: "bar", hereC: 20, rideC: 20 } as const;

test("told: the number is the nearest step within its limits, and the same is logged", () => {
  for (const unit of ["bar", "psi", "kpa"] as const) {
    for (let kpa = 150.03; kpa < 400; kpa += 1.37) {
      const told = toldNumber({ ...wheelAnswer(kpa), ceiling_kpa: kpa + 0.1, floor_kpa: 100 }, { ...scene, unit });
      equal(told !== undefined && told.kpa <= kpa + 0.1 + 1e-6, true, `${kpa} ${unit}`);
      equal(told?.text, showKpa(told?.kpa ?? 0, unit));
    }
  }
  equal(toldNumber({ ...wheelAnswer(412.7), ceiling_kpa: 412.7, limited_by: "tyre" }, scene), { kpa: 412, text: "4.12" });
  equal(toldNumber({ ...wheelAnswer(150.2), floor_kpa: 150.2 }, scene), { kpa: 151, text: "1.51" });
  equal(toldNumber({ ...wheelAnswer(150.2), floor_kpa: 150.2, ceiling_kpa: 150.5 }, scene)?.text, "1.50");
  equal(toldNumber({ ...wheelAnswer(null) }, scene), undefined);
  equal([showKpa(215, "psi"), steppedKpa(205.4, "bar")], ["31.0", 205]);
});

test("told: a range is rounded inwards and still holds the number", () => {
  equal(toldRange([201.2, 240.9], { kpa: 220, text: "2.20" }, "bar").map(({ text }) => text), ["2.02", "2.40"]);
  equal(toldRange([204.6, 240.9], { kpa: 204, text: "2.04" }, "bar").map(({ text }) => text), ["2.04", "2.40"]);
});

test("ruler: places lie in order on the line", () => {
  const wheel = { ...wheelAnswer(220), good_kpa: [200, 250] as const, floor_kpa: 180, ceiling_kpa: 300 };
  const number = toldNumber(wheel, scene);
  if (number === undefined) throw new Error("a number");
  const view = rulerView(wheel as never, number, scene, 230);
  const places = [view.floor, view.good?.[0], view.number, view.read, view.good?.[1], view.limit].map((each) => each ?? -1);
  equal(places, [...places].sort((a, b) => a - b));
  equal(rulerView({ ...wheel, ceiling_kpa: 900 } as never, number, scene, undefined).limit, undefined); // far above: the line ends before it
});

const stretch = (id: string, km: string): (typeof emptyDraft.ground)[number] => ({ id, kind: "pea", km, kmh: "", gd0: "", washboard: false });

test("ground: percent and kilometres are two views of the same stretches", () => {
  const draft = { ...emptyDraft, groundBy: "share" as const, ground: [stretch("a", "30"), stretch("b", "20"), stretch("c", "10")] };
  equal(partTexts(draft.ground), ["50", "33.3", "16.7"]);
  const next = partEdit(draft, "a", "70").ground ?? [];
  equal(kilometres(next), [42, 12, 6]);
  equal(partTexts(next), ["70", "20", "10"]);
  const wrong = partEdit(draft, "a", "130").ground ?? [];
  equal([kilometres(wrong), partTexts(wrong)[0]], [[30, 20, 10], "130"]);
});

test("places: a reading stays where it was taken", () => {
  const draft = { ...emptyDraft, texts: { "now.front": "2.1" } };
  const start = { ...draft, ...placeEdit(draft, "ride", 5) };
  equal([start.here, start.texts["now.front"]], ["ride", ""]);
  equal({ ...start, ...placeEdit(start, "set", 6) }.texts["now.front"], "2.1");
});
