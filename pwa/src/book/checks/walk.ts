// A walk-around: what is looked at, station by station, what was seen, and what that comes to.

import type { Answers, Requests } from "../../contract/contract.ts";
import type { Json } from "../../log/op/json.ts";
import { isObject } from "../pressure/answer.ts";

export const stations = ["front_wheel", "front_brake", "bar", "frame", "rear_wheel", "rear_brake"] as const satisfies readonly Ask["station"][];
export type Station = Ask["station"];

export const moments = ["start", "evening", "after", "wash_day", "crash", "arrival"] as const satisfies readonly Requests["checks"]["moment"][];
export type Moment = Requests["checks"]["moment"];

export const severities = ["note", "care", "stop"] as const satisfies readonly Ask["worst"][];
export type Severity = Ask["worst"];

export type Outcome = "nothing_found" | "ride_with_care" | "do_not_ride";

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

// Walk is what the phone keeps until the walk-around is finished.
export interface Walk {
  readonly bike: string;
  readonly moment: Moment;
  readonly check: string; // its record
  readonly started: number; // ms since 1970
  readonly asked: readonly Ask[];
  readonly seen: Readonly<Record<string, "ok" | "skipped">>; // by ask
  readonly found: Readonly<Record<string, Found>>; // by ask
}

export interface Item {
  readonly state: "ok" | "skipped" | "found";
  readonly severity?: Severity;
}

export interface Verdict {
  readonly outcome: Outcome;
  readonly looked: number;
  readonly of: number;
}

// verdictOf: a stop is never better than "do not ride"; whatever was found, or not looked at, cannot be called nothing. The calculator's
// own rule is in calc/check; one table of cases in its testdata holds both to the same answers.
export function verdictOf(items: readonly Item[]): Verdict {
  const looked = items.filter(({ state }) => state === "ok" || state === "found").length;
  const each = items.map(outcomeOf);
  const outcome = each.includes("do_not_ride") ? "do_not_ride" : each.includes("ride_with_care") || items.length === 0 ? "ride_with_care" : "nothing_found";
  return { outcome, looked, of: items.length };
}

// outcomeOf takes what it does not understand for the worse, and lets a finding count whatever the item was then called.
function outcomeOf({ state, severity }: Item): Outcome {
  if (severity === "note" || severity === "care") return "ride_with_care";
  if ((severity !== undefined && (severity as string) !== "") || state === "found") return "do_not_ride";
  return state === "ok" ? "nothing_found" : "ride_with_care";
}

// itemsOf: what nobody answered was not looked at.
export function itemsOf({ asked, seen, found }: Walk): readonly Item[] {
  return asked.map(({ id }) => {
    const finding = found[id];
    if (finding !== undefined) return { state: "found", severity: finding.severity ?? "care" };
    return { state: seen[id] ?? "skipped" };
  });
}

export function isDone({ asked, seen, found }: Walk, station: Station): boolean {
  return asked.filter((ask) => ask.station === station).every(({ id }) => seen[id] !== undefined || found[id] !== undefined);
}

// stationSeen answers for all of a station that has no answer yet.
export function stationSeen(walk: Walk, station: Station, state: "ok" | "skipped"): Walk {
  const open = walk.asked.filter(({ id, station: at }) => at === station && walk.found[id] === undefined && (state === "ok" || walk.seen[id] === undefined));
  return { ...walk, seen: { ...walk.seen, ...Object.fromEntries(open.map(({ id }) => [id, state])) } };
}

// stationOpened takes a station's answers back, but not what was found there.
export function stationOpened(walk: Walk, station: Station): Walk {
  const here = new Set(walk.asked.filter((ask) => ask.station === station).map(({ id }) => id));
  return { ...walk, seen: Object.fromEntries(Object.entries(walk.seen).filter(([id]) => !here.has(id))) };
}

export function withFound(walk: Walk, ask: string, found: Found | undefined): Walk {
  const { [ask]: _, ...others } = walk.found;
  const { [ask]: __, ...seen } = walk.seen;
  return { ...walk, seen, found: found === undefined ? others : { ...others, [ask]: found } };
}

// readAsks reads what was stored, maybe by an older version.
function readAsks(answer: unknown): readonly Ask[] {
  if (!Array.isArray(answer)) return [];
  return answer.filter(isObject).filter((each) => typeof each["id"] === "string" && stations.some((station) => station === each["station"])) as unknown as readonly Ask[];
}

// readWalk reads what was stored; undefined when it is no walk-around.
export function readWalk(stored: unknown): Walk | undefined {
  if (!isObject(stored) || typeof stored["bike"] !== "string" || typeof stored["check"] !== "string" || !isObject(stored["seen"]) || !isObject(stored["found"])) return undefined;
  if (!moments.some((moment) => moment === stored["moment"]) || typeof stored["started"] !== "number") return undefined;
  return { ...(stored as unknown as Walk), asked: readAsks(stored["asked"]) };
}

// entryItems are a walk-around's answers as its entry keeps them.
export function entryItems(walk: Walk): Json {
  const items = itemsOf(walk);
  return walk.asked.map(({ id, station, title }, n) => ({ id, station, title, state: items[n]?.state ?? "skipped", ...(items[n]?.severity && { severity: items[n]?.severity as string }) }));
}
