// Erasing a person: what goes with them, because it names them or tells what they weigh, and what somebody has to decide.

import type { Change } from "../../log/book_log.ts";
import { isList, isObject, type Json, member } from "../../log/op/json.ts";
import { type RecordState, heads, valueOf } from "../../log/op/merge.ts";
import type { Op } from "../../log/op/op.ts";
import { kinds } from "../value/kinds.ts";

// Offer is what may go too; ticked where it most likely should.
export interface Offer {
  readonly key: string;
  readonly why: "loads" | "former" | "named";
  readonly about: RecordState; // a bike, or the record that names them
  readonly gone: readonly RecordState[]; // what goes when it is ticked
  readonly ticked: boolean;
}

export interface ErasePlan {
  readonly person: RecordState;
  readonly entries: readonly RecordState[]; // they go with the person
  readonly offers: readonly Offer[];
  readonly ridden: readonly RecordState[]; // bikes whose rider it is now
}

// erasePlan looks through all records and everything that was ever written: history keeps what no longer shows.
export function erasePlan(person: RecordState, states: readonly RecordState[], ops: readonly Op[]): ErasePlan {
  const past = pastOf(person.rec, ops);
  const left = states.filter((state) => !state.erased && state.rec !== person.rec);
  const bikes = left.filter(({ kind }) => kind === "bike");
  const ridden = bikes.filter((bike) => saysNow(bike, "rider", person.rec));
  const former = bikes.filter((bike) => past.rode.has(bike.rec) && !ridden.includes(bike));
  const entries = withPhotos(left.filter((state) => isEntry(state) && (past.named.has(state.rec) || isOf(state, ridden))), left);
  const gone = new Set(entries.map(({ rec }) => rec));
  const offers: Offer[] = [];
  for (const bike of ridden) if (past.loaded.has(bike.rec)) offers.push({ key: bike.rec, why: "loads", about: bike, gone: [bike], ticked: true });
  for (const bike of former) {
    const all = withPhotos(left.filter((state) => isEntry(state) && isOf(state, [bike])), left).filter(({ rec }) => !gone.has(rec));
    const more = past.loaded.has(bike.rec) ? [bike] : [];
    if (all.length + more.length > 0) offers.push({ key: bike.rec, why: "former", about: bike, gone: [...more, ...all], ticked: false });
  }
  const words = wordsOf(past.names);
  const telling = words === undefined ? new Set<string>() : tellingOf(words, ops);
  for (const state of left) {
    if (!telling.has(state.rec) || gone.has(state.rec) || offers.some(({ key }) => key === state.rec) || isShutOut(state)) continue;
    offers.push({ key: state.rec, why: "named", about: state, gone: [state], ticked: false });
  }
  return { person, entries, offers, ridden: ridden.filter((bike) => !bike.deleted && valueOf(bike, "rider") === person.rec) };
}

export interface Erasing {
  readonly gone: readonly RecordState[];
  readonly changes: readonly Change[];
}

// erasing is the one action: what goes for good, and the bikes that lose their rider.
export function erasing({ person, entries, offers, ridden }: ErasePlan, isTicked: (offer: Offer) => boolean): Erasing {
  const all = [person, ...entries, ...offers.filter(isTicked).flatMap(({ gone }) => gone)].filter((state) => !state.erased);
  const gone = new Map(all.map((state) => [state.rec, state]));
  const changes = ridden.filter(({ rec }) => !gone.has(rec)).map((bike): Change => ({ rec: bike.rec, kind: bike.kind, set: { rider: null }, shown: bike }));
  return { gone: [...gone.values()], changes };
}

interface Past {
  readonly names: readonly string[]; // that the person ever had
  readonly named: ReadonlySet<string>; // records that ever pointed to them, bikes left out
  readonly rode: ReadonlySet<string>; // bikes whose rider they ever were
  readonly loaded: ReadonlySet<string>; // bikes that ever held what a scale read under a wheel
}

const loads = ["front_load_kg", "rear_load_kg"];

function pastOf(person: string, ops: readonly Op[]): Past {
  const names: string[] = [];
  const [named, rode, loaded] = [new Set<string>(), new Set<string>(), new Set<string>()];
  for (const { rec, kind, set } of ops) {
    const name = member(set, "name");
    if (rec === person && typeof name === "string") names.push(name);
    if (member(set, "person") === person || member(set, "of") === person) named.add(rec);
    if (kind !== "bike") continue;
    if (member(set, "rider") === person) rode.add(rec);
    if (loads.some((field) => typeof member(set, field) === "number")) loaded.add(rec);
  }
  return { names, named, rode, loaded };
}

function isEntry({ kind }: RecordState): boolean {
  return member(kinds, kind)?.is === "entry";
}

function saysNow(state: RecordState, field: string, rec: string): boolean {
  const found = member(state.fields, field);
  return found !== undefined && heads(found).length > 0 && [found.shown, ...found.others].some(({ value }) => value === rec);
}

// isOf: what was noted, set or weighed on these bikes tells of whoever rides them.
function isOf(state: RecordState, bikes: readonly RecordState[]): boolean {
  const weighed = state.kind === "measure" && valueOf(state, "what") === "load";
  if (state.kind !== "note" && state.kind !== "pressure_set" && !weighed) return false;
  return bikes.some((bike) => {
    const parts = [bike.rec, valueOf(bike, "front"), valueOf(bike, "rear")];
    return saysNow(state, "bike", bike.rec) || (weighed && parts.some((rec) => typeof rec === "string" && saysNow(state, "of", rec)));
  });
}

function withPhotos(entries: readonly RecordState[], all: readonly RecordState[]): readonly RecordState[] {
  const recs = new Set(entries.map(({ rec }) => rec));
  const photos = all.filter((state) => state.kind === "photo" && !recs.has(state.rec) && recs.has(String(valueOf(state, "of"))));
  return [...entries, ...photos];
}

const least = 3; // letters: a shorter word stands in many texts that mean something else

// wordsOf finds the names, whole or in part, as words of their own; undefined when they are too short to look for.
function wordsOf(names: readonly string[]): RegExp | undefined {
  const words = new Set(names.flatMap((name) => [name.trim(), ...name.split(/[^\p{L}\p{M}\p{N}]+/u)]).filter((word) => (word.match(/\p{L}/gu)?.length ?? 0) >= least));
  if (words.size === 0) return undefined;
  const any = [...words].map((word) => word.replace(/[\\^$.*+?()[\]{}|/-]/g, "\\$&")).join("|");
  return new RegExp(`(?<![\\p{L}\\p{M}\\p{N}])(?:${any})(?![\\p{L}\\p{M}\\p{N}])`, "iu");
}

function tellingOf(words: RegExp, ops: readonly Op[]): ReadonlySet<string> {
  return new Set(ops.filter(({ set }) => tells(words, set)).map(({ rec }) => rec));
}

function tells(words: RegExp, value: Json): boolean {
  if (typeof value === "string") return words.test(value);
  if (isList(value)) return value.some((each) => tells(words, each));
  return isObject(value) && Object.values(value).some((each) => tells(words, each));
}

// A phone that was shut out must stay so, and only its record says it.
function isShutOut(state: RecordState): boolean {
  return state.kind === "device" && valueOf(state, "revoked") === true;
}

// opsIn reads all ops out of the book's own copy of itself.
export function opsIn(copy: string): readonly Op[] {
  return copy.split("\n").slice(1).filter((line) => line !== "").map((line) => JSON.parse(line) as Op);
}
