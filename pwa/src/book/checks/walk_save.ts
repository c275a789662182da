// A walk-around as entries of the book: the check itself and what was found. And what is still open from earlier ones.

import type { Change } from "../../log/book_log.ts";
import type { Json } from "../../log/op/json.ts";
import { type RecordState, valueOf } from "../../log/op/merge.ts";
import { dayOf } from "../wheels/measure_days.ts";
import { parse } from "../value/quantity.ts";
import { entryItems, type Found, itemsOf, type Severity, severities, type Station, verdictOf, type Walk } from "./walk.ts";

// walkChanges are the entries of a finished walk-around.
export function walkChanges(walk: Walk, wheels: Readonly<Partial<Record<"front" | "rear", string>>>, now: number): readonly Change[] {
  const day = dayOf(now);
  const check: Change = {
    rec: walk.check, kind: "check",
    set: { bike: walk.bike, moment: walk.moment, day, items: entryItems(walk), outcome: verdictOf(itemsOf(walk)).outcome, started: walk.started, done: true },
  };
  const findings = walk.asked.flatMap((ask): Change[] => {
    const found = walk.found[ask.id];
    if (found === undefined) return [];
    const side = ask.station.startsWith("front") ? "front" : ask.station.startsWith("rear") ? "rear" : undefined;
    const wheel = side === undefined ? undefined : wheels[side];
    const photos = found.photos.map(({ rec, sha256, width, height }): Change => ({ rec, kind: "photo", set: { of: found.rec, bike: walk.bike, day, sha256, width, height } }));
    return [{ rec: found.rec, kind: "finding", set: { bike: walk.bike, check: walk.check, day, item: ask.id, station: ask.station, ...(wheel !== undefined && { wheel }), ...findingFields(found, ask.title) } }, ...photos];
  });
  return [check, ...findings];
}

function findingFields(found: Found, title: string): Record<string, Json> {
  const mm = parse(found.mm, "length", "mm");
  return {
    severity: found.severity ?? "care", words: found.words.trim() || title,
    ...(found.clock > 0 && { clock: found.clock }), ...(found.side !== "" && { side: found.side }),
    ...("si" in mm && { mm: Number((mm.si * 1e3).toPrecision(12)) }),
    ...(found.photos.length > 0 && { photos: found.photos.map(({ rec }) => rec) }),
  };
}

// openFindings are what was found on a bike and not closed yet, the worst first, then the newest.
export function openFindings(findings: readonly RecordState[], closed: readonly RecordState[], bike: string | undefined): readonly RecordState[] {
  const done = new Set(closed.filter(stands).map((entry) => valueOf(entry, "finding")));
  const corrected = new Set(findings.filter(stands).map((entry) => valueOf(entry, "corrects")));
  return findings
    .filter((entry) => stands(entry) && bike !== undefined && valueOf(entry, "bike") === bike && !done.has(entry.rec) && !corrected.has(entry.rec))
    .sort((a, b) => severities.indexOf(severityOf(b)) - severities.indexOf(severityOf(a)) || b.newest - a.newest);
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

// photosOf are a finding's photo records.
export function photosOf(finding: RecordState): readonly string[] {
  const list = valueOf(finding, "photos");
  return Array.isArray(list) ? list.filter((each): each is string => typeof each === "string") : [];
}

// checksOf are a bike's walk-arounds, the newest first.
export function checksOf(checks: readonly RecordState[], bike: string | undefined): readonly RecordState[] {
  return checks.filter((entry) => stands(entry) && bike !== undefined && valueOf(entry, "bike") === bike).sort((a, b) => b.newest - a.newest);
}

// pastOf is what was looked at, found and done on a bike or on one of its wheels, the newest first.
export function pastOf(checks: readonly RecordState[], findings: readonly RecordState[], closed: readonly RecordState[], rec: string): readonly RecordState[] {
  const here = (entry: RecordState): boolean => stands(entry) && (valueOf(entry, "bike") === rec || valueOf(entry, "wheel") === rec);
  const found = findings.filter(here);
  const known = new Set(found.map((finding) => finding.rec));
  return [...checks.filter(here), ...found, ...closed.filter((entry) => stands(entry) && known.has(textOf(entry, "finding")))].sort((a, b) => b.newest - a.newest);
}

// alike are findings of the same thing at the same place of the bike, by day: to compare their photos.
export function alike(findings: readonly RecordState[], finding: RecordState): readonly RecordState[] {
  const same = (field: string) => (other: RecordState): boolean => textOf(other, field) === textOf(finding, field);
  return findings.filter((other) => stands(other) && same("bike")(other) && same("item")(other)).sort((a, b) => a.newest - b.newest);
}

export const stationOf = (finding: RecordState): Station => textOf(finding, "station") as Station;
