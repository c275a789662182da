// Clears what is half typed on this phone of records that were erased, whichever screen is open: at the start, and
// whenever the book hears of one.

import { cleared, type Cleared, draftRecs } from "../../book/settings/erase_person_drafts.ts";
import type { RecordState } from "../../log/op/merge.ts";
import { statesFor } from "../../log/db/states.ts";
import type { Tx } from "../../log/db/tables.ts";
import type { Ctx } from "../../ui/screen.ts";

const all = 2 ** 32 - 1;

// forgetErased watches for as long as the app lives. A phone that refuses is told by the status line; the next start
// tries again.
export function forgetErased(book: Ctx["book"]): void {
  const look = (recs?: ReadonlySet<string>): void => void clear(book, recs).catch(() => undefined);
  look();
  book.on((recs) => {
    if (recs.size > 0) look(recs);
  });
}

async function clear(book: Ctx["book"], recs?: ReadonlySet<string>): Promise<void> {
  const tables = await book.tables;
  const found = await tables.read(["drafts", "ops"], (tx) => outdated(tx, recs));
  if (found.kept.length + found.dropped.length === 0) return; // nearly always
  const { kept, dropped } = await tables.write(["drafts", "ops"], async (tx) => {
    const now = await outdated(tx, recs);
    tx.put("drafts", now.kept);
    tx.remove("drafts", now.dropped);
    return now;
  });
  tell(tables.name, [...kept.map(({ name }) => name), ...dropped]);
}

async function outdated(tx: Tx, recs?: ReadonlySet<string>): Promise<Cleared> {
  const drafts = await tx.page("drafts", "", all);
  const asked = [...draftRecs(drafts)].filter((rec) => recs?.has(rec) !== false);
  const states = asked.length === 0 ? [] : await statesFor(tx, asked);
  const erased = states.filter((state): state is RecordState => state?.erased === true);
  return cleared(drafts, new Map(erased.map((state) => [state.rec, state])));
}

// tell lets every tab, this one too, read those drafts anew.
function tell(name: string, drafts: readonly string[]): void {
  if (drafts.length === 0 || typeof BroadcastChannel === "undefined") return;
  const channel = new BroadcastChannel(name);
  for (const draft of drafts) channel.postMessage(draft);
  channel.close();
}
