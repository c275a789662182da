// The sums behind the morning list, one question after the other in the calculator's worker, each asked once.

import { type Fleet, type Rider, type SpareWheel } from "../../book/car/fleet.ts";
import { matchRequest, type Verdict } from "../../book/car/match.ts";
import { type Airs, servedBy, type Shared, sharedOf, shareRequest, type Wish, wishOf, withSpare } from "../../book/car/morning.ts";
import { type Side, sides } from "../../book/pressure/answer.ts";
import { type Result, type TeamBike, teamBikes } from "../../book/pressure/team_view.ts";
import type { Ctx } from "../../ui/screen.ts";
import { asker } from "../shared/paper.ts";
import { readyOfAll } from "../shared/ready.ts";
import type { ReadyView } from "../../book/checks/ready_view.ts";
import { stoppedSpares } from "./verdicts.ts";

// SpareSum is what is known of one spare this morning.
export interface SpareSum {
  readonly spare: SpareWheel;
  readonly stopped: boolean;
  readonly riders: readonly Rider[]; // it may go to
  readonly changed: boolean; // only with a change
  readonly shared: Shared | undefined;
  readonly missing: number; // riders without a number
}

export interface RiderSum {
  readonly bike: TeamBike;
  readonly rider: Rider;
  readonly result: Result;
  readonly ready: ReadyView | undefined;
}

// MorningSums ends by itself once over() says so: a newer look has begun, or the page is closed.
export class MorningSums {
  readonly #ctx: Ctx;
  readonly #airs: Airs;
  readonly #fleet: Fleet;
  readonly #over: () => boolean;
  readonly #asked = new Map<string, Promise<Result>>();

  constructor(ctx: Ctx, fleet: Fleet, airs: Airs, over: () => boolean) {
    [this.#ctx, this.#fleet, this.#airs, this.#over] = [ctx, fleet, airs, over];
  }

  // spares are in the car: one that is out is not there to be pumped.
  async spares(tell: (sum: SpareSum) => void): Promise<void> {
    const inside = this.#fleet.spares.filter(({ loan }) => loan === undefined);
    const stopped = await stoppedSpares(this.#ctx, this.#fleet);
    const verdicts = await this.#verdicts(inside, stopped);
    for (const spare of inside) {
      if (this.#over()) return;
      const { riders, changed } = servedBy(verdicts.get(spare.rec) ?? []);
      const off = stopped.has(spare.rec) || spare.tyre === undefined;
      const wishes = off ? [] : await this.#wishes(spare, riders);
      const answer = wishes.length === 0 ? undefined : (await this.#ctx.calc.ask("share", shareRequest(wishes))).answer;
      if (this.#over()) return;
      const shared = answer === undefined ? undefined : sharedOf(wishes, answer, this.#airs.unit);
      tell({ spare, stopped: stopped.has(spare.rec), riders, changed, shared, missing: riders.length - wishes.length });
    }
  }

  // verdicts asks once for ends that are alike.
  async #verdicts(spares: readonly SpareWheel[], stopped: ReadonlySet<string>): Promise<ReadonlyMap<string, readonly { rider: Rider; verdict: Verdict }[]>> {
    const known = new Map<string, readonly Verdict[]>();
    const out = new Map<string, { rider: Rider; verdict: Verdict }[]>(spares.map(({ rec }) => [rec, []]));
    for (const rider of this.#fleet.riders) for (const side of sides) {
      if (this.#over()) return out;
      const own = spares.filter(({ hub }) => hub.side === side);
      const key = JSON.stringify(rider.ends[side]);
      const verdicts = known.get(key) ?? (await this.#ctx.calc.ask("match", matchRequest(rider.ends[side], own, stopped))).answer ?? [];
      known.set(key, verdicts);
      for (const verdict of verdicts) out.get(verdict.id)?.push({ rider, verdict });
    }
    return out;
  }

  async #wishes(spare: SpareWheel, riders: readonly Rider[]): Promise<readonly Wish[]> {
    const wishes: Wish[] = [];
    for (const rider of riders) {
      if (this.#over()) return [];
      const result = await this.#ask(withSpare(rider, spare, this.#airs));
      const wish = "kept" in result ? wishOf(rider, spare.hub.side as Side, result.kept) : undefined;
      if (wish !== undefined) wishes.push(wish);
    }
    return wishes;
  }

  // ask asks each question once; what a rider's notes speak for is part of it only where there are such notes.
  #ask(bike: Pick<TeamBike, "draft" | "reading">): Promise<Result> {
    const { notes } = this.#airs.book;
    const key = `${notes.length === 0 ? "" : (bike.draft.links["bike"] ?? "")} ${JSON.stringify(bike.reading.body)}`;
    const asked = this.#asked.get(key) ?? asker(this.#ctx, notes)(bike).catch((): Result => ({ refused: "" }));
    this.#asked.set(key, asked);
    return asked;
  }

  // riders get their own start pressures, as their Pressure screen tells them, and whether the bike may be ridden.
  async riders(tell: (sum: RiderSum) => void): Promise<void> {
    const { book, today, tables, unit } = this.#airs;
    const bikes = new Map(teamBikes(book, today, unit, tables).map((bike) => [bike.rec, bike]));
    const states = await readyOfAll(this.#ctx, this.#fleet.riders.map(({ bike }) => bike.rec));
    for (const rider of this.#fleet.riders) {
      const bike = bikes.get(rider.bike.rec);
      if (bike === undefined) continue;
      const result = await this.#ask(bike);
      if (this.#over()) return;
      tell({ bike, rider, result, ready: states.get(bike.rec) });
    }
  }
}
