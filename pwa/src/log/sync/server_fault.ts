// What is wrong with a server, which is no fault of what it was sent.

import type { About } from "./answers.ts";
import { changeLog, logRow, logStores } from "../db/logs.ts";
import { pardon } from "../db/rejected.ts";
import type { Exchange } from "./exchange.ts";
import { damagedPage, ServerRefusal, ServerTrouble } from "./server_api.ts";

// These are told apart on the screen; anything else of the server's own is "internal".
const told = ["damaged", "full", "read_only", "busy"];

// faultOf gives the code of what is wrong with the server, "" when the error says nothing of that kind. Servers of before
// answered 422 when their book was damaged.
export function faultOf(error: unknown): string {
  if (error instanceof ServerTrouble) return error.message === damagedPage ? "damaged_page" : error.status === 413 ? "too_small" : "";
  if (!(error instanceof ServerRefusal)) return "";
  if (told.includes(error.code)) return error.code;
  return error.status >= 500 ? "internal" : "";
}

// offerAgain forgets what a server refused when it is another program than it was, or was not well then.
export async function offerAgain({ tables, outbox }: Exchange, { log, version = "" }: About): Promise<void> {
  const row = await tables.read(["logs"], (tx) => logRow(tx, log));
  const isOther = row.lastMet > 0 && row.version !== version;
  if (!isOther && (row.fault ?? "") === "") return;
  await tables.write(logStores, async (tx) => {
    await pardon(tx, log);
    await changeLog(tx, log, { version, fault: "" });
  });
  outbox.forget();
}
