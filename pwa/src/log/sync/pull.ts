// Fetching: the ops that arrived in the server's log since the last time, page by page, each with its cursor in one
// transaction, so that a phone that is taken away in between goes on where it was.

import type { Exchange } from "./exchange.ts";
import { Held } from "../db/held.ts";
import { logRow, logStores, mark, type Sums } from "../db/logs.ts";
import { isRejection, type Op, readOp, type RejectionCode, type StoredOp } from "../op/op.ts";
import { receive, receiveStores, rowOf, type Taken } from "../db/receive.ts";
import { forgetValues, refuse } from "../db/rejected.ts";
import { later, laterHex } from "../op/sha256.ts";
import { damagedPage, type Pulled, ServerTrouble } from "./server_api.ts";
import { statesFor } from "../db/states.ts";
import type { Tx } from "../db/tables.ts";
import type { Update } from "../db/views.ts";

export type PullEnd =
  | { readonly kind: "all"; readonly theirs: Sums } // everything is here; the log's own sums at that moment
  | { readonly kind: "behind" } // the log is shorter than it was
  | { readonly kind: "other"; readonly log: string }; // the server has another log

export async function pull(exchange: Exchange, log: string): Promise<PullEnd> {
  const news: Update[] = [];
  try {
    return await pages(exchange, log, async (update, page) => {
      news.push(update);
      if (page % together === 0) await exchange.changed(news.splice(0));
    });
  } finally {
    await exchange.changed(news);
  }
}

// fetched asks for one page: a smaller one when a larger does not arrive.
async function fetched({ api, book, paces, now }: Exchange, log: string, since: number): Promise<Arrived> {
  const begun = now();
  try {
    const page = await api.pull(book, log, since, paces.pull.size);
    if (page.hash !== undefined && page.hash !== (await hashOf(page.texts))) throw new ServerTrouble(new Error(damagedPage));
    paces.pull.took(now() - begun);
    return arrivedIn(page);
  } catch (error) {
    if (error instanceof ServerTrouble) paces.pull.failed();
    throw error;
  }
}

// hashOf is the hash that a page carries: the SHA-256 of the SHA-256 of each op's bytes in a row.
async function hashOf(texts: readonly string[]): Promise<string> {
  const utf8 = new TextEncoder();
  const each = await Promise.all(texts.map((text) => later(utf8.encode(text))));
  const all = new Uint8Array(32 * texts.length);
  each.forEach((hash, i) => all.set(hash, 32 * i));
  return laterHex(all);
}

const together = 4; // pages between which screens are not told: drawing each would double the time

async function pages(exchange: Exchange, log: string, tell: (update: Update, page: number) => Promise<void>): Promise<PullEnd> {
  const start = await exchange.tables.read(["logs"], (tx) => logRow(tx, log));
  const fetch = (since: number): Promise<Arrived> => fetched(exchange, log, since);
  let coming = fetch(start.cursor);
  let held: Held | undefined;
  for (let [since, number] = [start.cursor, 0]; ; number++) {
    const arrived = await coming;
    const { page } = arrived;
    if (page.log !== log) return { kind: "other", log: page.log };
    if (page.next < since) return { kind: "behind" };
    const isLast = !page.more || page.next === since;
    if (!isLast) {
      coming = fetch(page.next); // while this one is written down
      coming.catch(() => undefined); // it is awaited later, or not at all
      if (number === 0) held = await Held.read(exchange.tables);
    }
    const { ours, taken } = await keep(exchange, log, arrived, held);
    await tell(taken, number);
    exchange.report("fetching", ours.count - start.count, Math.max(page.count - start.count, 0));
    if (isLast) return { kind: "all", theirs: page };
    since = page.next;
  }
}

interface Arrived {
  readonly page: Pulled;
  readonly ids: readonly string[];
  readonly rows: readonly StoredOp[];
  readonly unreadable: readonly { readonly id: string; readonly bytes: string; readonly code: RejectionCode; readonly message: string }[];
}

// keep writes a page down. What this phone cannot take is listed; the log has it all the same.
async function keep(exchange: Exchange, log: string, { page, ids, rows, unreadable }: Arrived, held: Held | undefined): Promise<{ ours: Sums; taken: Taken }> {
  const kept = await exchange.tables.write([...receiveStores, ...logStores], async (tx) => {
    const taken = await receive(tx, rows, held);
    const clashing = taken.refused.map(({ id, bytes }) => ({ id, bytes, code: "other_content", message: "" }));
    const refused = [...clashing, ...unreadable];
    if (refused.length > 0) await refuse(tx, log, refused);
    if (clashing.length > 0) await forgetValues(tx, await erasedAmong(tx, taken.refused));
    return { ours: await mark(tx, exchange.sent, log, ids, { book: exchange.book, cursor: page.next }), taken };
  });
  exchange.outbox.done(ids); // the log has them: they need not be sent
  return kept;
}

async function erasedAmong(tx: Tx, rows: readonly StoredOp[]): Promise<ReadonlySet<string>> {
  const states = await statesFor(tx, [...new Set(rows.map((row) => row.rec))]);
  return new Set(states.flatMap((state) => (state?.erased === true ? [state.rec] : [])));
}

// arrivedIn reads the ops of a page.
function arrivedIn(page: Pulled): Arrived {
  const { texts, via } = page;
  const ids: string[] = [];
  const rows: StoredOp[] = [];
  const unreadable: Arrived["unreadable"][number][] = [];
  texts.forEach((bytes, i) => {
    const op: Op | ReturnType<typeof readOp> = readOp(bytes);
    const id = op.id === "" ? (via[i]?.id ?? "") : op.id;
    if (id !== "") ids.push(id);
    if (!isRejection(op)) rows.push(rowOf(op, bytes, cameBy(via[i])));
    else if (id !== "") unreadable.push({ id, bytes, code: op.code, message: "" });
  });
  return { page, ids, rows, unreadable };
}

function cameBy(via: Pulled["via"][number] | undefined): Pick<StoredOp, "via" | "receivedAt"> {
  return via === undefined || via.device === "" ? {} : { via: via.device, receivedAt: via.received_at };
}
