// What was noted in the book, as the events that decide whether a bike may be ridden. What belongs to a wheel or tyre is filed under it
// and goes where it goes; old books, which filed by bike and side, lose nothing.

import type { Requests } from "../../contract/contract.ts";
import { readyFields as fields } from "../../contract/ready_fields.ts";
import { type RecordState, valueOf } from "../../log/op/merge.ts";
import { type Side, sides } from "../pressure/answer.ts";
import { chosen } from "../value/choice.ts";
import { dayOf } from "../wheels/measure_days.ts";
import { alsoOfBike, partsOf, sideOf, thingOf } from "./rows.ts";
import { isEnded, severityOf, textOf } from "./walk_save.ts";

export type ReadyEvent = NonNullable<Requests["ready"]["events"]>[number];

// readyKinds are the records that the events are made of.
export const readyKinds = ["bike", "wheel", "tyre", "finding", "finding_closed", "check", "measure", "service", "trip"] as const;
export type ReadyLists = Readonly<Record<(typeof readyKinds)[number], readonly RecordState[]>>;

// Events are filed by the record that they belong to.
export type Events = ReadonlyMap<string, readonly ReadyEvent[]>;

// eventsIn files all events of the book.
export function eventsIn(lists: ReadyLists): Events {
  const known = new Map([...lists.bike, ...lists.wheel, ...lists.tyre].map((state) => [state.rec, state]));
  const files = new Map<string, ReadyEvent[]>();
  const file = (under: string, event: ReadyEvent): void => {
    const file = files.get(under);
    if (file === undefined) files.set(under, [event]);
    else file.push(event);
  };
  const each = (kind: keyof ReadyLists, take: (entry: RecordState, when: When) => void): void => {
    for (const entry of lists[kind]) take(entry, { day: textOf(entry, "day") || dayOf(entry.newest), at: entry.newest });
  };
  openFound(lists, known, file);
  each("measure", (entry, when) => measured(entry, when, known, file));
  each("service", (entry, when) => served(entry, when, known, file));
  each("check", (entry, when) => walked(entry, when, file));
  for (const trip of lists.trip) travelled(trip, file);
  const entered = new Set(lists.measure.filter((entry) => valueOf(entry, "what") === "rotor_thickness").map((entry) => `${textOf(entry, "of")} ${String(valueOf(entry, "mm"))}`));
  for (const state of known.values()) {
    mounted(state, known, file);
    if (!entered.has(`${state.rec} ${String(valueOf(state, "rotor_thickness_mm"))}`)) typedThickness(state, file);
  }
  return files;
}

interface When { readonly day: string; readonly at: number }
type Known = ReadonlyMap<string, RecordState>;
type File = (under: string, event: ReadyEvent) => void;

const momentsOf = (state: RecordState, field: string): number => state.fields[field]?.shown.at ?? 0;

// openFound files the findings that nobody closed or corrected; a closed one says nothing any more.
function openFound(lists: ReadyLists, known: Known, file: File): void {
  const closed = new Set(lists.finding_closed.map((entry) => valueOf(entry, "finding")));
  const corrected = new Set(lists.finding.map((entry) => valueOf(entry, "corrects")));
  for (const entry of lists.finding) {
    if (closed.has(entry.rec) || corrected.has(entry.rec)) continue;
    const item = textOf(entry, "item");
    const day = textOf(entry, "day") || dayOf(entry.newest);
    const event = { kind: "finding", id: entry.rec, day, at: entry.newest, severity: severityOf(entry), ...(item !== "" && { item }) } as const;
    const bike = textOf(entry, "bike");
    const thing = textOf(entry, "thing") || wasOf(entry, item, bike, known);
    file(thing, { ...event, thing });
    if (alsoOfBike(item) && bike !== "" && bike !== thing) file(bike, { ...event, thing: bike });
  }
}

// wasOf is the thing of a finding by bike and side: what an old book says of the wheel, else what stands there now.
function wasOf(entry: RecordState, item: string, bike: string, known: Known): string {
  const state = known.get(bike);
  const wheel = textOf(entry, "wheel");
  const now = state === undefined ? { bike, wheel: () => "", tyre: () => "" } : partsOf(state, (rec) => known.get(rec));
  if (item === "") return wheel || bike;
  return thingOf(item, { bike, wheel: (side) => wheel || now.wheel(side), tyre: (side) => textOf(known.get(wheel || now.wheel(side)), "tyre") });
}

const measures = ["rotor_thickness", "rotor_runout", "rim_runout", "pads", "rim_wall"] as const;

function measured(entry: RecordState, when: When, known: Known, file: File): void {
  const what = chosen([...measures, "gap"] as const, valueOf(entry, "what"));
  const mm = valueOf(entry, "mm");
  if (what === undefined || typeof mm !== "number") return;
  const side = sideIn(entry);
  const thing = textOf(entry, "of") || onBike(textOf(entry, "bike"), side, "wheel", when.at, known);
  if (thing !== "") file(thing, { kind: "measured", thing, what: what === "gap" ? "room" : what, mm, ...when, ...(side !== undefined && { side }) });
}

