// Whether a bike may be ridden, for any screen: the book is read once, the calculator asked, the answer put into words.

import "./ready.css";
import { adopted } from "../../book/checks/adopt.ts";
import { type Events, eventsIn, readyKinds, type ReadyLists } from "../../book/checks/ready_events.ts";
import { readyRequest, type ReadyView, readyView, wheelRequest } from "../../book/checks/ready_view.ts";
import { readWalk } from "../../book/checks/walk.ts";
import type { Requests } from "../../contract/contract.ts";
import type { RecordState } from "../../log/op/merge.ts";
import type { Ctx } from "../../ui/screen.ts";
import { dayOf } from "../../book/wheels/measure_days.ts";
import { arrivalsOf } from "./arrivals.ts";

// ReadyBook is what the book knows, filed for asking about any of its bikes and wheels.
export interface ReadyBook {
  readonly lists: ReadyLists;
  readonly events: Events;
  readonly find: (rec: string) => RecordState | undefined;
}

export async function readyBook({ book }: Ctx): Promise<ReadyBook> {
  await book.ready;
  const lists = Object.fromEntries(await Promise.all(readyKinds.map(async (kind) => [kind, await book.all(kind)] as const))) as unknown as ReadyLists;
  const known = new Map([...lists.bike, ...lists.wheel, ...lists.tyre, ...lists.finding].map((state) => [state.rec, state]));
  return { lists, events: eventsIn(lists), find: (rec) => known.get(rec) };
}

// readyOf asks about a bike; undefined where no sums run.
export async function readyOf(ctx: Ctx, book: ReadyBook, bike: RecordState): Promise<ReadyView | undefined> {
  const request = readyRequest(bike, book.find, book.events, dayOf(Date.now()));
  const arrivals = await arrivalsOf(ctx, bike, book);
  return ask(ctx, book, bike.rec, { ...request, events: [...(request.events ?? []), ...arrivals] });
}

// wheelReadyOf asks about a wheel by itself.
export function wheelReadyOf(ctx: Ctx, book: ReadyBook, wheel: RecordState): Promise<ReadyView | undefined> {
  return ask(ctx, book, "", wheelRequest(wheel, book.find, book.events, dayOf(Date.now())));
}

// readyOfAll asks about bikes, and about those wheels of which something was noted, each by itself.
export async function readyOfAll(ctx: Ctx, recs: readonly string[]): Promise<ReadonlyMap<string, ReadyView>> {
  const book = await readyBook(ctx);
  const views = new Map<string, ReadyView>();
  for (const rec of recs) {
    if (ctx.closed.aborted) break;
    const state = book.find(rec);
    const noted = state?.kind === "wheel" && (book.events.get(rec) ?? []).some(({ kind }) => kind !== "mounted");
    const view = state?.kind === "bike" ? await readyOf(ctx, book, state) : state !== undefined && noted ? await wheelReadyOf(ctx, book, state) : undefined;
    if (view !== undefined && (state?.kind === "bike" || view.state !== "not_looked_at")) views.set(rec, view);
  }
  return views;
}

async function ask(ctx: Ctx, { find }: ReadyBook, of: string, request: Requests["ready"]): Promise<ReadyView | undefined> {
  try {
    const { answer } = await ctx.calc.ask("ready", request);
    return answer === undefined ? undefined : readyView(answer, of, find, Date.now());
  } catch {
    return undefined; // told by whoever shows it
  }
}

// adoptWalk brings what an older app kept of a walk-around that was broken off into the book: its findings count at once, and the
// walk goes on where it was left.
export async function adoptWalk({ drafts, book }: Ctx, bike: string): Promise<void> {
  const old = `walk/${bike}`;
  const walk = readWalk(await drafts.load(old));
  if (walk === undefined) return;
  await book.ready;
  const { name, value, changes } = adopted(walk, await book.get(bike), await Promise.all(Object.values(walk.found).map(({ rec }) => book.get(rec))));
  await drafts.save(name, value);
  await book.save(changes, { name: old, value: null });
}
