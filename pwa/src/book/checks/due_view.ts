// What is due, as the calculator lists it; the intervals that people may change; and reminders for a calendar.

import { type Answers, dueFields } from "../../contract/contract.ts";
import type { Json } from "../../log/op/json.ts";
import { w } from "../../words/index.ts";
import { isObject } from "../pressure/answer.ts";
import type { Reminder } from "./calendar.ts";

export type DueLine = Answers["due"][number];

// The intervals that may be changed, in days.
const intervalFields = ["sealant_days", "sealant_hot_days", "rotor_days", "pads_days", "spokes_days", "bolts_days", "walk_around_days"] as const;

export interface IntervalRow {
  readonly id: (typeof intervalFields)[number];
  readonly label: string;
  readonly text: string;
  readonly range: string;
  readonly fault: string;
}

// intervalsOf reads the intervals that are kept, and what is being typed over them. Empty means the default.
export function intervalsOf(kept: Json | undefined, typing: Readonly<Record<string, string>> = {}): { readonly rows: readonly IntervalRow[]; readonly intervals: Record<string, number> } {
  const intervals: Record<string, number> = {};
  const rows = intervalFields.map((id): IntervalRow => {
    const { min: least, max: most, instead: usual } = dueFields[`intervals.${id}`];
    const stored = isObject(kept) ? kept[id] : undefined;
    const text = typing[id] ?? (typeof stored === "number" ? String(stored) : "");
    const days = Number(text.trim());
    const fine = text.trim() === "" || (Number.isInteger(days) && days >= least && days <= most);
    if (fine && text.trim() !== "") intervals[id] = days;
    else if (!fine && typeof stored === "number") intervals[id] = stored;
    return { id, label: w(`due.interval.${id}`), text, range: w("due.usual", { n: usual }), fault: fine ? "" : w("fault.bounds", { low: least, high: most, unit: w("recUnit.d") }) };
  });
  return { rows, intervals };
}

// replaced tells whether a thing is done by fitting a new one: pads and rotors do not get better.
export function isReplaced(id: string): boolean {
  return id.startsWith("pads") || id.startsWith("rotor");
}

// isWalk tells whether a thing is done by a walk-around, and so never just noted.
export function isWalk(id: string): boolean {
  return ["walk_around", "crash_check", "arrival_check"].includes(id);
}

// wayOf is where a thing is done: the walk-around, or the wheel's page; "" where it is only noted.
export function wayOf(id: string, bike: string, wheels: Readonly<Partial<Record<string, string>>>): string {
  if (id === "crash_check") return `#/checks/walk/${bike}/crash`;
  if (id === "arrival_check") return `#/checks/walk/${bike}/arrival`;
  if (id === "walk_around") return `#/checks/walk/${bike}/evening`;
  const side = id.endsWith("_rear") ? "rear" : "front";
  const wheel = wheels[side] ?? "";
  return id.startsWith("rotor") && wheel !== "" ? `#/wheels/measure/${wheel}/rotor_thickness` : "";
}

// dueReminders put each thing on its day, what is overdue on today; the same thing keeps its id.
export function dueReminders(lines: readonly DueLine[], bike: string, today: string): readonly Reminder[] {
  return lines.map(({ id, title, due, why }) => ({ uid: `${id}.${bike}@rimside`, day: due < today ? today : due, title, text: why, alarmHours: 9 }));
}
