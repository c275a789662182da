// Whole bikes on the roof: which comes nearest to a rider's own, and what to change on it. What was measured as built decides.

import { type RecordState, valueOf } from "../../log/op/merge.ts";
import { listed, w } from "../../words/index.ts";
import { plain } from "../../words/number.ts";
import { newestMeasure } from "../wheels/measure.ts";
import type { Rider, SpareBike } from "./fleet.ts";
import { textIn } from "./known.ts";

interface Shape {
  readonly saddle: number | undefined; // mm
  readonly reach: number | undefined;
}

export interface BikeLine {
  readonly rec: string;
  readonly name: string;
  readonly change: string;
}

const saddleSlack = 1; // mm: nearer than this nobody can set it at the roadside (our choice)
const reachWeight = 2; // reach takes another stem, a saddle's height one screw (our choice)

function shapeOf(bike: RecordState, measures: readonly RecordState[]): Shape {
  const value = (place: string): number | undefined => newestMeasure(measures, bike.rec, "as_built", undefined, place)?.value;
  return { saddle: value("saddle_height"), reach: value("reach") };
}

// bikeLines are the spare bikes for one rider, the nearest first. One of which less is known stands behind: it has to be tried.
export function bikeLines(rider: Rider, bikes: readonly SpareBike[], measures: readonly RecordState[], stopped: ReadonlySet<string>): readonly BikeLine[] {
  const own = shapeOf(rider.bike, measures);
  return bikes.filter(({ bike }) => !stopped.has(bike.rec)).map((spare) => ({ spare, shape: shapeOf(spare.bike, measures) }))
    .sort((a, b) => unknowns(own, a.shape) - unknowns(own, b.shape) || distance(own, a.shape) - distance(own, b.shape) || (a.spare.bike.rec < b.spare.bike.rec ? -1 : 1))
    .map(({ spare, shape }) => ({
      rec: spare.bike.rec, name: spare.place === "" ? spare.name : w("car.named", { spare: spare.name, place: spare.place }), change: changeWords(own, shape, spare.bike),
    }));
}

function apart(a: number | undefined, b: number | undefined): number | undefined {
  return a === undefined || b === undefined ? undefined : Math.abs(a - b);
}

function unknowns(own: Shape, { saddle, reach }: Shape): number {
  return [apart(own.saddle, saddle), apart(own.reach, reach)].filter((each) => each === undefined).length;
}

function distance(own: Shape, { saddle, reach }: Shape): number {
  return (apart(own.saddle, saddle) ?? 0) + reachWeight * (apart(own.reach, reach) ?? 0);
}

function changeWords(own: Shape, spare: Shape, bike: RecordState): string {
  return listed([saddleWords(own.saddle, spare.saddle), reachWords(own.reach, spare.reach), pedalWords(bike)]);
}

function saddleWords(own: number | undefined, spare: number | undefined): string {
  if (own === undefined) return w("spareBike.saddleAsk");
  const off = apart(own, spare);
  return off !== undefined && off <= saddleSlack ? w("spareBike.saddleStays", { mm: plain(own) }) : w("spareBike.saddle", { mm: plain(own) });
}

function reachWords(own: number | undefined, spare: number | undefined): string {
  if (own === undefined || spare === undefined) return w("spareBike.reachUnknown");
  if (Math.abs(own - spare) <= saddleSlack) return "";
  return w(spare > own ? "spareBike.longer" : "spareBike.shorter", { mm: plain(Math.abs(own - spare)) });
}

// Pedals come over from the rider's bike, with the tool that the spare's own take.
function pedalWords(bike: RecordState): string {
  const tool = textIn(bike, "pedals");
  if (valueOf(bike, "pedals") === undefined || tool === "none") return w("spareBike.pedals");
  return tool === "hex" ? w("spareBike.pedalsHex") : w("spareBike.pedalsSpanner");
}
