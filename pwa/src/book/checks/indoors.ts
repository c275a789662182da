// The trainer: which wheels are marked "indoors", and which wheels they spare. Sweat counts on what is indoors only; while nothing of a
// bike is marked, it counts on all of it, the safe side.

import { type RecordState, valueOf } from "../../log/op/merge.ts";
import { type Side, sides } from "../pressure/answer.ts";
import { textOf } from "./walk_save.ts";

type Find = (rec: string) => RecordState | undefined;

export function isIndoors(thing: RecordState | undefined): boolean {
  return thing !== undefined && !thing.deleted && valueOf(thing, "indoors") === true;
}

// trainersIn are the marked wheels that stand on no bike: they go in for the ride indoors.
export function trainersIn(bikes: readonly RecordState[], wheels: readonly RecordState[]): readonly RecordState[] {
  const mounted = new Set(bikes.flatMap((bike) => sides.map((side) => textOf(bike, side))));
  return wheels.filter((wheel) => isIndoors(wheel) && valueOf(wheel, "retired") !== true && !mounted.has(wheel.rec));
}

const other = (side: Side): Side => (side === "front" ? "rear" : "front");

// fits: a wheel of which nobody said to which end it belongs may go to either.
const fits = (wheel: RecordState, side: Side): boolean => !sides.some((each) => each === textOf(wheel, "side")) || textOf(wheel, "side") === side;

// standsFor are the wheels that take a wheel's place indoors.
export function standsFor(bike: RecordState | undefined, side: Side, find: Find, trainers: readonly RecordState[]): readonly RecordState[] {
  if (isIndoors(bike) || isIndoors(find(textOf(bike, side)))) return [];
  return trainers.filter((wheel) => fits(wheel, side));
}

// isSpared tells whether sweat passes a bike's wheel by.
export function isSpared(bike: RecordState | undefined, side: Side, find: Find, trainers: readonly RecordState[] = []): boolean {
  if (isIndoors(bike) || isIndoors(find(textOf(bike, side)))) return false;
  return standsFor(bike, side, find, trainers).length > 0 || isIndoors(find(textOf(bike, other(side))));
}
