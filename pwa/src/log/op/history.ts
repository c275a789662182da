// What was done to a record, when and by whom.

import { opOf } from "./erase.ts";
import type { Op, StoredOp } from "./op.ts";

export interface HistoryEntry {
  readonly op: string;
  readonly at: number;
  readonly kind: string;
  readonly author: string;
  readonly device: string;
  readonly set: Op["set"]; // values are null once the record was erased
  readonly via?: string; // the device whose session brought it to the server
  readonly receivedAt?: number;
  readonly erased?: boolean;
}

// historyOf lists a record's ops, newest first.
export function historyOf(rows: readonly StoredOp[]): readonly HistoryEntry[] {
  return rows.toSorted((a, b) => b.at - a.at || (a.id < b.id ? 1 : -1)).map(entry);
}

function entry(row: StoredOp): HistoryEntry {
  const { author, device, set, erased } = opOf(row);
  const { id, at, kind, via, receivedAt } = row;
  return {
    op: id, at, kind, author: author ?? "", device: device ?? "", set,
    ...(via !== undefined && { via }), ...(receivedAt !== undefined && { receivedAt }), ...(erased === true && { erased }),
  };
}