function served(entry: RecordState, when: When, known: Known, file: File): void {
  const what = textOf(entry, "what");
  const bike = textOf(entry, "bike");
  const side = sideIn(entry) ?? sides.find((each) => what.endsWith(`_${each}`));
  const isOfWheel = what.startsWith("rotor") || what.startsWith("spokes") || what.startsWith("built");
  const thing = textOf(entry, "of") || (isOfWheel ? onBike(bike, side, "wheel", when.at, known) : "") || bike;
  if (what !== "" && thing !== "") file(thing, { kind: "service", thing, what: what, ...when, ...(side !== undefined && { side }) });
}

// onBike is the wheel at a side of a bike, where it has certainly been there since before that moment.
function onBike(bike: string, side: Side | undefined, part: "wheel", at: number, known: Known): string {
  const state = known.get(bike);
  return part === "wheel" && state !== undefined && side !== undefined && momentsOf(state, side) <= at ? textOf(state, side) : "";
}

function sideIn(entry: RecordState): Side | undefined {
  return chosen(sides, valueOf(entry, "side")) ?? sideOf(textOf(entry, "station"));
}

// walked files a walk-around. One after a crash, or on arrival, that was begun and not ended tells of the crash or the journey as well.
function walked(entry: RecordState, when: When, file: File): void {
  const moment = chosen(fields["events.*.moment"].choices, valueOf(entry, "moment"));
  const bike = textOf(entry, "bike");
  if (moment === undefined || bike === "") return;
  const items = valueOf(entry, "items");
  const states = Array.isArray(items) ? items.map((item) => (item as { readonly state?: unknown } | null)?.state) : [];
  const most = fields["events.*.asked"].max;
  const looked = states.filter((state) => state === "ok" || state === "found").length;
  const ended = isEnded(entry);
  file(bike, { kind: "walk", bike, moment, ...when, asked: Math.min(most, states.length), looked: Math.min(most, looked), ended });
  const started = valueOf(entry, "started");
  if (ended || (moment !== "crash" && moment !== "arrival")) return;
  const at = typeof started === "number" ? started : when.at;
  file(bike, { kind: moment === "crash" ? "crash" : "journey", bike, day: dayOf(at), at });
}

// travelled files the journeys of a trip, each from the first moment of the day on which the bike arrives.
function travelled(trip: RecordState, file: File): void {
  const bikes = valueOf(trip, "bikes");
  const days = [textOf(trip, "arrives") || textOf(trip, "from"), textOf(trip, "home_arrives") || textOf(trip, "to")];
  for (const bike of Array.isArray(bikes) ? bikes : []) {
    if (typeof bike !== "string") continue;
    for (const day of new Set(days.filter((each) => each !== ""))) file(bike, { kind: "journey", bike, day, at: Math.max(1, new Date(`${day}T00:00`).getTime()) });
  }
}

// mounted files since when a wheel is on its bike, and a tyre on its wheel.
function mounted(state: RecordState, known: Known, file: File): void {
  for (const field of state.kind === "bike" ? sides : state.kind === "wheel" ? ["tyre"] : []) {
    const thing = textOf(state, field);
    const at = momentsOf(state, field);
    if (thing !== "" && known.has(thing) && at > 0) file(thing, { kind: "mounted", thing, day: dayOf(at), at });
  }
}

// typedThickness: the thickness of a rotor, typed on its wheel's page, is a measured value too.
function typedThickness(state: RecordState, file: File): void {
  const mm = valueOf(state, "rotor_thickness_mm");
  const at = momentsOf(state, "rotor_thickness_mm");
  if (state.kind === "wheel" && typeof mm === "number" && at > 0) file(state.rec, { kind: "measured", thing: state.rec, what: "rotor_thickness", mm, day: dayOf(at), at });
}

const mostWalks = 300; // the newest; more would not fit into a question

// eventsOf are the events of some things: a bike with what is mounted on it, or a wheel with its tyre.
export function eventsOf(events: Events, things: readonly string[]): readonly ReadyEvent[] {
  const all = things.flatMap((thing) => events.get(thing) ?? []);
  if (all.length <= fields.events.max) return all;
  const walks = all.filter(({ kind }) => kind === "walk").sort((a, b) => (a.day < b.day ? 1 : -1));
  const kept = new Set(walks.slice(0, mostWalks));
  const since = walks[mostWalks]?.day ?? "";
  // What a walk-around that is left out may have answered is left out with it.
  return all.filter((each) => (each.kind === "walk" ? kept.has(each) : each.kind !== "journey" || each.day > since)).slice(-fields.events.max);
}
