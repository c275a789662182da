// Which ride the next note is about: the one that the wheels were set for last.

import { type RecordState, valueOf } from "../../log/op/merge.ts";
import { type Side, sides } from "./answer.ts";
import type { PressureDraft } from "./draft.ts";
import { lastSet } from "./sets.ts";

const sameRide = 48 * 3600e3; // ms: a setting older than this was for another ride (our choice)
const ridden = 3600e3; // ms: nobody is back from a ride sooner (our choice)

export type RideDue = "never_set" | "set" | "ridden" | "noted";

// setForRide is the wheel's setting for the ride that is over or on; undefined when nobody noted one.
export function setForRide(side: Side, draft: PressureDraft, sets: readonly RecordState[], now: number): RecordState | undefined {
  const entry = lastSet(sets, draft.links[`${side}.wheel`]);
  return entry === undefined || now - entry.newest > sameRide ? undefined : entry;
}

// rideDue tells whether the screen should ask how it was.
export function rideDue(draft: PressureDraft, sets: readonly RecordState[], notes: readonly RecordState[], now: number): RideDue {
  const found = sides.flatMap((side) => setForRide(side, draft, sets, now) ?? []);
  if (found.length === 0) return "never_set";
  if (found.some((entry) => noteOf(entry, notes) !== undefined)) return "noted";
  return found.every((entry) => now - entry.newest >= ridden) ? "ridden" : "set";
}

// noteOf is the note that was made after the ride of a setting.
export function noteOf(entry: RecordState, notes: readonly RecordState[]): RecordState | undefined {
  return notes.find((note) => !note.deleted && !note.erased && valueOf(note, "ride") === entry.rec);
}
