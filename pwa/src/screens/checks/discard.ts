// Discarding a walk-around: asked once, taken back from the front page, and never the findings.

import { type Walk, walkDraft } from "../../book/checks/walk.ts";
import type { RecordState } from "../../log/op/merge.ts";
import { el } from "../../ui/el.ts";
import { setHidden } from "../../ui/part.ts";
import type { Ctx } from "../../ui/screen.ts";
import { w } from "../../words/index.ts";
import type { WalkKeeper } from "./walk_keeper.ts";

// Discarded is what the front page may take back.
export interface Discarded {
  readonly walk: Walk;
  readonly records: readonly RecordState[];
}

let last: Discarded | undefined;

// takeDiscarded gives what was discarded last, once.
export function takeDiscarded(): Discarded | undefined {
  const taken = last;
  last = undefined;
  return taken;
}

// restoreDiscarded puts a walk-around back where it was.
export async function restoreDiscarded({ book, drafts }: Ctx, { walk, records }: Discarded): Promise<void> {
  await drafts.save(walkDraft(walk.bike, walk.moment), walk);
  for (const { rec } of records) {
    const now = await book.get(rec);
    if (now !== undefined) await book.restore(now);
  }
}

export function discarding(ctx: Ctx, current: () => Walk | undefined, keeper: WalkKeeper): HTMLElement {
  const press = (words: string, kind: string, click: () => void): HTMLButtonElement => el("button", { type: "button", class: kind, on: { click } }, words);
  const ask = press(w("checks.discard"), "button quiet flush", () => sure(true));
  const question = el("section", { class: "card stack" }, el("p", { role: "alert" }, w("checks.discardSure")),
    el("div", { class: "row" }, press(w("checks.discardYes"), "button", () => void discard()), press(w("checks.discardNo"), "button primary", () => sure(false))));
  const sure = (asked: boolean): void => {
    setHidden(question, !asked);
    setHidden(ask, asked);
  };
  const discard = async (): Promise<void> => {
    const walk = current();
    if (walk === undefined) return;
    await keeper.flush();
    const records = await keeper.away(walk.check);
    await ctx.drafts.save(walkDraft(walk.bike, walk.moment), null);
    last = { walk, records };
    location.hash = "#/checks";
  };
  sure(false);
  return el("div", {}, el("p", {}, ask), question);
}
