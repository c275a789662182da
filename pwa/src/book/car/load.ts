// Which wheels to take along: the question, and its answer in words.

import type { CoverAnswer, CoverRequest } from "../../contract/contract.ts";
import { w } from "../../words/index.ts";
import type { Fleet, Rider, SpareWheel } from "./fleet.ts";
import { reasonsWords, spareRequest, type Verdict } from "./match.ts";

// Leaders count for more.
export const weights: readonly number[] = [1, 2, 5];

// steps are the efforts of the search, one question after the other, until one is proved the best or the person stops.
export const steps: readonly number[] = [0, 20_000, 200_000, 2_000_000, 10_000_000];

export function coverRequest({ riders, spares }: Fleet, stopped: ReadonlySet<string>, weightOf: (rider: Rider) => number, places: number, effort: number): CoverRequest {
  return {
    bikes: riders.map((rider) => ({ id: rider.bike.rec, weight: weightOf(rider), front: rider.ends.front, rear: rider.ends.rear })),
    wheels: spares.map((spare) => spareRequest(spare, stopped)), places, steps: effort,
  };
}

export interface LoadView {
  readonly wheels: readonly { readonly rec: string; readonly name: string; readonly place: string }[];
  readonly sum: string;
  readonly left: readonly { readonly key: string; readonly rider: string; readonly why: string }[];
}

// State is how the search stands: proved, still looking, or stopped.
export type State = "exact" | "looking" | "stopped";

export function loadView(load: CoverAnswer, state: State, { riders, spares }: Fleet, now: number): LoadView {
  const by = new Map(spares.map((spare) => [spare.rec, spare]));
  const rider = new Map(riders.map((each) => [each.bike.rec, each]));
  const ends = load.covered.length + load.uncovered.length;
  return {
    wheels: load.pick.flatMap((rec) => {
      const spare = by.get(rec);
      return spare === undefined ? [] : [{ rec, name: spare.name, place: spare.place }];
    }),
    sum: sumWords(state, load.covered.length, ends),
    left: load.uncovered.map(({ bike, side, why, change }) => ({
      key: `${bike} ${side}`, rider: w("load.end", { who: whoWords(rider.get(bike)), side: w(`side.${side}`) }), why: leftWords(why, change, by, now),
    })),
  };
}

function sumWords(state: State, n: number, of: number): string {
  switch (state) {
    case "exact": return w("load.exact", { n, of });
    case "looking": return w("load.soFar", { n, of });
    case "stopped": return w("load.stopped", { n, of });
  }
}

export function whoWords(rider: Rider | undefined): string {
  if (rider === undefined) return "";
  if (rider.number === "") return rider.name || rider.bikeName;
  return rider.name === "" ? rider.number : w("car.who", { number: rider.number, name: rider.name });
}

function leftWords(why: "no_wheel" | "no_place", change: Verdict | null, by: ReadonlyMap<string, SpareWheel>, now: number): string {
  const spare = change === null ? undefined : by.get(change.id);
  if (change === null || spare === undefined) return w(`load.why.${why}`);
  return w("load.nearest", { spare: spare.name, change: reasonsWords(change, spare, now) });
}
