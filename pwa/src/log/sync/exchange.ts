// One meeting with the server: send what it lacks, fetch what came, and see that both hold the same. When its log is
// another than remembered, shorter, or holds other ops than this phone thinks, everything is exchanged anew, once.

import { changeLog, gap, logRow, logStores, reset, type SentList, type Sums, unmark } from "../db/logs.ts";
import type { Outbox } from "./outbox.ts";
import type { Paces } from "./pace.ts";
import { pull } from "./pull.ts";
import { push } from "./push.ts";
import { ServerRefusal, type ServerApi } from "./server_api.ts";
import type { About } from "./answers.ts";
import type { Tables } from "../db/tables.ts";
import type { Update } from "../db/views.ts";

export interface Exchange {
  readonly tables: Tables;
  readonly api: ServerApi;
  readonly book: string;
  readonly outbox: Outbox;
  readonly sent: SentList;
  readonly paces: Paces;
  readonly now: () => number;
  readonly can: ReadonlySet<string>; // what the server says that it can beyond the first
  readonly report: (phase: "sending" | "fetching", done: number, total: number) => void;
  readonly hinder: (error: unknown) => void; // something did not go, and the rest does all the same
  readonly changed: (updates: readonly Update[]) => Promise<void>;
}

export type Meeting =
  | { readonly kind: "met"; readonly log: string }
  | { readonly kind: "otherBook"; readonly book: string };

const mostTurns = 4; // the log may change under the work, and one exchange may have to start anew

export async function meet(exchange: Exchange, about: About): Promise<Meeting> {
  if (about.book !== "" && about.book !== exchange.book) return { kind: "otherBook", book: about.book };
  try {
    const log = await agree(exchange, about);
    return { kind: "met", log };
  } catch (error) {
    // Another phone was the first to bring a book to an empty server, just now.
    if (!(error instanceof ServerRefusal) || error.code !== "other_book") throw error;
    return { kind: "otherBook", book: (await exchange.api.about()).book };
  }
}

async function agree(exchange: Exchange, about: About): Promise<string> {
  let log = about.log;
  let theirs: Sums | undefined = about;
  let anew = false;
  for (let turn = 0; turn < mostTurns; turn++) {
    const before: string = log;
    const isEven = theirs !== undefined && (await gapTo(exchange, log, theirs)) === "";
    log = await push(exchange, log);
    if (log !== before) {
      theirs = undefined;
      continue;
    }
    if (isEven) return log; // but for what this phone had to send, nothing is new: so nothing is fetched
    const end = await pull(exchange, log);
    if (end.kind === "other") {
      log = end.log;
    } else if (end.kind === "behind") {
      anew = await startAnew(exchange, log);
    } else {
      const left = await gapTo(exchange, log, end.theirs);
      if (left === "" || anew || left === (await stuckGap(exchange, log))) return settle(exchange, log, left);
      if (!(await sendWanted(exchange, log))) anew = await startAnew(exchange, log);
    }
    theirs = undefined;
  }
  return log;
}

async function gapTo({ tables }: Exchange, log: string, theirs: Sums): Promise<string> {
  return gap(await tables.read(["logs"], (tx) => logRow(tx, log)), theirs);
}

async function stuckGap({ tables }: Exchange, log: string): Promise<string> {
  return (await tables.read(["logs"], (tx) => logRow(tx, log))).stuck ?? "";
}

async function startAnew({ tables, outbox }: Exchange, log: string): Promise<true> {
  await tables.write(logStores, (tx) => reset(tx, log));
  outbox.forget();
  return true;
}

// sendWanted offers what the server says that it lost, which costs less than exchanging everything. It tells whether there
// was any.
async function sendWanted({ tables, outbox, api, can }: Exchange, log: string): Promise<boolean> {
  if (!can.has("wanted")) return false;
  const { ops } = await api.wanted();
  const lost = await tables.write(["ops", ...logStores], async (tx) => {
    const held = await tx.get("ops", ops);
    return unmark(tx, log, held.flatMap((row) => row?.id ?? []));
  });
  outbox.forget();
  return lost > 0;
}

// settle remembers a gap that could not be closed: trying again each time would only cost the network.
async function settle(exchange: Exchange, log: string, left: string): Promise<string> {
  if ((await stuckGap(exchange, log)) !== left) await exchange.tables.write(logStores, (tx) => changeLog(tx, log, { stuck: left }));
  return log;
}
