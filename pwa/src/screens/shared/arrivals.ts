// How far putting a bike together after a journey has come, as events for the question whether it may be ridden.

import { buildOf } from "../../book/checks/build.ts";
import type { ReadyEvent } from "../../book/checks/ready_events.ts";
import { textOf } from "../../book/checks/walk_save.ts";
import { arrivalEvents } from "../../book/packing/arrivals.ts";
import { packRequest } from "../../book/packing/pack_request.ts";
import { directions, ticksOf } from "../../book/packing/pack_view.ts";
import { bikesOf } from "../../book/packing/trip.ts";
import { dayOf } from "../../book/wheels/measure_days.ts";
import type { RecordState } from "../../log/op/merge.ts";
import type { Ctx } from "../../ui/screen.ts";
import type { ReadyBook } from "./ready.ts";

const heldFor = 30 * 86_400_000; // ms after its last day a trip nobody finished ticking is over (our choice)

// arrivalsOf tells of each trip whose list was begun how many steps are left without which nobody rides.
export async function arrivalsOf(ctx: Ctx, bike: RecordState, { lists, find }: ReadyBook): Promise<readonly ReadyEvent[]> {
  const now = Date.now();
  const mine = lists.trip.filter((trip) => bikesOf(trip).includes(bike.rec) && !isOver(trip, now));
  if (mine.length === 0) return [];
  const entries = await ctx.book.all("pack_tick");
  const trips = mine.filter(({ rec }) => entries.some((entry) => textOf(entry, "trip") === rec));
  const events = await Promise.all(trips.map(async (trip): Promise<readonly ReadyEvent[]> => {
    const ticks = ticksOf(entries, trip.rec);
    try {
      const [out, home] = await Promise.all(directions.map(async (direction) => (await ctx.calc.ask("pack", packRequest(trip, buildOf(bike, find), direction))).answer));
      return out === undefined || home === undefined ? [] : arrivalEvents(trip, bike.rec, (direction) => (direction === "out" ? out : home), ticks);
    } catch {
      return []; // no sums run here: the walk-arounds still tell
    }
  }));
  return events.flat();
}

// isOver leaves trips to come in: a bike is taken apart on the evening before.
function isOver(trip: RecordState, now: number): boolean {
  const to = textOf(trip, "home_arrives") || textOf(trip, "to") || textOf(trip, "from");
  return to !== "" && to < dayOf(now - heldFor);
}
