// An event as a whole: everything that came into the book with it or was noted of its riders. It is exported and erased by this
// one list, so that both mean the same.

import { isList, type Json, member } from "../../log/op/json.ts";
import { heads, type RecordState, valueOf } from "../../log/op/merge.ts";
import { kinds } from "../value/kinds.ts";

export interface EventWhole {
  readonly event: RecordState;
  readonly riders: number;
  readonly records: readonly RecordState[]; // with the event itself
}

// wholeOf gathers an event's riders and bikes, the wheels and tyres that nothing else uses, and every entry that names one of
// these. What was in the book before the event, and the car's own spares, are not tied to it and stay.
export function wholeOf(event: RecordState, states: readonly RecordState[]): EventWhole {
  const left = states.filter((state) => !state.erased);
  const whole = new Map<string, RecordState>([[event.rec, event]]);
  const take = (taken: readonly RecordState[]): void => taken.forEach((state) => whole.set(state.rec, state));
  const tied = left.filter((state) => (state.kind === "person" || state.kind === "bike") && names(state, "event", event.rec));
  take(tied);
  take(ownParts(left, "wheel", (state) => namedIn(state, ["front", "rear"]), whole));
  take(ownParts(left, "tyre", (state) => namedIn(state, ["tyre"]), whole));
  const entries = left.filter(isEntry);
  for (let before = -1; before !== whole.size;) {
    before = whole.size;
    take(entries.filter((state) => !whole.has(state.rec) && refsOf(state).some((rec) => whole.has(rec))));
  }
  return { event, riders: tied.filter(({ kind, deleted }) => kind === "bike" && !deleted).length, records: [...whole.values()] };
}

// ownParts are the wheels, or the tyres, that the whole uses and nothing outside it.
function ownParts(states: readonly RecordState[], kind: string, parts: (of: RecordState) => readonly string[], whole: ReadonlyMap<string, RecordState>): readonly RecordState[] {
  const users = (inside: boolean): Set<string> => new Set(states.filter(({ rec }) => whole.has(rec) === inside).flatMap(parts));
  const [ours, theirs] = [users(true), users(false)];
  const spares = new Set(states.filter(({ kind: each }) => each === "spare").flatMap((spare) => namedIn(spare, ["wheel"])));
  return states.filter((state) => state.kind === kind && ours.has(state.rec) && !theirs.has(state.rec) && !spares.has(state.rec));
}

function isEntry({ kind }: RecordState): boolean {
  return member(kinds, kind)?.is === "entry";
}

function names(state: RecordState, field: string, rec: string): boolean {
  return namedIn(state, [field]).includes(rec);
}

// namedIn are the records in these fields, conflicts included.
function namedIn(state: RecordState, fields: readonly string[]): readonly string[] {
  return fields.flatMap((field) => {
    const found = member(state.fields, field);
    if (found === undefined || heads(found).length === 0) return [];
    return [found.shown, ...found.others].flatMap(({ value }) => texts(value));
  });
}

function refsOf(state: RecordState): readonly string[] {
  return namedIn(state, Object.keys(state.fields).filter((field) => member(member(kinds, state.kind)?.fields ?? {}, field)?.type !== "text"));
}

function texts(value: Json): readonly string[] {
  if (typeof value === "string") return [value];
  return isList(value) ? value.flatMap(texts) : [];
}

// linesOf keeps the first line of the book's own copy and the ops of these records: a file that any book takes in.
export function linesOf(copy: string, records: readonly RecordState[]): string {
  const recs = new Set(records.map(({ rec }) => rec));
  const [head = "", ...lines] = copy.split("\n");
  const ours = lines.filter((line) => line !== "" && recs.has(String((JSON.parse(line) as { readonly rec?: unknown }).rec)));
  return [head, ...ours, ""].join("\n");
}

// eventName is what an event is called in lists.
export function eventName(event: RecordState): string {
  const name = valueOf(event, "name");
  return typeof name === "string" ? name : "";
}
