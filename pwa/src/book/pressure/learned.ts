// What the notes after rides speak for: the question that goes to the calculator, and the shifts that come back.

import type { Answers, Requests } from "../../contract/contract.ts";
import { type RecordState, valueOf } from "../../log/op/merge.ts";
import { type Side, sides } from "./answer.ts";
import type { Reading, RequestBody } from "./request.ts";
import { trialNotes } from "./trial_note.ts";

export const felts = ["too_hard", "hard", "right", "soft", "too_soft"] as const;
export type Felt = (typeof felts)[number];

type Question = Requests["shift"];
type Note = Question["notes"][number];
export type Learned = Answers["shift"];

const most = 2000; // notes that one question takes

// standing are a bike's entries that were not removed and that no later one corrects, in the order they were made.
function standing(entries: readonly RecordState[], bike: string): readonly RecordState[] {
  const live = entries.filter((entry) => !entry.deleted && !entry.erased);
  const corrected = new Set(live.map((entry) => valueOf(entry, "corrects")));
  return live.filter((entry) => valueOf(entry, "bike") === bike && !corrected.has(entry.rec)).sort((a, b) => a.newest - b.newest);
}

// notesOf are a bike's notes that stand, in the order they were made: none that was removed, none that a later one corrects.
export function notesOf(entries: readonly RecordState[], bike: string | undefined): readonly RecordState[] {
  if (bike === undefined) return [];
  return standing(entries, bike).filter((entry) => feltOf(entry) !== undefined || valueOf(entry, "rim_strike") === true);
}

export function feltOf(entry: RecordState): Felt | undefined {
  const felt = valueOf(entry, "felt");
  return felts.find((each) => each === felt);
}

// learnedQuestion asks for both wheels' shifts, from notes and trials; undefined where there are none.
export function learnedQuestion(entries: readonly RecordState[], bike: string | undefined, body: RequestBody): Question | undefined {
  const said = notesOf(entries, bike);
  const all = bike === undefined ? [] : standing(entries, bike).filter((entry) => entry.kind === "trial" || said.includes(entry));
  const notes = all.flatMap((entry) => (entry.kind === "trial" ? trialNotes(entry) : noteOf(entry) ?? [])).slice(-most);
  return notes.length === 0 ? undefined : { notes, front: kindOf(body, "front"), rear: kindOf(body, "rear") };
}

function kindOf(body: RequestBody, side: Side): Question["front"] {
  const { label_mm, sidewall, setup } = body[side].tyre;
  return { label_mm, sidewall, setup };
}

// noteOf is a note as the sums see it. An old one kept what usual practice was on that day, not what was recommended: what it
// was measured against is not known, so it is passed on without, and counts as nothing.
function noteOf(entry: RecordState): Note | undefined {
  const number = (field: string): number | undefined => {
    const value = valueOf(entry, field);
    return typeof value === "number" ? value : undefined;
  };
  const wheel = sides.find((each) => each === valueOf(entry, "side"));
  if (wheel === undefined) return undefined;
  const [ridden, p0, label, felt, ride] = [number("ridden_kpa"), number("p0_kpa"), number("label_mm"), feltOf(entry), valueOf(entry, "ride")];
  const sidewall = (["cloth", "glove", "hose"] as const).find((each) => each === valueOf(entry, "sidewall"));
  const setup = (["tube", "tubeless", "insert"] as const).find((each) => each === valueOf(entry, "setup"));
  return {
    wheel, struck: valueOf(entry, "rim_strike") === true, ...(felt !== undefined && { felt }), ...(typeof ride === "string" && ride !== "" && { ride }),
    ...(ridden !== undefined && { ridden_kpa: ridden }), ...(p0 !== undefined && { p0_kpa: p0 }),
    ...(label !== undefined && sidewall !== undefined && setup !== undefined && { tyre: { label_mm: label, sidewall, setup } }),
  };
}

// shifted lets a question ask for the shifts. They go through the calculator's own field, so no limit moves with them.
export function shifted(reading: Reading, learned: Learned | undefined): Reading {
  if (reading.body === undefined || learned === undefined) return reading;
  return { ...reading, body: { ...reading.body, shift: { front: learned.front.shift, rear: learned.rear.shift } } };
}
