import type { RecordState } from "../../log/op/merge.ts";
import { equal, test } from "../../ui/testing.ts";
import { emptyDraft, type PressureDraft, readDraft } from "../pressure/draft.ts";
import { cleared, draftRecs } from "./erase_person_drafts.ts";
import { ana, hex, merged, op } from "../value/kit.test.ts";

const [person, bike, tyre] = [hex("cleo"), hex("ochre"), hex("tyre")];
const draft: PressureDraft = {
  ...emptyDraft, started: true, texts: { rider: "61.5", bike: "9", "front.label": "40" }, links: { person, bike, "front.tyre": tyre },
  based: { "person/mass_kg": { text: "61.5", value: 61.5, veiled: true }, "bike/mass_kg": { text: "9", value: 9 } },
};
const rows = [
  { name: "pressure", value: draft }, { name: "pressure-answer", value: { question: '{"rider_kg":61.5}' } },
  { name: "after-ride", value: { bike, told: {} } }, { name: `pressure/${bike}`, value: draft }, { name: `thing/${person}`, value: { mass_kg: "61.5" } },
  { name: "settings", value: { units: "psi" } },
];
const erased = (...recs: readonly string[]): ReadonlyMap<string, RecordState> => new Map(recs.map((rec) => [rec, merged(op(rec, "erase", { kind: "person" }))]));

test("drafts: what a person weighs goes with the person, also from bikes put aside; all else stays", () => {
  equal([...draftRecs(rows)].sort(), [person, bike, tyre].sort());
  const { kept, dropped } = cleared(rows, erased(person));
  equal(dropped.toSorted(), ["after-ride", "pressure-answer", `thing/${person}`]);
  equal(kept.map(({ name }) => name), ["pressure", `pressure/${bike}`]);
  for (const { value } of kept) {
    const now = readDraft(value);
    equal([now.texts["rider"], now.texts["bike"], now.links["person"], now.links["bike"], Object.keys(now.based)], ["", "9", undefined, bike, ["bike/mass_kg"]]);
  }
  equal(JSON.stringify(kept).includes("61.5"), false);
  equal(cleared(kept, erased(person)), { kept: [], dropped: [] }, "once is enough");
});

test("drafts: a bike that is erased takes its own drafts along", () => {
  equal(cleared(rows, erased(bike)).dropped.toSorted(), ["after-ride", "pressure-answer", `pressure/${bike}`]);
});

test("drafts: other people's stay as they are", () => {
  equal(cleared(rows, erased(ana.rec)), { kept: [], dropped: [] });
  equal(cleared([{ name: "pressure", value: "?" }, { name: "after-ride", value: null }], erased(person)), { kept: [], dropped: [] });
});
