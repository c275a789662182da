// Whole bikes on the roof: the question which comes nearest to a rider's own, and its answer in words. What was measured as built
// decides.

import type { BikeMatchAnswer, BikeMatchRequest } from "../../contract/contract.ts";
import type { RecordState } from "../../log/op/merge.ts";
import { listed, w } from "../../words/index.ts";
import { plain } from "../../words/number.ts";
import { clockWords } from "../value/when.ts";
import { newestMeasure } from "../wheels/measure.ts";
import type { Rider, SpareBike } from "./fleet.ts";
import { textIn } from "./known.ts";

export type BikeVerdict = BikeMatchAnswer[number];
type Build = BikeMatchRequest["bike"];
type Reason = BikeVerdict["reasons"][number];

export interface BikeLine {
  readonly rec: string;
  readonly spare: string;
  readonly place: string;
  readonly name: string; // with its place
  readonly change: string;
  readonly can: boolean;
}

// bikeMatchRequest asks for one rider; for a bike that is not in the book, of which nothing is known, without one. Stopped says
// which spare bikes may not be ridden.
export function bikeMatchRequest(rider: Rider | undefined, bikes: readonly SpareBike[], measures: readonly RecordState[], stopped: ReadonlySet<string>): BikeMatchRequest {
  return {
    bike: rider === undefined ? {} : buildOf(rider.bike, measures),
    spares: bikes.map(({ bike, loan }) => ({
      id: bike.rec, ...buildOf(bike, measures), ...(loan !== undefined && { out_with: loan.number || "?" }), ...(stopped.has(bike.rec) && { state: "stop" as const }),
    })),
  };
}

function buildOf(bike: RecordState, measures: readonly RecordState[]): Build {
  const mm = (place: string): number => {
    const found = newestMeasure(measures, bike.rec, "as_built", undefined, place);
    return found?.field === "mm" ? found.value : 0;
  };
  const [saddle, reach, cleat, pedals] = [mm("saddle_height"), mm("reach"), textIn(bike, "cleat").trim().toLowerCase(), textIn(bike, "pedals")];
  return {
    ...(saddle >= 1 && { saddle_mm: saddle }), ...(reach >= 1 && { reach_mm: reach }), ...(cleat !== "" && { cleat }),
    ...((pedals === "hex" || pedals === "spanner" || pedals === "none") && { pedals }),
  };
}

// bikeLines words an answer; own is what was asked of the rider's own bike.
export function bikeLines(verdicts: readonly BikeVerdict[], own: Build, bikes: readonly SpareBike[], now: number): readonly BikeLine[] {
  const by = new Map(bikes.map((spare) => [spare.bike.rec, spare]));
  return verdicts.flatMap((verdict) => {
    const spare = by.get(verdict.id);
    return spare === undefined ? [] : [{
      rec: verdict.id, spare: spare.name, place: spare.place, name: spare.place === "" ? spare.name : w("car.named", { spare: spare.name, place: spare.place }),
      change: verdictWords(verdict, own, spare, now), can: verdict.fits !== "no",
    }];
  });
}

function verdictWords({ fits, minutes, reasons }: BikeVerdict, own: Build, spare: SpareBike, now: number): string {
  const set = reasons.some(({ code }) => code === "saddle" || code === "saddle_by_eye");
  const stays = fits === "no" || set || own.saddle_mm === undefined ? "" : w("spareBike.saddleStays", { mm: plain(own.saddle_mm) });
  const why = listed([stays, ...reasons.map((reason) => reasonWords(reason, spare, now))]);
  switch (fits) {
    case "no": return w("car.no", { why });
    case "yes": return w("spareBike.asItIs", { why });
    case "with_change": return minutes > 0 ? w("car.changeIn", { why, minutes: plain(Math.ceil(minutes)) }) : w("car.change", { why });
  }
}

function reasonWords({ code, values }: Reason, { loan }: SpareBike, now: number): string {
  const [bike, have] = [Number(values["bike"] ?? 0), Number(values["spare"] ?? 0)];
  switch (code) {
    case "out": return loan === undefined || loan.number === "" ? w("carWhy.outUnknown") : w("carWhy.out", { number: loan.number, clock: clockWords(loan.at, now) });
    case "stopped": return w("carWhy.stopped");
    case "saddle": return w("spareBike.saddle", { mm: plain(bike) });
    case "saddle_by_eye": return w("spareBike.saddleAsk");
    case "longer": return w("spareBike.longer", { mm: plain(have - bike) });
    case "shorter": return w("spareBike.shorter", { mm: plain(bike - have) });
    case "reach_by_eye": return w("spareBike.reachUnknown");
    case "pedals": return pedalWords(String(values["what"] ?? ""));
  }
}

// Pedals come over from the rider's bike.
function pedalWords(tool: string): string {
  switch (tool) {
    case "hex": return w("spareBike.pedalsHex");
    case "spanner": return w("spareBike.pedalsSpanner");
    case "both": return w("spareBike.pedalsBoth");
    default: return w("spareBike.pedals");
  }
}
