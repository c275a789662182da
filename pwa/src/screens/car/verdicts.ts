// What the calculator says of spares, asked by the car's pages.

import type { Fleet } from "../../book/car/fleet.ts";
import type { Verdict } from "../../book/car/match.ts";
import type { BikeVerdict } from "../../book/car/spare_bikes.ts";
import type { BikeMatchRequest, MatchRequest } from "../../contract/contract.ts";
import type { Ctx } from "../../ui/screen.ts";
import { readyOfAll } from "../shared/ready.ts";

// askVerdicts ranks the spares for one end; undefined when a newer question took its place or nothing can answer.
export async function askVerdicts(ctx: Ctx, request: MatchRequest): Promise<readonly Verdict[] | undefined> {
  return (await ctx.calc.latest("match", request))?.answer;
}

// askBikeVerdicts ranks the whole bikes for one rider, in the same way.
export async function askBikeVerdicts(ctx: Ctx, request: BikeMatchRequest): Promise<readonly BikeVerdict[] | undefined> {
  return request.spares.length === 0 ? [] : (await ctx.calc.latest("bike_match", request))?.answer;
}

// stoppedBikes are the spare bikes that may not be ridden.
export async function stoppedBikes(ctx: Ctx, { bikes }: Fleet): Promise<ReadonlySet<string>> {
  const states = await readyOfAll(ctx, bikes.map(({ bike }) => bike.rec));
  return new Set(bikes.filter(({ bike }) => states.get(bike.rec)?.state === "stop").map(({ bike }) => bike.rec));
}

// stoppedSpares are the spares that may not be ridden: what was found or measured on a wheel counts in the car as everywhere.
export async function stoppedSpares(ctx: Ctx, { spares }: Fleet): Promise<ReadonlySet<string>> {
  const states = await readyOfAll(ctx, spares.flatMap(({ wheel }) => wheel?.rec ?? []));
  return new Set(spares.filter(({ wheel }) => states.get(wheel?.rec ?? "")?.state === "stop").map(({ rec }) => rec));
}
