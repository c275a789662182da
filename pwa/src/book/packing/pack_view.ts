// What to pack and in which order, as the calculator lists it, with what is ticked; several people may tick one list.

import type { Answers } from "../../contract/contract.ts";
import { type RecordState, valueOf } from "../../log/op/merge.ts";
import { w } from "../../words/index.ts";
import type { Reminder } from "../checks/calendar.ts";
import { textOf } from "../checks/walk_save.ts";

export type Pack = Answers["pack"];
export type Step = Pack["steps"][number];
export type GoodLine = Pack["goods"][number];

// keyOf names a step of one bike on one trip.
const keyOf = (bike: string, step: string): string => `${bike} ${step}`;

// ticksOf: of each step the newest tick counts, whoever set it.
export function ticksOf(entries: readonly RecordState[], trip: string): ReadonlyMap<string, boolean> {
  const newest = new Map<string, RecordState>();
  for (const entry of entries) {
    if (entry.deleted || entry.erased || valueOf(entry, "trip") !== trip) continue;
    const key = keyOf(textOf(entry, "bike"), textOf(entry, "step"));
    const before = newest.get(key);
    if (before === undefined || entry.newest > before.newest || (entry.newest === before.newest && entry.rec > before.rec)) newest.set(key, entry);
  }
  return new Map([...newest].map(([key, entry]) => [key, valueOf(entry, "ticked") === true]));
}

export interface StepView {
  readonly key: string;
  readonly step: Step;
  readonly bike: string;
  readonly ticked: boolean;
  readonly built: string; // what was written down for it; "" for nothing
  readonly waits: string; // for what has to be done first; "" when nothing has
}

// stepViews tell of each step whether it is ticked, and what it waits for.
export function stepViews(steps: readonly Step[], bike: string, ticks: ReadonlyMap<string, boolean>, builtOf: (step: Step) => string = () => ""): readonly StepView[] {
  const known = new Map(steps.map((step) => [step.id, step]));
  const done = (id: string): boolean => ticks.get(keyOf(bike, id)) === true;
  return steps.map((step) => {
    const open = step.needs.filter((id) => known.has(id) && !done(id)).map((id) => firstSentence(known.get(id)?.text ?? ""));
    return { key: keyOf(bike, step.id), step, bike, ticked: done(step.id), built: builtOf(step), waits: open[0] ?? "" };
  });
}

// firstSentence is enough to know a step by.
function firstSentence(text: string): string {
  return /^.*?[.:](?=\s|$)/.exec(text)?.[0] ?? text;
}

export interface Progress {
  readonly done: number;
  readonly of: number;
  readonly mustOpen: readonly string[]; // what keeps the bike from being ridden
}

export function progressOf(views: readonly StepView[]): Progress {
  return {
    done: views.filter(({ ticked }) => ticked).length, of: views.length,
    mustOpen: views.filter(({ step, ticked }) => step.must === true && !ticked).map(({ step }) => step.text),
  };
}

// tripReminders: the rotors and the batteries on the evening before, the bike looked at on arrival; the same for the way back.
export function tripReminders(trip: RecordState, rotors: boolean): readonly Reminder[] {
  const name = textOf(trip, "name") || w("recKind.trip");
  const make = (kind: string, day: string, title: string, alarmHours: number): Reminder[] =>
    /^\d{4}-\d\d-\d\d$/.test(day) ? [{ uid: `${kind}.${trip.rec}@rimside`, day, title: `${name}: ${title}`, text: w("trip.reminderText"), alarmHours }] : [];
  const [from, to] = [textOf(trip, "from"), textOf(trip, "to")];
  return [
    ...(rotors ? make("rotors-off", from, w("trip.remind.rotorsOff"), -6) : []), ...make("batteries", from, w("trip.remind.batteries"), -5), ...make("arrival", from, w("trip.remind.arrival"), 17),
    ...(rotors ? make("rotors-on", from, w("trip.remind.rotorsOn"), 16) : []),
    ...(rotors ? make("rotors-off-back", to, w("trip.remind.rotorsOff"), -6) : []), ...make("home", to, w("trip.remind.home"), 17),
  ];
}
