// "I set it": what was pumped, as entries of the book, and what they say later.

import type { Change } from "../../log/book_log.ts";
import type { Json } from "../../log/op/json.ts";
import { type RecordState, valueOf } from "../../log/op/merge.ts";
import { w } from "../../words/index.ts";
import { ageOf } from "../value/age.ts";
import { type PressureAnswer, type Side, sides } from "./answer.ts";
import type { PressureDraft } from "./draft.ts";
import { parse, showKpa, type PressureUnit, typedKpa } from "../value/quantity.ts";
import type { Reading } from "./request.ts";

// setChanges are the entries for both wheels: what the gauge said before, and what it says now. Whoever was told to leave
// it has left it; whoever was told to let out or to add has done so.
export function setChanges(draft: PressureDraft, reading: Reading, answer: PressureAnswer | undefined, newRec: () => string): readonly Change[] {
  const { links } = draft;
  const weather = reading.body?.set;
  return sides.flatMap((side): Change[] => {
    const wheel = answer?.[side];
    const advised = wheel?.gauge_kpa == null ? undefined : asShown(wheel.gauge_kpa, draft.unit);
    const found = reading.values.get(`now.${side}`);
    const gauge = found !== undefined && (advised === undefined || wheel?.action?.do === "leave") ? found : advised;
    if (gauge === undefined || links["bike"] === undefined) return [];
    const set: Record<string, Json> = { bike: links["bike"], side, gauge_kpa: rounded(gauge) };
    if (found !== undefined) set["found_kpa"] = rounded(found);
    if (advised !== undefined) set["advised_kpa"] = rounded(advised);
    for (const [field, role] of [["wheel", `${side}.wheel`], ["tyre", `${side}.tyre`], ["gauge", "gauge"]] as const) {
      if (links[role] !== undefined) set[field] = links[role];
    }
    if (weather !== undefined) Object.assign(set, { c: rounded(weather.c), m: rounded(weather.m) });
    return [{ rec: newRec(), kind: "pressure_set", set }];
  });
}

// sameChanges note that both wheels hold again what they were set to last.
export function sameChanges(draft: PressureDraft, reading: Reading, sets: readonly RecordState[], newRec: () => string): readonly Change[] {
  return sides.flatMap((side): Change[] => {
    const last = lastSet(sets, draft.links[`${side}.wheel`]);
    const kpa = valueOf(last, "gauge_kpa");
    if (last === undefined || typeof kpa !== "number") return [];
    const kept = ["bike", "wheel", "tyre", "gauge"].flatMap((field) => {
      const value = valueOf(last, field);
      return value == null ? [] : [[field, value] as const];
    });
    const found = reading.values.get(`now.${side}`);
    const { c, m } = reading.body?.set ?? {};
    return [{ rec: newRec(), kind: "pressure_set", set: {
      ...Object.fromEntries(kept), side, gauge_kpa: kpa,
      ...(found !== undefined && { found_kpa: rounded(found) }), ...(c !== undefined && m !== undefined && { c: rounded(c), m: rounded(m) }),
    } }];
  });
}

// asShown is the number that a person was told: rounded as the screen rounds it.
function asShown(kpa: number, unit: PressureUnit): number {
  const parsed = parse(typedKpa(kpa, unit), "pressure", unit);
  return "si" in parsed ? parsed.si / 1000 : kpa;
}

function rounded(value: number): number {
  return Number(value.toPrecision(12));
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
