// What a measured value means: the limits, and what to do when it is past them. The number on the part wins.

import { w } from "../../words/index.ts";
import { plain } from "../../words/number.ts";
import type { What } from "./measure.ts";

export interface Judged {
  readonly severity: "note" | "care" | "stop";
  readonly text: string;
}

export interface Limit {
  readonly value: number;
  readonly label: string;
}

// Around is what a limit depends on besides the value.
export interface Around {
  readonly rotorMin: number | undefined; // mm, the number on the disc
  readonly tyre: number | undefined; // mm, the width of the tyre in that opening
  readonly age: number; // days
}

const rotorUsual = 1.55; // mm, where no number can be read: common practice
const rotorSoon = 0.1; // mm above it; our choice
const rotorRun = 0.2; // mm; from memory
const rimRun = 0.8; // mm, full reading in one turn: the test of finished bicycles
export const gapRoad = 4; // mm each side
const gapOther = 6; // mm each side, off the road
const gapLeast = 1.6; // mm each side: below, it is not to be ridden
const sealantDays = 61; // two months: common practice

const mm = (value: number): string => plain(Number(value.toFixed(2)));

// limitOf is the line that a value must not pass; undefined where there is none.
export function limitOf(what: What, { rotorMin, tyre }: Around): Limit | undefined {
  const line = (value: number): Limit => ({ value, label: w("measureLimit.line", { mm: mm(value) }) });
  switch (what) {
    case "rotor_thickness": return rotorMin === undefined ? line(rotorUsual) : { value: rotorMin, label: w("measureLimit.disc", { mm: mm(rotorMin) }) };
    case "rotor_runout": return line(rotorRun);
    case "rim_runout": return line(rimRun);
    case "room": return tyre === undefined ? undefined : line(tyre + 2 * gapRoad);
    default: return undefined;
  }
}

// judge says what to mind about the newest value.
export function judge(what: What, value: number, around: Around): readonly Judged[] {
  switch (what) {
    case "rotor_thickness": return rotor(value, around.rotorMin);
    case "rotor_runout": return value > rotorRun ? [{ severity: "care", text: w("measureLimit.rotorRun", { mm: rotorRun }) }] : [];
    case "rim_runout": return value > rimRun ? [{ severity: "care", text: w("measureLimit.rimRun", { mm: rimRun }) }] : [];
    case "room": return around.tyre === undefined ? [{ severity: "note", text: w("measureLimit.noTyre") }] : room(value, around.tyre);
    case "sealant": return around.age >= sealantDays ? [{ severity: "care", text: w("measureLimit.sealant") }] : [];
    default: return [];
  }
}

function rotor(value: number, min: number | undefined): readonly Judged[] {
  const least = min ?? rotorUsual;
  const unread: readonly Judged[] = min === undefined ? [{ severity: "care", text: w("measureLimit.unread", { mm: rotorUsual }) }] : [];
  if (value < least) return [{ severity: "stop", text: w(min === undefined ? "measureLimit.thinUsual" : "measureLimit.thin", { mm: mm(least) }) }, ...unread];
  if (value < least + rotorSoon) return [{ severity: "care", text: w("measureLimit.soon", { mm: mm(value - least) }) }, ...unread];
  return unread;
}

function room(opening: number, tyre: number): readonly Judged[] {
  const gap = (opening - tyre) / 2;
  if (gap < gapLeast) return [{ severity: "stop", text: w("measureLimit.noGap", { mm: mm(Math.max(0, gap)), least: gapLeast }) }];
  if (gap < gapRoad) return [{ severity: "care", text: w("measureLimit.tight", { mm: mm(gap), road: gapRoad, other: gapOther }) }];
  return [{ severity: "note", text: w(gap < gapOther ? "measureLimit.roadOnly" : "measureLimit.clear", { mm: mm(gap), other: gapOther }) }];
}
