// A walk-around: what is looked at, station by station, and what was seen. What it comes to, the calculator says.

import type { Answers, Requests } from "../../contract/contract.ts";
import { isRow } from "./rows.ts";

export const stations = ["front_wheel", "front_brake", "bar", "frame", "rear_wheel", "rear_brake"] as const satisfies readonly Ask["station"][];
export type Station = Ask["station"];

export const moments = ["start", "evening", "after", "wash_day", "crash", "arrival"] as const satisfies readonly Requests["checks"]["moment"][];
export type Moment = Requests["checks"]["moment"];

export const severities = ["note", "care", "stop"] as const satisfies readonly Ask["worst"][];
export type Severity = Ask["worst"];

// Ask is one thing to look at, as the calculator lists it for this bike and moment.
export type Ask = Answers["checks"][number];

// Found is a finding as it is being written.
export interface Found {
  readonly rec: string; // its record
  readonly severity: Severity | undefined;
  readonly words: string;
  readonly clock: number; // 1 to 12 on the wheel; 0 for no place
  readonly side: "" | "left" | "right";
  readonly mm: string; // what was measured, as typed
  readonly photos: readonly Picture[];
}

// Picture is a photo as it is kept on this phone.
export interface Picture {
  readonly rec: string; // its record
  readonly sha256: string;
  readonly width: number; // pixels
  readonly height: number;
}

// Value is what was measured at a row, as typed, and how bad it is; "fine" within its limits, "" while it cannot be read.
export interface Value {
  readonly rec: string; // the record of the measurement
  readonly text: string;
  readonly verdict: "" | "fine" | "care" | "stop";
}

// Walk is what the phone keeps of a walk-around until it is ended: one for each bike and moment.
export interface Walk {
  readonly bike: string;
  readonly moment: Moment;
  readonly check: string; // its record
  readonly started: number; // ms since 1970
  readonly asked: readonly Ask[]; // both levels
  readonly seen: Readonly<Record<string, "ok" | "skipped">>; // by ask
  readonly found: Readonly<Record<string, Found>>; // by ask
  readonly values: Readonly<Record<string, Value>>; // by ask
  readonly opened: readonly Station[]; // where the rest was unfolded
}

export const walkDraft = (bike: string, moment: Moment): string => `walk/${bike}/${moment}`;

export interface Item {
  readonly id: string;
  readonly station: Station;
  readonly state: "ok" | "skipped" | "found";
  readonly severity?: Severity;
}

// isAsked: the first level is asked always, the rest where somebody unfolded it. What was answered stays asked.
export function isAsked({ seen, found, values, opened }: Walk, { id, group, station }: Ask): boolean {
  return group === "first" || opened.includes(station) || seen[id] !== undefined || found[id] !== undefined || values[id] !== undefined;
}

export function askedNow(walk: Walk): readonly Ask[] {
  return walk.asked.filter((ask) => isAsked(walk, ask));
}

// itemsOf: what nobody answered was not looked at.
export function itemsOf(walk: Walk): readonly Item[] {
  return askedNow(walk).map(({ id, station }): Item => {
    const bad = worstAt(walk, id);
    if (bad !== undefined) return { id, station, state: "found", severity: bad };
    return { id, station, state: walk.values[id]?.verdict === "fine" ? "ok" : (walk.seen[id] ?? "skipped") };
  });
}

// worstAt is how bad it is at a row: a measured value sets the least, which no finding talks down.
export function worstAt({ found, values }: Walk, id: string): Severity | undefined {
  const measured = values[id]?.verdict;
  const finding = found[id];
  const of = [...(finding === undefined ? [] : [finding.severity ?? "care"]), ...(measured === "care" || measured === "stop" ? [measured] : [])];
  return severities.toReversed().find((each) => of.includes(each));
}

export function countOf(items: readonly Item[]): { readonly asked: number; readonly looked: number } {
  return { asked: items.length, looked: items.filter(({ state }) => state !== "skipped").length };
}

