// "I set it": what was pumped, as entries of the book, and what they say later.

import type { Change } from "../../log/book_log.ts";
import type { Json } from "../../log/op/json.ts";
import { type RecordState, valueOf } from "../../log/op/merge.ts";
import { w } from "../../words/index.ts";
import { ageOf } from "../value/age.ts";
import { type PressureAnswer, type Side, sides } from "./answer.ts";
import type { PressureDraft } from "./draft.ts";
import { type PressureUnit, showKpa } from "../value/quantity.ts";
import type { Reading, RequestBody } from "./request.ts";

// Setting says what the screen told when the button was pressed.
export interface SetFacts {
  readonly draft: PressureDraft;
  readonly reading: Reading;
  readonly answer: PressureAnswer | undefined;
  readonly told: Readonly<Record<Side, number | undefined>>; // kPa on the gauge: the number as it was shown
  readonly which: readonly Side[];
}

// setChanges are the entries: what the gauge said before, and what it says now. Whoever was told to leave it has left it; whoever
// was told to let out or to add has done so.
export function setChanges({ draft, reading, answer, told, which }: SetFacts, newRec: () => string): readonly Change[] {
  const { links } = draft;
  return which.flatMap((side): Change[] => {
    const [advised, found] = [told[side], reading.values.get(`now.${side}`)];
    const gauge = found !== undefined && (advised === undefined || answer?.[side].action?.do === "leave") ? found : advised;
    if (gauge === undefined || links["bike"] === undefined) return [];
    const set: Record<string, Json> = { bike: links["bike"], side, gauge_kpa: gauge };
    if (found !== undefined) set["found_kpa"] = found;
    if (advised !== undefined) set["advised_kpa"] = advised;
    for (const [field, role] of [["person", "person"], ["wheel", `${side}.wheel`], ["tyre", `${side}.tyre`], ["gauge", "gauge"]] as const) {
      if (links[role] !== undefined) set[field] = links[role];
    }
    if (reading.body !== undefined) Object.assign(set, placeOf(reading.body), madeFor(side, reading.body, answer, draft));
    return [{ rec: newRec(), kind: "pressure_set", set }];
  });
}

// placeOf is the air of where one stands.
export function placeOf({ here, set, ride }: RequestBody): { readonly c: number; readonly m: number } {
  return here === "ride" ? ride : set;
}

// madeFor is what was recommended before the rider's own shift, and for which tyre, load and ground: notes after the ride are
// learnt against that. What somebody weighs stays where it is veiled.
function madeFor(side: Side, body: RequestBody, answer: PressureAnswer | undefined, draft: PressureDraft): Record<string, Json> {
  const { label_mm, sidewall, setup } = body[side].tyre;
  const wheel = answer?.[side];
  const veiled = draft.based["person/mass_kg"]?.veiled === true;
  return {
    label_mm, sidewall, setup, ground: body.ground.map((each): Json => ({ ...each })),
    ...(wheel?.p0_kpa != null && { p0_kpa: tenths(wheel.p0_kpa) }), ...(wheel !== undefined && !veiled && { load_n: Math.round(wheel.load_n) }),
  };
}

// A gauge tells no more than this.
export function tenths(kpa: number): number {
  return Math.round(kpa * 10) / 10;
}

// sameChanges note that both wheels hold again what they were set to last.
export function sameChanges(facts: SetFacts, sets: readonly RecordState[], newRec: () => string): readonly Change[] {
  const again = (side: Side): number | undefined => {
    const kpa = valueOf(lastSet(sets, facts.draft.links[`${side}.wheel`]), "gauge_kpa");
    return typeof kpa === "number" ? kpa : undefined;
  };
  return setChanges(facts, newRec).flatMap((change): Change[] => {
    const side = sides.find((each) => each === change.set["side"]);
    const kpa = side === undefined ? undefined : again(side);
    return kpa === undefined ? [] : [{ ...change, set: { ...change.set, gauge_kpa: kpa } }];
  });
}

// lastSet finds the newest entry for a wheel.
export function lastSet(entries: readonly RecordState[], wheel: string | undefined): RecordState | undefined {
  let last: RecordState | undefined;
  for (const entry of entries) {
    if (wheel !== undefined && valueOf(entry, "wheel") === wheel && (last === undefined || entry.newest > last.newest)) last = entry;
  }
  return last;
}

// lastSetWords says what each wheel was last set to, and when; "" when nobody noted it.
export function lastSetWords(entries: readonly RecordState[], draft: PressureDraft, unit: PressureUnit, now: number): string {
  return sides.map((side: Side) => {
    const entry = lastSet(entries, draft.links[`${side}.wheel`]);
    const kpa = valueOf(entry, "gauge_kpa");
    if (entry === undefined || typeof kpa !== "number") return "";
    return w("set.last", { side: w(`side.${side}`), p: `${showKpa(kpa, unit)} ${w(`unit.${unit}`)}`, age: ageOf(now - entry.newest) });
  }).filter((words) => words !== "").join(" · ");
}
