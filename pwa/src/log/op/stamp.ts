// What a person did becomes ops: each gets its id, its time and who it is by.

import { edit, type Intent, textOf } from "./change.ts";
import { idAbove, nextAt } from "./clock.ts";
import { endAt, isRejection, readOp, type RejectionCode, type StoredOp } from "./op.ts";
import { rowOf } from "../db/receive.ts";
import type { Tx } from "../db/tables.ts";

// OpTrouble: what a person wants to save cannot be an op.
export class OpTrouble extends Error {
  readonly code: RejectionCode;

  constructor(code: RejectionCode, member: string) {
    super(`${code} ${member}`.trim());
    this.name = "OpTrouble";
    this.code = code;
  }
}

export interface By {
  readonly now: number;
  readonly author: string;
  readonly device: string;
  readonly label: string; // what this phone's own record is called at first
  readonly random: () => string;
}

// stamped makes the ops; the first ever bring this phone's own record along.
export async function stamped(tx: Tx, intents: readonly Intent[], by: By): Promise<readonly StoredOp[]> {
  const newest = new Map<string, number>();
  const recs = [...new Set([by.device, ...intents.map(({ rec }) => rec)])];
  const held = await tx.opsOf(recs);
  recs.forEach((rec, i) => held[i]?.forEach(({ at }) => newest.set(rec, Math.max(at, newest.get(rec) ?? 0))));
  const isFirst = !newest.has(by.device) && !intents.some(({ rec }) => rec === by.device);
  const own = edit({ rec: by.device, kind: "device", set: { label: by.label } });
  const rows: StoredOp[] = [];
  for (const intent of isFirst ? [own, ...intents] : intents) {
    const at = nextAt(by.now, newest.get(intent.rec) ?? 0);
    newest.set(intent.rec, at);
    const id = at === endAt - 1 ? await above(tx, intent.rec, rows, by) : by.random();
    rows.push(row(textOf(intent, { id, at, author: by.author, device: by.device })));
  }
  return rows;
}

// above draws an id greater than all of a record: at the last moment that clocks can tell, ids decide what shows.
async function above(tx: Tx, rec: string, rows: readonly StoredOp[], by: By): Promise<string> {
  const [held] = await tx.opsOf([rec]);
  const ids = [...(held ?? []), ...rows.filter((each) => each.rec === rec)].map((each) => each.id);
  return idAbove(ids.sort().at(-1) ?? "0", by.random());
}

function row(bytes: string): StoredOp {
  const op = readOp(bytes);
  if (isRejection(op)) throw new OpTrouble(op.code, op.member);
  return rowOf(op, bytes);
}
