// Takes a value away that was measured or typed wrongly; for ten seconds it can be brought back.

import { droppedChange } from "../../book/wheels/measure_save.ts";
import { undoneChanges } from "../../book/wheels/swap.ts";
import type { RecordState } from "../../log/op/merge.ts";
import type { Outcome } from "../../ui/outcome.ts";
import { listen } from "../../ui/part.ts";
import type { Ctx } from "../../ui/screen.ts";
import { w } from "../../words/index.ts";
import { attempt } from "../shared/follow.ts";
import { dropped } from "./measure_trend.ts";

// takesAway hears which value of a record is to go.
export function takesAway(ctx: Ctx, host: HTMLElement, outcome: Outcome, rec: string, again: () => Promise<void>): void {
  const { book } = ctx;
  const say = async (failed: string, words: string, undo?: () => void): Promise<void> => {
    await again();
    outcome.view = failed === "" ? { words, ...(undo && { undo }) } : { words: failed, failed: true };
  };
  const drop = async (key: string): Promise<void> => {
    const [state, entries] = await Promise.all([book.get(rec), book.all("measure")]);
    const entry = entries.find((each) => each.rec === key);
    if (state === undefined || entry === undefined) return;
    const change = droppedChange(entry, entries, state, Date.now());
    const changes = change === undefined ? [] : [change];
    let after: readonly RecordState[] = [];
    const failed = await attempt(ctx, async () => {
      await book.remove(entry);
      after = await book.save(changes);
    });
    const back = async (): Promise<void> => {
      const trouble = await attempt(ctx, async () => {
        const gone = await book.get(key);
        if (gone !== undefined) await book.restore(gone);
        await book.save(undoneChanges(changes, after));
      });
      await say(trouble, w("measured.back"));
    };
    await say(failed, w("measured.dropped"), () => void back());
  };
  listen(host, dropped, (key) => void drop(key), ctx.closed);
}
