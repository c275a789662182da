// Which log has which op. A log is one server's; a server that was wiped or restored has a new one. What is known of a
// log is kept with its count and digest, so that a difference to the server's own shows.

import { difference, emptyDigest, toggled } from "../op/digest.ts";
import { pardon, refusedBy } from "./rejected.ts";
import type { LogRow, Tx } from "./tables.ts";

export const logStores = ["logs", "sent", "rejected"] as const;

export type Sums = Pick<LogRow, "count" | "digest">;

// logRow is what this phone knows of a log, nothing at first.
export async function logRow(tx: Tx, log: string): Promise<LogRow> {
  const [row] = await tx.get("logs", [log]);
  return row ?? { log, book: "", server: "", name: "", cursor: 0, count: 0, digest: emptyDigest, lastMet: 0 };
}

export async function changeLog(tx: Tx, log: string, change: Partial<LogRow>): Promise<LogRow> {
  const row = { ...(await logRow(tx, log)), ...change };
  tx.put("logs", [row]);
  return row;
}

// SentList remembers what a log has, so that it need not be read for every page. Its count and digest tell whether it
// is still what the database holds: another tab may have met the server too, or a transaction may have failed.
export class SentList {
  #sums: (Sums & { readonly log: string }) | undefined;
  #ids = new Set<string>();

  // add gives those ids that the log was not known to have, and its sums with them.
  async add(tx: Tx, row: LogRow, ids: readonly string[]): Promise<Sums & { readonly fresh: readonly string[] }> {
    const { log, count, digest } = row;
    if (this.#sums?.log !== log || gap(this.#sums, row) !== "") this.#ids = new Set(await tx.sentTo(log));
    const fresh = [...new Set(ids)].filter((id) => !this.#ids.has(id));
    for (const id of fresh) this.#ids.add(id);
    const sums = { count: count + fresh.length, digest: toggled(digest, fresh) };
    this.#sums = { log, ...sums };
    return { ...sums, fresh };
  }
}

// mark remembers that a log has these ops. It is idempotent: of an id that is marked nothing changes.
export async function mark(tx: Tx, list: SentList, log: string, ids: readonly string[], change: Partial<LogRow> = {}): Promise<LogRow> {
  const row = await logRow(tx, log);
  const { fresh, ...sums } = await list.add(tx, row, ids);
  const [id] = fresh;
  if (id !== undefined) tx.put("sent", [{ log, id, ids: fresh }]);
  const marked = { ...row, ...sums, ...change };
  tx.put("logs", [marked]);
  return marked;
}

// unmark forgets that a log has these ops, and tells of how many it was known.
export async function unmark(tx: Tx, log: string, ids: readonly string[]): Promise<number> {
  const sent = await tx.sentTo(log);
  const lost = new Set(ids);
  const left = sent.filter((id) => !lost.has(id));
  const gone = sent.filter((id) => lost.has(id));
  if (gone.length === 0) return 0;
  tx.forgetSent(log);
  const [id] = left;
  if (id !== undefined) tx.put("sent", [{ log, id, ids: left }]);
  const { count, digest } = await logRow(tx, log);
  await changeLog(tx, log, { count: count - gone.length, digest: toggled(digest, gone) });
  return gone.length;
}

// unmarkPhotos forgets that a log's server has these photos.
export async function unmarkPhotos(tx: Tx, log: string, lost: ReadonlySet<string>): Promise<void> {
  const left = (await tx.sentTo(photosOf(log))).filter((name) => !lost.has(name));
  tx.forgetSent(photosOf(log));
  const [id] = left;
  if (id !== undefined) tx.put("sent", [{ log: photosOf(log), id, ids: left }]);
}

// unsent lists the ops that a log has not got, as far as this phone knows, and has not refused.
export async function unsent(tx: Tx, log: string): Promise<readonly string[]> {
  const [all, sent, refused] = [await tx.keys("ops"), new Set(await tx.sentTo(log)), await refusedBy(tx, log)];
  return all.filter((id) => !sent.has(id) && !refused.has(id));
}

// reset forgets what a log has: everything is exchanged anew.
export async function reset(tx: Tx, log: string): Promise<void> {
  tx.forgetSent(log);
  tx.forgetSent(photosOf(log));
  await pardon(tx, log);
  await changeLog(tx, log, { cursor: 0, count: 0, digest: emptyDigest });
}

// gap names the difference between what a log has and what this phone knows of it, "" when there is none. It stays the
// same when both get the same ops, so that a gap that exchanging everything did not close is known again.
export function gap(ours: Sums, theirs: Sums): string {
  if (ours.count === theirs.count && ours.digest === theirs.digest) return "";
  return `${theirs.count - ours.count} ${difference(ours.digest, theirs.digest)}`;
}

// photosOf is the name under which the store "sent" has the photos of a log.
export function photosOf(log: string): string {
  return `photos ${log}`;
}
