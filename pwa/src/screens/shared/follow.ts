// What the pages about the book share: looking again whenever the book changes, and naming what they show.

import { kinds } from "../../book/value/kinds.ts";
import { tellerOf, type Teller } from "../../book/value/record_words.ts";
import { StorageTrouble } from "../../log/db/idb.ts";
import type { RecordState } from "../../log/op/merge.ts";
import type { Ctx } from "../../ui/screen.ts";
import { w } from "../../words/index.ts";

const rest = 250; // ms between two looks while much arrives at once

// follow looks now, and again when the book or a setting changes: one look after the other, the last with the newest.
// When the phone refuses, refused hears why. The result asks for another look, and resolves when it is done.
export function follow(ctx: Ctx, look: () => Promise<void>, refused: (words: string) => void): () => Promise<void> {
  let running: Promise<void> | undefined;
  let next: Promise<void> | undefined;
  const once = async (): Promise<void> => {
    if (ctx.closed.aborted) return;
    await look().catch((error: unknown) => (error instanceof StorageTrouble ? refused(refusal(error)) : ctx.trouble(error)));
  };
  const again = (): Promise<void> => {
    if (running === undefined) return (running = once().finally(() => (running = undefined)));
    return (next ??= running.then(() => {
      next = undefined;
      return again();
    }));
  };
  let timer: ReturnType<typeof setTimeout> | undefined;
  const soon = (): void => {
    timer ??= setTimeout(() => {
      timer = undefined;
      void again();
    }, rest);
  };
  ctx.closed.addEventListener("abort", ctx.book.on(soon));
  ctx.closed.addEventListener("abort", () => clearTimeout(timer));
  ctx.onSettings(() => void again());
  void again();
  return again;
}

const descriptions = Object.keys(kinds).filter((kind) => kinds[kind]?.is === "description");

// tellerFor can name the given states, all descriptions of the book, and whatever else is referred to.
export async function tellerFor(ctx: Ctx, states: readonly RecordState[], refs: ReadonlySet<string> = new Set()): Promise<Teller> {
  const { book } = ctx;
  await book.ready;
  const lists = await Promise.all(descriptions.map((kind) => book.all(kind)));
  const known = new Map([...lists.flat(), ...states].map((state) => [state.rec, state]));
  const others = await Promise.all([...refs].filter((rec) => !known.has(rec)).map((rec) => book.get(rec)));
  for (const state of others) if (state !== undefined) known.set(state.rec, state);
  return tellerOf({ states: [...known.values()], unit: ctx.settings.units, now: Date.now(), me: book.me, device: book.device });
}

// attempt does what a person asked for. "" means that it is saved; otherwise why it is not.
export async function attempt(ctx: Ctx, work: () => Promise<unknown>): Promise<string> {
  try {
    await work();
    return "";
  } catch (error) {
    if (error instanceof StorageTrouble) return refusal(error);
    ctx.trouble(error);
    return w("book.failed");
  }
}

function refusal({ code }: StorageTrouble): string {
  return w(`status.cannot.${code}`);
}
