// What the pages of a trip share: the trip with its bikes, the calculator's lists for each in both directions, and the ticks.

import type { PackRequest } from "../../contract/contract.ts";
import { bikeName } from "../../book/pressure/bikes.ts";
import { sides, type Side } from "../../book/pressure/answer.ts";
import { buildOf } from "../../book/checks/build.ts";
import type { Built } from "../../book/packing/as_built.ts";
import { directionOf, journeyOf } from "../../book/packing/arrivals.ts";
import { type Direction, directions, type GoodLine, type Pack, type Ticks, ticksOf } from "../../book/packing/pack_view.ts";
import { packRequest } from "../../book/packing/pack_request.ts";
import { bikesOf, peopleOf } from "../../book/packing/trip.ts";
import { textOf } from "../../book/checks/walk_save.ts";
import { newRec } from "../../log/book_log.ts";
import { type RecordState, valueOf } from "../../log/op/merge.ts";
import type { Ctx } from "../../ui/screen.ts";
import { w } from "../../words/index.ts";
import { attempt, tellerFor } from "../shared/follow.ts";
import type { Ticked } from "./steps.ts";

export interface PackedBike {
  readonly rec: string;
  readonly name: string;
  readonly state: RecordState;
  readonly wheels: Readonly<Record<Side, RecordState | undefined>>;
  readonly built: Built;
  readonly packs: Readonly<Record<Direction, Pack>> | undefined; // undefined where no sums run
}

export interface Packed {
  readonly trip: RecordState;
  readonly bikes: readonly PackedBike[];
  readonly ticks: Ticks;
  readonly goods: readonly GoodLine[];
  readonly read: string; // the day on which the rules of flying were read
  readonly people: readonly { readonly rec: string; readonly name: string }[];
  readonly now: Direction; // the one to do
}

// The list for a build does not change while a page is open: a tick must not wait for the calculator.
const asked = new Map<string, Pack>();

export async function packed(ctx: Ctx, rec: string): Promise<Packed | undefined> {
  await ctx.book.ready;
  const states = new Map<string, RecordState>();
  for (const kind of ["bike", "wheel", "tyre"]) for (const state of await ctx.book.all(kind)) states.set(state.rec, state);
  const find = (of: string): RecordState | undefined => states.get(of);
  const [trip, entries, measures, photos] = await Promise.all([ctx.book.get(rec), ctx.book.all("pack_tick"), ctx.book.all("measure"), ctx.book.all("photo")]);
  if (trip === undefined || trip.erased) return undefined;
  const mine = photos.filter((photo) => valueOf(photo, "of") === rec);
  const bikes = await Promise.all(bikesOf(trip).flatMap((of) => find(of) ?? []).map(async (state): Promise<PackedBike> => {
    const packs = await Promise.all(directions.map((direction) => ask(ctx, packRequest(trip, buildOf(state, find), direction))));
    const [out, home] = packs;
    const recs = { front: textOf(state, "front"), rear: textOf(state, "rear") };
    return {
      rec: state.rec, name: bikeName(state) || w("head.bike"), state, wheels: { front: find(recs.front), rear: find(recs.rear) },
      built: { bike: state.rec, wheels: recs, measures, photos: mine }, packs: out === undefined || home === undefined ? undefined : { out, home },
    };
  }));
  const any = bikes.find(({ packs }) => packs !== undefined)?.packs?.out ?? (bikes.length === 0 ? await ask(ctx, packRequest(trip, {}, "out")) : undefined);
  const ticks = ticksOf(entries, rec);
  const outward = bikes.flatMap(({ rec: bike, packs }) => (packs === undefined ? [] : [journeyOf(packs.out, bike, "out", ticks)]));
  return { trip, bikes, ticks, goods: any?.goods ?? [], read: any?.rules_read ?? "", people: await peopleIn(ctx, trip), now: directionOf(outward) };
}

async function peopleIn(ctx: Ctx, trip: RecordState): Promise<Packed["people"]> {
  const recs = peopleOf(trip);
  if (recs.length === 0) return [];
  const teller = await tellerFor(ctx, []);
  return recs.map((rec) => ({ rec, name: teller.nameOf(rec) }));
}

async function ask(ctx: Ctx, body: PackRequest): Promise<Pack | undefined> {
  const question = JSON.stringify(body);
  const known = asked.get(question);
  if (known !== undefined) return known;
  try {
    const { answer: pack } = await ctx.calc.ask("pack", body);
    if (pack !== undefined) asked.set(question, pack);
    return pack;
  } catch {
    return undefined; // told by the page
  }
}

// tick notes that a step was done, or was not after all.
export function tick(ctx: Ctx, trip: string, direction: Direction, { bike, step, ticked }: Ticked): Promise<string> {
  return attempt(ctx, () => ctx.book.save([{ rec: newRec(), kind: "pack_tick", set: { trip, direction, step, ticked, ...(bike !== "" && { bike }) } }]));
}

export { sides };
