// Sending: what the server's log has not got, in requests that it takes, so that one bad op never blocks the others. A push
// is idempotent: what the log has already it calls known, so a request whose answer was lost is simply made again.

import { byteLength, type StoredOp } from "../op/op.ts";
import { logStores, mark } from "../db/logs.ts";
import { isOwnFault, pardon, refuse } from "../db/rejected.ts";
import { ServerRefusal, ServerTrouble } from "./server_api.ts";
import type { Pushed } from "./answers.ts";
import type { Exchange } from "./exchange.ts";

const mostOps = 500;

// push sends everything that is unsent, and gives the log that the server really has.
export async function push(exchange: Exchange, log: string): Promise<string> {
  const queue = [...(await exchange.outbox.of(log))];
  if (queue.length > 0) exchange.report("sending", 0, queue.length);
  for (let from = 0; from < queue.length; from += mostOps) {
    const ids = queue.slice(from, from + mostOps);
    const rows = await exchange.tables.read(["ops"], (tx) => tx.get("ops", ids));
    const waiting = rows.flatMap((row) => row ?? []).sort((a, b) => a.at - b.at); // the oldest first
    for (let sent = 0; sent < waiting.length; ) {
      const batch = fitting(waiting.slice(sent), exchange.paces.push.size);
      const real = await send(exchange, log, batch);
      if (real !== log) return real;
      sent += batch.length;
      exchange.report("sending", from + sent, queue.length);
    }
  }
  return log;
}

// fitting takes as many rows as one request may carry, at least one.
function fitting(rows: readonly StoredOp[], room: number): readonly StoredOp[] {
  let size = 0;
  const end = rows.findIndex((row, i) => (size += byteLength(row.bytes) + 1) > room && i > 0);
  return end < 0 ? rows : rows.slice(0, end);
}

// send sends one request. When it does not arrive, or the server does not take it as a whole, its halves are tried: in
// the end the one op that the server cannot take stands alone, and is listed.
async function send(exchange: Exchange, log: string, rows: readonly StoredOp[]): Promise<string> {
  const { api, book, paces, now } = exchange;
  const size = rows.reduce((sum, row) => sum + byteLength(row.bytes) + 1, 0);
  const begun = now();
  try {
    const pushed = await api.push(book, log, rows.map((row) => row.bytes));
    paces.push.took(now() - begun, size);
    await settle(exchange, pushed, rows);
    return pushed.log;
  } catch (error) {
    if (isTooMuch(error) || isTooLong(error)) paces.push.failed(size);
    if (rows.length > 1 && (isTooMuch(error) || isAboutOps(error))) return halves(exchange, log, rows);
    const [one] = rows;
    if (rows.length === 1 && one !== undefined && isAboutOps(error)) {
      const { code, message } = error;
      await settle(exchange, { log, stored: [], known: [], rejected: [{ id: one.id, code: isOwnFault(code) ? code : "op_malformed", message }] }, rows);
    } else if (isTooMuch(error)) {
      exchange.hinder(error); // it waits for a better way, and the others go on
    } else throw error;
    return log;
  }
}

async function halves(exchange: Exchange, log: string, rows: readonly StoredOp[]): Promise<string> {
  const half = rows.length >> 1;
  const real = await send(exchange, log, rows.slice(0, half));
  return real === log ? send(exchange, log, rows.slice(half)) : real;
}

// isTooMuch: the server, or something on the way, takes no request of that size.
function isTooMuch(error: unknown): boolean {
  return (error instanceof ServerTrouble || error instanceof ServerRefusal) && error.status === 413;
}

// isTooLong: the request did not arrive in time. The next round tries less.
function isTooLong(error: unknown): boolean {
  return error instanceof ServerTrouble && error.cause instanceof DOMException && error.cause.name === "TimeoutError";
}

// isAboutOps: the server finds fault with what was sent. Whatever else it answers, a fault of its own least of all, says
// nothing about an op, and marks none.
function isAboutOps(error: unknown): error is ServerRefusal {
  if (!(error instanceof ServerRefusal)) return false;
  const { status, code, field } = error;
  return status === 413 || (status === 422 && (isOwnFault(code) || field === "ops"));
}

// settle writes down what the log has now, and what it refused. The server can only speak of what it was sent.
async function settle(exchange: Exchange, { log, stored, known, rejected }: Pushed, rows: readonly StoredOp[]): Promise<void> {
  const sent = new Set(rows.map((row) => row.id));
  const has = [...stored, ...known].filter((id) => sent.has(id));
  const refused = rejected.filter(({ id, code }) => sent.has(id) && isOwnFault(code));
  await exchange.tables.write(logStores, async (tx) => {
    await mark(tx, exchange.sent, log, has, { book: exchange.book });
    await pardon(tx, log, has);
    if (refused.length > 0) await refuse(tx, log, refused);
  });
  exchange.outbox.done([...has, ...refused.map(({ id }) => id)]);
}
