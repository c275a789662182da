// What the calculator says of spares, asked by the car's pages.

import type { Fleet } from "../../book/car/fleet.ts";
import type { Verdict } from "../../book/car/match.ts";
import type { MatchRequest } from "../../contract/contract.ts";
import type { Ctx } from "../../ui/screen.ts";

// askVerdicts ranks the spares for one end; undefined when a newer question took its place or nothing can answer.
export async function askVerdicts(ctx: Ctx, request: MatchRequest): Promise<readonly Verdict[] | undefined> {
  return (await ctx.calc.latest("match", request))?.answer;
}

// stoppedSpares are the spares that may not be ridden.
export async function stoppedSpares(_ctx: Ctx, _fleet: Fleet): Promise<ReadonlySet<string>> {
  return new Set();
}
