// How far putting together has come after a journey: what `ready` is told of a trip, and which direction of it is the one to do now.

import type { RecordState } from "../../log/op/merge.ts";
import { dayOf } from "../wheels/measure_days.ts";
import { type Direction, directions, type Pack, progressOf, stepViews, tickOf, type Ticks } from "./pack_view.ts";

export interface Journey {
  readonly direction: Direction;
  readonly begun: boolean; // something was loosened
  readonly day: string; // of the last thing loosened or put back; "" for none
  readonly at: number;
  readonly mustLeft: number;
}

// journeyOf tells how it stands with one bike in one direction.
export function journeyOf(pack: Pick<Pack, "steps" | "arrival">, bike: string, direction: Direction, ticks: Ticks): Journey {
  const loosened = pack.steps.filter(({ loosens }) => loosens === true).map((step) => tickOf(ticks, direction, bike, step)).filter((tick) => tick?.ticked === true);
  const back = pack.arrival.map((step) => tickOf(ticks, direction, bike, step));
  const at = Math.max(0, ...[...loosened, ...back].map((tick) => tick?.at ?? 0));
  const { mustLeft } = progressOf(stepViews(pack.arrival, bike, direction, ticks));
  return { direction, begun: loosened.length > 0, day: at === 0 ? "" : dayOf(at), at, mustLeft };
}

export interface ArrivalEvent {
  readonly kind: "arrival";
  readonly bike: string;
  readonly trip: string;
  readonly day: string;
  readonly at: number;
  readonly must_left: number;
}

// arrivalEvents are those of a trip: an outward journey that a homeward one followed is over.
export function arrivalEvents(trip: RecordState, bike: string, packOf: (direction: Direction) => Pick<Pack, "steps" | "arrival">, ticks: Ticks): readonly ArrivalEvent[] {
  const last = directions.map((direction) => journeyOf(packOf(direction), bike, direction, ticks)).filter(({ begun }) => begun).at(-1);
  return last === undefined ? [] : [{ kind: "arrival", bike, trip: trip.rec, day: last.day, at: last.at, must_left: last.mustLeft }];
}

// directionOf is the one to do now: home once the outward arrival is finished, of every bike.
export function directionOf(outward: readonly Journey[]): Direction {
  return outward.length > 0 && outward.every(({ begun, mustLeft }) => begun && mustLeft === 0) ? "home" : "out";
}
