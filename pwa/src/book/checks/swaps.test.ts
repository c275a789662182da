import type { HistoryEntry } from "../../log/op/history.ts";
import { equal, test } from "../../ui/testing.ts";
import { swapsOf } from "./swaps.ts";

test("swaps: what went in and what came out, and nothing of how the bike was made", () => {
  const entry = (op: string, at: number, set: HistoryEntry["set"]): HistoryEntry => ({ op, at, kind: "bike", author: "", device: "", set });
  const history = [entry("4", 4, { front: null }), entry("3", 3, { front: "w2", name: "x" }), entry("2", 2, { name: "y" }), entry("1", 1, { front: "w1", rear: "w3" })];
  equal(swapsOf("b", history).map(({ at, side, wheel, into }) => [at, side, wheel, into]), [[4, "front", "w2", false], [3, "front", "w2", true], [3, "front", "w1", false]]);
  equal(swapsOf("b", history.slice(2)), []);
});
