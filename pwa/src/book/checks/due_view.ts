// What is due, as the calculator lists it; the intervals that people may change; and reminders for a calendar.

import type { Answers } from "../../contract/contract.ts";
import { dueFields } from "../../contract/due_fields.ts";
import type { Json } from "../../log/op/json.ts";
import { facts, listed, w } from "../../words/index.ts";
import { fixed, plain } from "../../words/number.ts";
import { optionWords } from "../value/kind_words.ts";
import { dayWords } from "../value/when.ts";
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

// isWalk tells whether a thing is done by a walk-around.
export function isWalk(id: string): boolean {
  return ["walk_around", "crash_check", "arrival_check"].includes(id);
}

// isNoted tells whether a thing may simply be noted as done: what is walked or measured may not.
export function isNoted(id: string): boolean {
  return !isWalk(id) && !id.startsWith("width");
}

// wayOf is where a thing is done: the walk-around, or the wheel's page; "" where it is only noted.
export function wayOf(id: string, bike: string, wheels: Readonly<Partial<Record<string, string>>>, tyres: Readonly<Partial<Record<string, string>>> = {}): string {
  if (id === "crash_check") return `#/checks/walk/${bike}/crash`;
  if (id === "arrival_check") return `#/checks/walk/${bike}/arrival`;
  if (id === "walk_around") return `#/checks/walk/${bike}/evening`;
  const side = id.endsWith("_rear") ? "rear" : "front";
  const [wheel, tyre] = [wheels[side] ?? "", tyres[side] ?? ""];
  if (id.startsWith("width")) return tyre === "" ? "" : `#/wheels/measure/${tyre}/width`;
  return id.startsWith("rotor") && wheel !== "" ? `#/wheels/measure/${wheel}/rotor_thickness` : "";
}

export const dueTitle = ({ id }: DueLine): string => w(`due.title.${id}`);
export const dueSource = ({ source }: DueLine): string => w(`due.source.${source}`);

// dueWhy is the reason in a sentence.
export function dueWhy({ id, why: { code, values } }: DueLine, now: number): string {
  const number = (name: string): number => (typeof values[name] === "number" ? values[name] : 0);
  const day = dayWords(String(values["day"] ?? ""), now);
  switch (code) {
    case "never_noted": return w("due.why.never_noted");
    case "every": return w("due.why.every", { day, n: number("days") });
    case "measured": return w(id.startsWith("rotor") ? "due.why.rotor" : "due.why.pads", { mm: plain(number("mm")), limit: plain(number("limit_mm")), day });
    case "crash": return w("due.why.crash", { day });
    case "journey": return w(id === "bolts" ? "due.why.carried" : "due.why.journey", { day });
    case "fitted": return w("due.why.fitted", { day });
    case "grows": return w("due.why.grows", { day, n: number("days") });
    case "new_spokes": return w("due.why.new_spokes", { day, km: number("km") });
    case "salt": return saltWhy(String(values["pair"]), values);
  }
}

// saltWhy tells why a wash is due, or when it will be: one sentence for both places that tell it.
export function saltWhy(code: string, values: Readonly<Record<string, number | string | boolean | null>>): string {
  const grams = (name: string): string => fixed(typeof values[name] === "number" ? values[name] : 0, 1);
  const metal = (name: string): string => optionWords("rim_material", String(values[name] ?? ""));
  const amounts = { g: grams("g"), at: grams("wash_at_g") };
  if (code === "pair_not_known") return w("salt.why.pair_not_known", amounts);
  if (code === "no_pair") return w("salt.why.no_pair", amounts);
  return w("salt.why.pair", { ...amounts, anode: metal("anode"), cathode: metal("cathode"), rank: w(`salt.rank.${String(values["rank"])}` as "salt.rank.usual") });
}

export interface DueView {
  readonly lines: readonly DueLine[]; // what has a day
  readonly never: readonly DueLine[]; // what nobody ever noted
}

// dueView sets apart what nobody noted: ten such lines say one thing.
export function dueView(lines: readonly DueLine[]): DueView {
  const isNever = ({ id, why }: DueLine): boolean => why.code === "never_noted" && !isWalk(id);
  return { lines: lines.filter((line) => !isNever(line)), never: lines.filter(isNever) };
}

// dueNow are the lines that are due today.
export function dueNow({ lines }: DueView): readonly DueLine[] {
  return lines.filter(({ overdue_days: days }) => days >= 0);
}

// dueSummary is the list in a line: "sealant, front: 71 days · 4 never noted".
export function dueSummary(view: DueView): string {
  const [first] = dueNow(view);
  return facts([
    first === undefined ? "" : first.overdue_days > 0 ? w("due.line", { what: dueTitle(first), n: first.overdue_days }) : dueTitle(first),
    view.never.length === 0 ? "" : w("due.never", { n: view.never.length }),
  ]);
}

// dueReminders put each thing on its day, what is overdue on today, and name the bike; the same thing keeps its id. What nobody noted
// is one reminder.
export function dueReminders(all: readonly DueLine[], bike: string, name: string, now: number, today: string): readonly Reminder[] {
  const { lines, never } = dueView(all);
  const each = lines.map((line): Reminder => {
    const { id, due } = line;
    return { uid: `${id}.${bike}@rimside`, day: due < today ? today : due, title: w("due.ofBike", { bike: name, what: dueTitle(line) }), text: dueWhy(line, now), alarmHours: 9 };
  });
  if (never.length === 0) return each;
  const title = w("due.ofBike", { bike: name, what: w("due.never", { n: never.length }) });
  return [...each, { uid: `never.${bike}@rimside`, day: today, title, text: listed(never.map(dueTitle)), alarmHours: 9 }];
}
