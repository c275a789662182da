// What a press in the car writes: a spare goes out, comes back, gets its place, is pumped.

import type { Change } from "../../log/book_log.ts";
import type { RecordState } from "../../log/op/merge.ts";
import { tenths } from "../pressure/sets.ts";
import { dayOf } from "../wheels/measure_days.ts";
import type { Rider, SpareBike, SpareWheel } from "./fleet.ts";
import { textIn } from "./known.ts";
import type { Loan } from "./lent.ts";

export interface Given {
  readonly rider: Rider | undefined; // undefined: a bike that is not in the book
  readonly number: string;
  readonly place: string; // where on the road, "" where nobody may know
  readonly event: string;
}

// gaveChanges say that a spare wheel is out.
export function gaveChanges(spare: SpareWheel, given: Given, newRec: () => string, now: number): readonly Change[] {
  const set = { spare: spare.rec, side: spare.hub.side, ...(spare.wheel !== undefined && { wheel: spare.wheel.rec }) };
  return [{ rec: newRec(), kind: "spare_out", set: { ...set, ...givenTo(given, now) } }];
}

// gaveBikeChanges say that a whole bike is out.
export function gaveBikeChanges({ bike }: SpareBike, given: Given, newRec: () => string, now: number): readonly Change[] {
  return [{ rec: newRec(), kind: "spare_out", set: { spare_bike: bike.rec, ...givenTo(given, now) } }];
}

function givenTo({ rider, number, place, event }: Given, now: number): Change["set"] {
  return {
    day: dayOf(now), ...(number !== "" && { number }), ...(rider !== undefined && { bike: rider.bike.rec }),
    ...(rider !== undefined && textIn(rider.bike, "rider") !== "" && { person: textIn(rider.bike, "rider") }),
    ...(place !== "" && { note: place }), ...(event !== "" && { event }),
  };
}

// backChanges say that it is in the car again.
export function backChanges(loan: Loan, newRec: () => string, now: number): readonly Change[] {
  return [{ rec: newRec(), kind: "spare_in", set: { [loan.whole ? "spare_bike" : "spare"]: loan.spare, out: loan.out, day: dayOf(now) } }];
}

// spareChanges make a wheel a spare with a name to call out and a place in the car.
export function spareChanges(wheel: RecordState, name: string, place: string, bare: boolean, newRec: () => string): readonly Change[] {
  return [{ rec: newRec(), kind: "spare", set: { wheel: wheel.rec, ...(name !== "" && { name }), ...(place !== "" && { place }), ...(bare && { bare }) } }];
}

// Pumped is what a gauge read at a spare, in kPa, how far that gauge is off, and the air round it.
export interface Pumped {
  readonly gauge: number;
  readonly error: number;
  readonly c: number;
  readonly m: number;
  readonly by: string; // the gauge's record, "" where none is named
}

// pumpedChanges say what a spare was pumped to, as any other wheel that is set: what to expect of it later follows from that.
export function pumpedChanges(spare: SpareWheel, { gauge, error, c, m, by }: Pumped, newRec: () => string, now: number): readonly Change[] {
  if (spare.wheel === undefined) return [];
  const set = { wheel: spare.wheel.rec, side: spare.hub.side, gauge_kpa: gauge, advised_kpa: gauge, kpa: tenths(Math.max(0, gauge - error)), c, m, day: dayOf(now) };
  return [{ rec: newRec(), kind: "pressure_set", set: { ...set, ...(spare.tyre !== undefined && { tyre: spare.tyre.rec }), ...(by !== "" && { gauge: by }) } }];
}
