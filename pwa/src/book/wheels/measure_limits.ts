// What a measured value means: the limits, and what to do when it is past them. The number on the part wins.

import { rimRunOutMm, roomOtherMm, roomRoadMm, roomStopMm, rotorMinMm, rotorRunOutMm } from "../../contract/contract.ts";
import { dueFields } from "../../contract/due_fields.ts";
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

const rotorSoon = 0.1; // mm above the least thickness; our choice
const sealantDays = dueFields["intervals.sealant_days"].instead;

const mm = (value: number): string => plain(Number(value.toFixed(2)));

// limitOf is the line that a value must not pass; undefined where there is none.
export function limitOf(what: What, { rotorMin, tyre }: Around): Limit | undefined {
  const line = (value: number): Limit => ({ value, label: w("measureLimit.line", { mm: mm(value) }) });
  switch (what) {
    case "rotor_thickness": return rotorMin === undefined ? line(rotorMinMm) : { value: rotorMin, label: w("measureLimit.disc", { mm: mm(rotorMin) }) };
    case "rotor_runout": return line(rotorRunOutMm);
    case "rim_runout": return line(rimRunOutMm);
    case "room": return tyre === undefined ? undefined : line(tyre + 2 * roomRoadMm);
    default: return undefined;
  }
}

// judge says what to mind about the newest value.
export function judge(what: What, value: number, around: Around): readonly Judged[] {
  switch (what) {
    case "rotor_thickness": return rotor(value, around.rotorMin);
    case "rotor_runout": return value > rotorRunOutMm ? [{ severity: "care", text: w("measureLimit.rotorRun", { mm: rotorRunOutMm }) }] : [];
    case "rim_runout": return value > rimRunOutMm ? [{ severity: "care", text: w("measureLimit.rimRun", { mm: rimRunOutMm }) }] : [];
    case "room": return around.tyre === undefined ? [{ severity: "note", text: w("measureLimit.noTyre") }] : room(value, around.tyre);
    case "sealant": return around.age >= sealantDays ? [{ severity: "care", text: w("measureLimit.sealant") }] : [];
    default: return [];
  }
}

function rotor(value: number, min: number | undefined): readonly Judged[] {
  const least = min ?? rotorMinMm;
  const unread: readonly Judged[] = min === undefined ? [{ severity: "care", text: w("measureLimit.unread", { mm: rotorMinMm }) }] : [];
  if (value < least) return [{ severity: "stop", text: w(min === undefined ? "measureLimit.thinUsual" : "measureLimit.thin", { mm: mm(least) }) }, ...unread];
  if (value < least + rotorSoon) return [{ severity: "care", text: w("measureLimit.soon", { mm: mm(value - least) }) }, ...unread];
  return unread;
}

function room(opening: number, tyre: number): readonly Judged[] {
  const gap = (opening - tyre) / 2;
  if (gap < roomStopMm) return [{ severity: "stop", text: w("measureLimit.noGap", { mm: mm(Math.max(0, gap)), least: roomStopMm }) }];
  if (gap < roomRoadMm) return [{ severity: "care", text: w("measureLimit.tight", { mm: mm(gap), road: roomRoadMm, other: roomOtherMm }) }];
  return [{ severity: "note", text: w(gap < roomOtherMm ? "measureLimit.roadOnly" : "measureLimit.clear", { mm: mm(gap), other: roomOtherMm }) }];
}
