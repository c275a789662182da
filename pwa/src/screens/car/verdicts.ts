// What the calculator says of spares, asked by the car's pages.

import type { Fleet } from "../../book/car/fleet.ts";
import type { Verdict } from "../../book/car/match.ts";
import type { Ctx } from "../../ui/screen.ts";

// askVerdicts ranks the spares for one end; undefined when a newer question took its place or nothing can answer.
export async function askVerdicts(ctx: Ctx, request: object): Promise<readonly Verdict[] | undefined> {
  const answer = await ctx.calc.latest("match", request);
  return answer?.status === 200 ? (JSON.parse(answer.body) as readonly Verdict[]) : undefined;
}

// stoppedSpares are the spares that may not be ridden.
export async function stoppedSpares(_ctx: Ctx, _fleet: Fleet): Promise<ReadonlySet<string>> {
  return new Set();
}
