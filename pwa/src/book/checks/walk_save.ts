// A walk-around as entries of the book: the check itself, what was found and what was measured. And what is still open.

import type { Change } from "../../log/book_log.ts";
import type { Json } from "../../log/op/json.ts";
import { type RecordState, valueOf } from "../../log/op/merge.ts";
import { dayOf } from "../wheels/measure_days.ts";
import { parse } from "../value/quantity.ts";
import { type Parts, rowTitle, sideOf, thingOf } from "./rows.ts";
import { type Ask, type Found, itemsOf, type Picture, type Severity, severities, type Station, type Walk } from "./walk.ts";

export type Outcome = "nothing_found" | "ride_with_care" | "do_not_ride";

// outcomes are what a walk-around came to, as the book keeps it, by the calculator's states.
export const outcomes = { stop: "do_not_ride", care: "ride_with_care", no_fault_found: "nothing_found", not_looked_at: "ride_with_care" } as const;

// begunChange notes that a walk-around was begun.
export function begunChange({ check, bike, moment, started }: Walk): Change {
  return { rec: check, kind: "check", set: { bike, moment, day: dayOf(started), started, done: false } };
}

// endedChange notes what was looked at and what that came to.
export function endedChange(walk: Walk, outcome: Outcome, now: number, shown: RecordState | undefined): Change {
  const items = itemsOf(walk).map((item) => ({ ...item }));
  const { bike, moment, started } = walk;
  return { rec: walk.check, kind: "check", set: { bike, moment, started, day: dayOf(now), items, outcome, done: true }, ...(shown && { shown }) };
}

// foundChange is a finding as an entry, filed under what it is about.
export function foundChange(walk: Walk, { id, station }: Pick<Ask, "id" | "station">, found: Found, parts: Parts, now: number, shown: RecordState | undefined): Change {
  const side = sideOf(id);
  const wheel = side === undefined ? "" : parts.wheel(side);
  const set: Record<string, Json> = {
    bike: walk.bike, thing: thingOf(id, parts), check: walk.check, item: id, station, ...(shown === undefined && { day: dayOf(now) }), ...(wheel !== "" && { wheel }),
    ...findingFields(found, rowTitle(id), shown),
  };
  const changed = Object.fromEntries(Object.entries(set).filter(([name, value]) => JSON.stringify(valueOf(shown, name) ?? null) !== JSON.stringify(value)));
  return { rec: found.rec, kind: "finding", set: changed, ...(shown && { shown }) };
}

function findingFields(found: Found, title: string, shown: RecordState | undefined): Record<string, Json> {
  const mm = parse(found.mm, "length", "mm");
  const empty = (name: string, there: boolean, value: Json): Record<string, Json> => (there ? { [name]: value } : valueOf(shown, name) === undefined ? {} : { [name]: null });
  return {
    severity: found.severity ?? "care", words: found.words.trim() || title,
    ...empty("clock", found.clock > 0, found.clock), ...empty("side", found.side !== "", found.side),
    ...("si" in mm ? { mm: Number((mm.si * 1e3).toPrecision(12)) } : empty("mm", false, null)),
    ...empty("photos", found.photos.length > 0, found.photos.map(({ rec }) => rec)),
  };
}

export function photoChange(walk: Walk, found: Found, { rec, sha256, width, height }: Picture, now: number): Change {
  return { rec, kind: "photo", set: { of: found.rec, bike: walk.bike, day: dayOf(now), sha256, width, height } };
}

// measuredChanges are a value typed at its row, as a measurement of its thing; a rotor's thickness is renewed on its wheel's page too.
export function measuredChanges(walk: Walk, { id, measure }: Ask, rec: string, mm: number, parts: Parts, now: number, find: (rec: string) => RecordState | undefined, shown: RecordState | undefined): readonly Change[] {
  const side = sideOf(id);
  const of = thingOf(id, parts);
  const wheel = side === undefined ? "" : parts.wheel(side);
  const set = { of, what: measure === "room" ? "gap" : measure, mm, day: dayOf(now), bike: walk.bike, ...(side !== undefined && { side }), ...(wheel !== "" && { wheel }) };
  const page = find(of);
  const renews = measure === "rotor_thickness" && page?.kind === "wheel" && valueOf(page, "rotor_thickness_mm") !== mm;
  return [{ rec, kind: "measure", set, ...(shown && { shown }) }, ...(renews ? [{ rec: of, kind: "wheel", set: { rotor_thickness_mm: mm }, shown: page }] : [])];
}

// millimetres reads what was typed; undefined when it is no length.
export function millimetres(text: string): number | undefined {
  const mm = parse(text, "length", "mm");
  return "si" in mm ? Number((mm.si * 1e3).toPrecision(12)) : undefined;
}

function stands(entry: RecordState): boolean {
  return !entry.deleted && !entry.erased;
}

// severityOf: what a newer app calls by another name is care.
export function severityOf(finding: RecordState): Severity {
  const value = valueOf(finding, "severity");
  return severities.find((each) => each === value) ?? "care";
}

export function textOf(entry: RecordState | undefined, field: string): string {
  const value = valueOf(entry, field);
  return typeof value === "string" ? value : "";
}

// isEnded tells a walk-around that was gone through from one that was begun.
export function isEnded(check: RecordState): boolean {
  return valueOf(check, "done") === true || textOf(check, "outcome") !== "";
}

// photosOf are a finding's photo records.
export function photosOf(finding: RecordState): readonly string[] {
  const list = valueOf(finding, "photos");
  return Array.isArray(list) ? list.filter((each): each is string => typeof each === "string") : [];
}

// pastOf is what was looked at, found and done on a bike or on one of its wheels or tyres, the newest first.
export function pastOf(checks: readonly RecordState[], findings: readonly RecordState[], closed: readonly RecordState[], rec: string): readonly RecordState[] {
  const here = (entry: RecordState): boolean => stands(entry) && ["bike", "wheel", "thing"].some((field) => valueOf(entry, field) === rec);
  const found = findings.filter(here);
  const known = new Set(found.map((finding) => finding.rec));
  const ended = checks.filter((entry) => here(entry) && isEnded(entry));
  return [...ended, ...found, ...closed.filter((entry) => stands(entry) && known.has(textOf(entry, "finding")))].sort((a, b) => b.newest - a.newest);
}

// alike are findings of the same thing at the same place, by day: to compare their photos.
export function alike(findings: readonly RecordState[], finding: RecordState): readonly RecordState[] {
  const same = (field: string) => (other: RecordState): boolean => textOf(other, field) === textOf(finding, field);
  const owner = textOf(finding, "thing") === "" ? "bike" : "thing";
  return findings.filter((other) => stands(other) && same(owner)(other) && same("item")(other)).sort((a, b) => a.newest - b.newest);
}

export const stationOf = (finding: RecordState): Station => textOf(finding, "station") as Station;
