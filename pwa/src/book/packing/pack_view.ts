// What to pack and in which order, as the calculator lists it, with what is ticked; several people may tick one list. Out and home
// are two lists of one trip, each with its own ticks.

import type { PackAnswer } from "../../contract/contract.ts";
import { type RecordState, valueOf } from "../../log/op/merge.ts";
import { textOf } from "../checks/walk_save.ts";

export type Pack = PackAnswer;
export type Step = PackAnswer["steps"][number];
export type GoodLine = PackAnswer["goods"][number];

export const directions = ["out", "home"] as const;
export type Direction = (typeof directions)[number];

export interface Tick {
  readonly ticked: boolean;
  readonly at: number;
}

export type Ticks = ReadonlyMap<string, Tick>;

// keyOf names a step of one bike in one direction of a trip.
export function keyOf(direction: Direction, bike: string, step: string): string {
  return `${direction} ${bike} ${step}`;
}

// ticksOf: of each step the newest tick counts, whoever set it. Ticks from before there were two directions are those of the way out.
export function ticksOf(entries: readonly RecordState[], trip: string): Ticks {
  const newest = new Map<string, RecordState>();
  for (const entry of entries) {
    if (entry.deleted || entry.erased || valueOf(entry, "trip") !== trip) continue;
    const key = keyOf(valueOf(entry, "direction") === "home" ? "home" : "out", textOf(entry, "bike"), textOf(entry, "step"));
    const before = newest.get(key);
    if (before === undefined || entry.newest > before.newest || (entry.newest === before.newest && entry.rec > before.rec)) newest.set(key, entry);
  }
  return new Map([...newest].map(([key, entry]) => [key, { ticked: valueOf(entry, "ticked") === true, at: entry.newest }]));
}

// Before, a step stood once for each part that it might be about; all of those that this bike might have had count as one.
const once: Readonly<Record<string, readonly string[]>> = {
  torx_25: ["six"], lockring_tool: ["ring"], rotor_tools: ["six", "ring"], spanner_15: ["spanner"], hex_8: ["hex"], pedal_tools: ["spanner", "hex"],
};

function oldIds({ id, tool }: Step): readonly string[] {
  const [, base = "", on = ""] = /^(pedals|(?:front|rear)_rotor)(_on)?$/.exec(id) ?? [];
  return base === "" ? [] : (once[tool] ?? []).map((part) => `${base}_${part}${on}`);
}

// tickOf is how it stands with a step; undefined while nobody touched it.
export function tickOf(ticks: Ticks, direction: Direction, bike: string, step: Step): Tick | undefined {
  const own = ticks.get(keyOf(direction, bike, step.id));
  if (own !== undefined || direction === "home") return own;
  const old = oldIds(step).map((id) => ticks.get(keyOf("out", bike, id)));
  if (old.length === 0 || old.every((each) => each === undefined)) return undefined;
  return { ticked: old.every((each) => each?.ticked === true), at: Math.max(...old.map((each) => each?.at ?? 0)) };
}

export interface StepView {
  readonly key: string;
  readonly step: Step;
  readonly bike: string;
  readonly ticked: boolean;
  readonly after: Step | undefined; // what has to be done first
}

// stepViews tell of each step whether it is ticked, and what it waits for.
export function stepViews(steps: readonly Step[], bike: string, direction: Direction, ticks: Ticks): readonly StepView[] {
  const known = new Map(steps.map((step) => [step.id, step]));
  const done = (step: Step): boolean => tickOf(ticks, direction, bike, step)?.ticked === true;
  return steps.map((step) => ({
    key: keyOf(direction, bike, step.id), step, bike, ticked: done(step),
    after: step.needs.map((id) => known.get(id)).find((need) => need !== undefined && !done(need)),
  }));
}

// nextOf is the first step that can be done now.
export function nextOf(views: readonly StepView[]): StepView | undefined {
  return views.find(({ ticked, after }) => !ticked && after === undefined) ?? views.find(({ ticked }) => !ticked);
}

export interface StageView {
  readonly stage: Step["stage"];
  readonly views: readonly StepView[];
  readonly done: number;
}

// stagesOf puts the steps under their headings, in the calculator's order.
export function stagesOf(views: readonly StepView[]): readonly StageView[] {
  const stages = [...new Set(views.map(({ step }) => step.stage))];
  return stages.map((stage) => {
    const own = views.filter(({ step }) => step.stage === stage);
    return { stage, views: own, done: own.filter(({ ticked }) => ticked).length };
  });
}

export interface Progress {
  readonly done: number;
  readonly of: number;
  readonly mustLeft: number; // of steps without which the bike is not ridden
}

export function progressOf(views: readonly StepView[]): Progress {
  return { done: views.filter(({ ticked }) => ticked).length, of: views.length, mustLeft: views.filter(({ step, ticked }) => step.must && !ticked).length };
}
