// Spokes that were heard, as an entry of the book, with what the wheel's record learns of its build; a slack one is a finding too.

import type { Change } from "../../log/book_log.ts";
import type { Json } from "../../log/op/json.ts";
import { type RecordState, valueOf } from "../../log/op/merge.ts";
import { listed, w } from "../../words/index.ts";
import type { Mounted } from "./measure.ts";
import { dayOf } from "./measure_days.ts";
import { askedOfWheel, type Build, type Heard } from "./spokes.ts";

// spokesChanges are saved whole or not at all.
export function spokesChanges(heard: readonly Heard[], build: Build, wheel: RecordState, mounted: Mounted, now: number, newRec: () => string): readonly Change[] {
  const place: Record<string, Json> = { day: dayOf(now), wheel: wheel.rec, ...(mounted.bike !== undefined && { bike: mounted.bike }), ...(mounted.side !== undefined && { side: mounted.side }) };
  const { values } = build;
  const side = (length: number | undefined): Record<string, Json> | undefined => (length === undefined || values.mm === undefined ? undefined : { length_mm: length, diameter_mm: values.mm });
  const [left, right] = [side(values.left ?? values.right), side(values.right ?? values.left)];
  const entry = { of: wheel.rec, what: "spoke_tension", spokes: heard.map((each) => ({ ...each })), ...place, ...(left && { left }), ...(right && { right }) };
  const learnt = Object.fromEntries(askedOfWheel.flatMap(({ id, field }) => (values[id] === undefined || values[id] === valueOf(wheel, field) ? [] : [[field, values[id] as Json]])));
  const slack = heard.filter(({ hz }) => hz === null);
  return [
    { rec: newRec(), kind: "measure", set: entry },
    ...(Object.keys(learnt).length === 0 ? [] : [{ rec: wheel.rec, kind: wheel.kind, set: learnt, shown: wheel }]),
    ...(slack.length === 0 ? [] : [{ rec: newRec(), kind: "finding", set: findingOf(slack, wheel.rec, place, mounted) }]),
  ];
}

// findingOf: a slack spoke stops the wheel, wherever it goes.
function findingOf(slack: readonly Heard[], wheel: string, place: Readonly<Record<string, Json>>, { side = "front" }: Mounted): Record<string, Json> {
  const { side: _, ...rest } = place;
  return {
    ...rest, thing: wheel, item: `${side}_wheel.spokes`, station: `${side}_wheel`, severity: "stop",
    words: w("spokes.foundSlack", { which: listed(slack.map(({ side: at, n }) => w(`spokes.one.${at}`, { n }))) }),
  };
}
