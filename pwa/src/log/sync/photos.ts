// Photos on this phone: kept under their SHA-256, and sent to the server after the ops that name them.

import { laterHex } from "../op/sha256.ts";
import { changeLog, logRow, logStores, photosOf, unmarkPhotos } from "../db/logs.ts";
import { isOwnFault, refuse, refusedBy } from "../db/rejected.ts";
import type { Exchange } from "./exchange.ts";
import type { Pace } from "./pace.ts";
import { ServerRefusal, ServerTrouble, type ServerApi } from "./server_api.ts";
import type { PhotoRow, Tables } from "../db/tables.ts";

// putPhoto keeps a photo and gives its name.
export async function putPhoto(tables: Tables, blob: Blob): Promise<string> {
  const row = await rowOf(blob);
  await tables.write(["photos"], async (tx) => tx.put("photos", [row]));
  return row.sha256;
}

async function rowOf(blob: Blob): Promise<PhotoRow> {
  const bytes = await blob.arrayBuffer();
  return { sha256: await laterHex(new Uint8Array(bytes)), type: blob.type, bytes };
}

// getPhoto finds a photo on this phone, or fetches it and keeps it. Undefined: nobody has it, or it was erased.
export async function getPhoto(tables: Tables, api: ServerApi, name: string): Promise<Blob | undefined> {
  const [row] = await tables.read(["photos"], (tx) => tx.get("photos", [name]));
  if (row !== undefined) return new Blob([row.bytes], { type: row.type });
  try {
    const blob = await api.getBlob(name);
    const fetched = await rowOf(blob);
    if (fetched.sha256 !== name) return undefined; // damaged on its way
    await tables.write(["photos"], async (tx) => tx.put("photos", [fetched]));
    return blob;
  } catch (error) {
    if (error instanceof ServerRefusal && (error.status === 404 || error.status === 410)) return undefined;
    throw error;
  }
}

const mostAsked = 200;

// unsentPhotos lists the photos that a log's server has not got and has not refused.
export async function unsentPhotos(tables: Tables, log: string): Promise<readonly string[]> {
  return tables.read(["photos", ...logStores], async (tx) => {
    const all = await tx.keys("photos");
    if (all.length === 0) return [];
    const [sent, refused] = [new Set(await tx.sentTo(photosOf(log))), await refusedBy(tx, log)];
    return all.filter((name) => !sent.has(name) && !refused.has(name));
  });
}

// sendPhotos sends what the server has not got, one after the other: what was sent stays sent, whatever comes then. Now and
// then it asks about what it has sent as well: a disk may lose what it had.
export async function sendPhotos(exchange: Sending, log: string): Promise<void> {
  const { tables, api } = exchange;
  await askAgain(exchange, log);
  const queue = await unsentPhotos(tables, log);
  for (let from = 0; from < queue.length; from += mostAsked) {
    const asked = queue.slice(from, from + mostAsked);
    const missing = new Set(await api.missingBlobs(asked));
    await sent(tables, log, asked.filter((name) => !missing.has(name)));
    for (const name of asked) if (missing.has(name)) await send(exchange, log, name);
  }
}

export type Sending = Pick<Exchange, "tables" | "api" | "paces" | "now" | "can">;

const aDay = 24 * 60 * 60 * 1000; // ms

async function askAgain({ tables, api, now }: Sending, log: string): Promise<void> {
  const [row, marked] = await tables.read(["logs", "sent"], async (tx) => [await logRow(tx, log), await tx.sentTo(photosOf(log))] as const);
  if (marked.length === 0 || Math.abs(now() - (row.photosAsked ?? 0)) < aDay) return;
  const here = new Set(await tables.read(["photos"], (tx) => tx.keys("photos")));
  const asked = marked.filter((name) => here.has(name)); // only what is here can be sent again
  const lost = new Set<string>();
  for (let from = 0; from < asked.length; from += mostAsked) {
    for (const name of await api.missingBlobs(asked.slice(from, from + mostAsked))) lost.add(name);
  }
  await tables.write(logStores, async (tx) => {
    if (lost.size > 0) await unmarkPhotos(tx, log, lost);
    await changeLog(tx, log, { photosAsked: now() });
  });
}

async function send({ tables, api, paces, now, can }: Sending, log: string, name: string): Promise<void> {
  const [row] = await tables.read(["photos"], (tx) => tx.get("photos", [name]));
  if (row === undefined) return; // erased meanwhile
  try {
    if (can.has("parts")) await sendParts(api, paces.photo, now, row);
    else await api.putBlob(name, row.type, row.bytes);
    await sent(tables, log, [name]);
  } catch (error) {
    if (!(error instanceof ServerRefusal) || !isFinal(error)) throw error;
    await drop(tables, log, row, error);
  }
}

// sendParts goes on where the server is, also after a part that did not arrive whole.
async function sendParts(api: ServerApi, pace: Pace, now: () => number, { sha256: name, type, bytes }: PhotoRow): Promise<void> {
  let { have, whole } = await api.partOf(name);
  while (!whole) {
    const size = Math.min(pace.size, bytes.byteLength - have);
    const begun = now();
    try {
      const before = have;
      ({ have, whole } = await api.addPart(name, type, before, bytes.byteLength, bytes.slice(before, before + size)));
      if (!whole && have <= before) throw new ServerTrouble(new Error("a part was not kept"));
      pace.took(now() - begun, size);
    } catch (error) {
      if (error instanceof ServerTrouble) pace.failed(size);
      throw error; // the next round goes on from there
    }
  }
}

// 410: its record was erased. The others: the server will never take it. Faults of the server are not among them.
function isFinal({ status, code }: ServerRefusal): boolean {
  return status === 410 || ([413, 415, 422].includes(status) && isOwnFault(code));
}

async function drop(tables: Tables, log: string, { sha256: name }: PhotoRow, { status, code, message }: ServerRefusal): Promise<void> {
  await tables.write(["photos", ...logStores], async (tx) => {
    if (status === 410) tx.remove("photos", [name]);
    else await refuse(tx, log, [{ id: name, code, message }]);
  });
}

async function sent(tables: Tables, log: string, names: readonly string[]): Promise<void> {
  const [id] = names;
  if (id !== undefined) await tables.write(["sent"], async (tx) => tx.put("sent", [{ log: photosOf(log), id, ids: names }]));
}
