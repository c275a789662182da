import { merge, type RecordState } from "../../log/op/merge.ts";
import { equal, test } from "../../ui/testing.ts";
import { emptyDraft, type PressureDraft, type StretchDraft } from "./draft.ts";
import { groundByEdit, partTexts, stretchMove } from "./edits.ts";
import { groundChange, groundEdit, groundLines } from "./grounds.ts";
import { noTables } from "./kept.ts";
import { read } from "./request.ts";

const stretch = (id: string, km: string, kind = "pea"): StretchDraft => ({ id, kind, km, kmh: "", gd0: "", washboard: false });
const draft: PressureDraft = { ...emptyDraft, ground: [stretch("a", "10", "chips"), stretch("b", "30"), stretch("c", "60", "walnut")] };
const order = (of: Partial<PressureDraft>): string => (of.ground ?? draft.ground).map((each) => each.id).join("");

test("ground: a stretch moves to its place, and nowhere else", () => {
  equal([order(stretchMove(draft, "a", 1)), order(stretchMove(draft, "c", 0)), order(stretchMove(draft, "b", 3)), order(stretchMove(draft, "b", -1)), order(stretchMove(draft, "x", 0))],
    ["bac", "cab", "abc", "abc", "abc"]);
});

test("ground: showing lengths in percent changes no kilometre", () => {
  const by = { ...draft, ...groundByEdit({ ...draft, ground: [stretch("a", "10"), stretch("b", "30")] }, "share") };
  equal([by.groundBy, by.ground.map((each) => each.km), partTexts(by.ground)], ["share", ["10", "30"], ["25", "75"]]);
  const asked = [...read(by, "bar", noTables).values].filter(([id]) => id.endsWith(".km")).map(([, value]) => value);
  equal(asked, [10, 30]);
});

const kept = (rec: string, at: number, name: string): RecordState => {
  const { set } = groundChange({ ...draft, groundBy: "share" }, ` ${name} `, () => rec);
  return merge(rec, [{ id: rec, at, kind: "ground", rec, set }]);
};

test("ground: kept by name and used again, the newer of one name", () => {
  const grounds = [kept("1".repeat(32), 1790000000000, "Ridge"), kept("2".repeat(32), 1790000000009, "Ridge"), kept("3".repeat(32), 1790000000000, "Dale")];
  equal(groundLines(grounds).map(({ rec, name }) => [rec[0], name]), [["3", "Dale"], ["2", "Ridge"]]);
  const again = groundEdit(grounds[0] as RecordState);
  equal([again?.groundBy, again?.ground?.map(({ kind, km }) => [kind, km])], [undefined, [["chips", "10"], ["pea", "30"], ["walnut", "60"]]]);
  equal(groundEdit(merge("r", [{ id: "r", at: 1, kind: "ground", rec: "r", set: { name: "x", stretches: 7 } }])), undefined);
});
