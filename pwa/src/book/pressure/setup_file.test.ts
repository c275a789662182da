import { merge, type RecordState } from "../../log/op/merge.ts";
import type { Json } from "../../log/op/json.ts";
import { equal, test } from "../../ui/testing.ts";
import { setupChanges, setupText } from "./setup_file.ts";

const id = (n: number): string => n.toString(16).padStart(32, "0");

const records = new Map<string, RecordState>([
  [1, "bike", { name: "Ochre", rider: id(9), front: id(2), rear: id(3) }], [2, "wheel", { tyre: id(4), inner_mm: 25 }], [3, "wheel", { tyre: id(5) }],
  [4, "tyre", { label_mm: 40, measured_at: 7, measured_mm: 41.5 }], [5, "tyre", { label_mm: 42 }], [9, "person", { name: "Ana", mass_kg: 61 }],
].map(([n, kind, set]) => {
  const rec = id(n as number);
  return [rec, merge(rec, [{ id: rec, at: 1790000000000, kind: kind as string, rec, set: set as Record<string, Json> }])];
}));

const links = { bike: id(1), "front.wheel": id(2), "rear.wheel": id(3), "front.tyre": id(4), "rear.tyre": id(5), person: id(9) };

test("set-up file: a friend gets the bike, not the rider", () => {
  const text = setupText(links, (rec) => records.get(rec));
  equal([text.includes("Ana"), text.includes("61"), text.includes(id(9))], [false, false, false]);
  let drawn = 100;
  const read = setupChanges(text, () => id(++drawn));
  equal(read?.bike, id(101));
  equal(read?.changes.map(({ rec, kind, set }) => [rec, kind, set]), [
    [id(101), "bike", { name: "Ochre", front: id(102), rear: id(104) }],
    [id(102), "wheel", { tyre: id(103), inner_mm: 25 }], [id(103), "tyre", { label_mm: 40, measured_mm: 41.5 }],
    [id(104), "wheel", { tyre: id(105) }], [id(105), "tyre", { label_mm: 42 }],
  ]);
});

test("set-up file: anything else is none", () => {
  for (const text of ["", "{", "[]", "null", "{\"rimside\":1}", "{\"rimside_setup\":2,\"parts\":[]}", "{\"rimside_setup\":1,\"parts\":[{\"role\":\"bike\"}]}", "{\"rimside_setup\":1,\"parts\":7}"]) {
    equal(setupChanges(text, () => id(1)), undefined, text);
  }
});