// stationsOf are the stations where something is asked, in walking order.
export function stationsOf(walk: Walk): readonly Station[] {
  return stations.filter((station) => walk.asked.some((ask) => ask.station === station));
}

export function isDone(walk: Walk, station: Station): boolean {
  return askedNow(walk).filter((ask) => ask.station === station).every(({ id }) => walk.seen[id] !== undefined || worstAt(walk, id) !== undefined || walk.values[id]?.verdict === "fine");
}

// stationSeen answers for all rows of a station that have no answer yet; a row that was skipped stays skipped.
export function stationSeen(walk: Walk, station: Station, state: "ok" | "skipped"): Walk {
  const open = askedNow(walk).filter(({ id, station: at }) => at === station && walk.found[id] === undefined && walk.seen[id] === undefined);
  return { ...walk, seen: { ...walk.seen, ...Object.fromEntries(open.map(({ id }) => [id, state])) } };
}

// rowSkipped leaves a row out, or takes that back.
export function rowSkipped(walk: Walk, id: string): Walk {
  const { [id]: before, ...seen } = walk.seen;
  return { ...walk, seen: before === "skipped" ? seen : { ...seen, [id]: "skipped" } };
}

// stationOpened takes a station's answers back, but not what was found or measured there.
export function stationOpened(walk: Walk, station: Station): Walk {
  const here = new Set<string>(walk.asked.filter((ask) => ask.station === station).map(({ id }) => id));
  const opened = walk.asked.some((ask) => ask.station === station && ask.group === "rest" && walk.seen[ask.id] !== undefined) ? [...new Set([...walk.opened, station])] : walk.opened;
  return { ...walk, opened, seen: Object.fromEntries(Object.entries(walk.seen).filter(([id]) => !here.has(id))) };
}

export function restOpened(walk: Walk, station: Station): Walk {
  return { ...walk, opened: [...new Set([...walk.opened, station])] };
}

export function withFound(walk: Walk, ask: string, found: Found | undefined): Walk {
  const { [ask]: _, ...others } = walk.found;
  const { [ask]: __, ...seen } = walk.seen;
  return { ...walk, seen, found: found === undefined ? others : { ...others, [ask]: found } };
}

export function withValue(walk: Walk, ask: string, value: Value | undefined): Walk {
  const { [ask]: _, ...others } = walk.values;
  const { [ask]: __, ...seen } = walk.seen;
  return { ...walk, seen, values: value === undefined ? others : { ...others, [ask]: value } };
}

// readWalk reads what was stored, by this or an older app; undefined when it is no walk-around.
export function readWalk(stored: unknown): Walk | undefined {
  if (typeof stored !== "object" || stored === null) return undefined;
  const walk = stored as Partial<Walk>;
  if (typeof walk.bike !== "string" || typeof walk.check !== "string" || typeof walk.seen !== "object" || typeof walk.found !== "object") return undefined;
  if (!moments.some((moment) => moment === walk.moment) || typeof walk.started !== "number" || !Array.isArray(walk.asked)) return undefined;
  return { ...(walk as Walk), asked: readAsks(walk.asked), values: walk.values ?? {}, opened: walk.opened ?? [] };
}

// readAsks takes the rows that have words here. An older app kept them without a group: they were all asked.
function readAsks(stored: readonly unknown[]): readonly Ask[] {
  const plain = { group: "first", limit: null, care: null, source: "practice" } as const;
  return stored.flatMap((each): Ask[] => {
    const ask = each as Partial<Ask> | null;
    if (typeof ask?.id !== "string" || !isRow(ask.id) || !stations.some((station) => station === ask.station)) return [];
    return [ask.group === undefined ? { ...(ask as Ask), ...plain, measure: null } : (ask as Ask)];
  });
}

// renewed takes what the calculator says of the rows now, where it asks them still.
export function renewed(walk: Walk, asked: readonly Ask[]): Walk {
  const now = new Map<string, Ask>(asked.map((ask) => [ask.id, ask]));
  const kept = walk.asked.map((ask) => ({ ...(now.get(ask.id) ?? ask), group: ask.group }));
  return { ...walk, asked: kept };
}
