// What the pages of a trip share: the trip with its bikes, the calculator's list for each, and the ticks.

import { bikeName } from "../../book/pressure/bikes.ts";
import { buildOf } from "../../book/checks/build.ts";
import { type Pack, ticksOf } from "../../book/packing/pack_view.ts";
import { textOf } from "../../book/checks/walk_save.ts";
import { bikesOf, goodsAsked, goodsOf, wayOf } from "../../book/packing/trip.ts";
import type { Requests } from "../../contract/contract.ts";
import { newRec } from "../../log/book_log.ts";
import { type RecordState, valueOf } from "../../log/op/merge.ts";
import type { Ctx } from "../../ui/screen.ts";
import { w } from "../../words/index.ts";
import { attempt } from "../shared/follow.ts";
import type { Ticked } from "./steps.ts";

export interface PackedBike {
  readonly rec: string;
  readonly name: string;
  readonly wheels: readonly string[];
  readonly pack: Pack | undefined; // undefined where no sums run
}

export interface Packed {
  readonly trip: RecordState;
  readonly bikes: readonly PackedBike[];
  readonly ticks: ReadonlyMap<string, boolean>;
  readonly measures: readonly RecordState[];
}

// The list for a build does not change while a page is open: a tick must not wait for the calculator.
const asked = new Map<string, Pack>();

export async function packed(ctx: Ctx, rec: string): Promise<Packed | undefined> {
  await ctx.book.ready;
  const states = new Map<string, RecordState>();
  for (const kind of ["bike", "wheel", "tyre"]) for (const state of await ctx.book.all(kind)) states.set(state.rec, state);
  const find = (of: string): RecordState | undefined => states.get(of);
  const [trip, entries, measures] = await Promise.all([ctx.book.get(rec), ctx.book.all("pack_tick"), ctx.book.all("measure")]);
  if (trip === undefined || trip.erased) return undefined;
  const bikes = await Promise.all(bikesOf(trip).flatMap((of) => find(of) ?? []).map(async (bike): Promise<PackedBike> => {
    const body = { bike: buildOf(bike, find), way: wayOf(trip), legs_us: valueOf(trip, "legs_us") === true, goods: goodsAsked(goodsOf(trip)) };
    return { rec: bike.rec, name: bikeName(bike) || w("head.bike"), wheels: [textOf(bike, "front"), textOf(bike, "rear")], pack: await ask(ctx, body) };
  }));
  return { trip, bikes, ticks: ticksOf(entries, rec), measures };
}

async function ask(ctx: Ctx, body: Requests["pack"]): Promise<Pack | undefined> {
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
export function tick(ctx: Ctx, trip: string, { bike, step, ticked }: Ticked): Promise<string> {
  return attempt(ctx, () => ctx.book.save([{ rec: newRec(), kind: "pack_tick", set: { trip, step, ticked, ...(bike !== "" && { bike }) } }]));
}
