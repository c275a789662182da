// Sending: what the server's log has not got, in requests that it takes, so that one bad op never blocks the others.

import { byteLength, type StoredOp } from "../op/op.ts";
import { logStores, mark } from "../db/logs.ts";
import { pardon, refuse } from "../db/rejected.ts";
import { ServerRefusal } from "./server_api.ts";
import type { Pushed } from "./answers.ts";
import type { Exchange } from "./exchange.ts";

const mostOps = 500;
const mostBytes = 4 << 20;

// push sends everything that is unsent, and gives the log that the server really has.
export async function push(exchange: Exchange, log: string): Promise<string> {
  const queue = [...(await exchange.outbox.of(log))];
  if (queue.length > 0) exchange.report("sending", 0, queue.length);
  for (let from = 0; from < queue.length; from += mostOps) {
    const ids = queue.slice(from, from + mostOps);
    const rows = await exchange.tables.read(["ops"], (tx) => tx.get("ops", ids));
    for (const batch of batches(rows.flatMap((row) => row ?? []))) {
      const real = await send(exchange, log, batch);
      if (real !== log) return real;
    }
    exchange.report("sending", Math.min(from + mostOps, queue.length), queue.length);
  }
  return log;
}

// batches cuts rows, the oldest first, into what one request may carry.
function batches(rows: readonly StoredOp[]): StoredOp[][] {
  const cut: StoredOp[][] = [];
  let room = 0;
  for (const row of rows.toSorted((a, b) => a.at - b.at)) {
    const size = byteLength(row.bytes) + 1;
    if (size > room) {
      cut.push([]);
      room = mostBytes;
    }
    room -= size;
    cut.at(-1)?.push(row);
  }
  return cut;
}

// send sends one request. When the server does not take it as a whole, its halves are tried: in the end the one op that
// it cannot take stands alone, and is listed.
async function send(exchange: Exchange, log: string, rows: readonly StoredOp[]): Promise<string> {
  let pushed: Pushed;
  try {
    pushed = await exchange.api.push(exchange.book, log, rows.map((row) => row.bytes));
  } catch (error) {
    if (!(error instanceof ServerRefusal) || !isAboutOps(error)) throw error;
    const [one] = rows;
    if (rows.length === 1 && one !== undefined) {
      const { code, message } = error;
      await settle(exchange, { log, stored: [], known: [], rejected: [{ id: one.id, code, message }] }, rows);
      return log;
    }
    const half = rows.length >> 1;
    const real = await send(exchange, log, rows.slice(0, half));
    return real === log ? send(exchange, log, rows.slice(half)) : real;
  }
  await settle(exchange, pushed, rows);
  return pushed.log;
}

function isAboutOps({ status, field }: ServerRefusal): boolean {
  return status === 413 || (status === 422 && field !== "book" && field !== "log");
}

// settle writes down what the log has now, and what it refused. The server can only speak of what it was sent.
async function settle(exchange: Exchange, { log, stored, known, rejected }: Pushed, rows: readonly StoredOp[]): Promise<void> {
  const sent = new Set(rows.map((row) => row.id));
  const has = [...stored, ...known].filter((id) => sent.has(id));
  const refused = rejected.filter(({ id }) => sent.has(id));
  await exchange.tables.write(logStores, async (tx) => {
    await mark(tx, exchange.sent, log, has, { book: exchange.book });
    await pardon(tx, log, has);
    if (refused.length > 0) await refuse(tx, log, refused);
  });
  exchange.outbox.done([...has, ...refused.map(({ id }) => id)]);
}
