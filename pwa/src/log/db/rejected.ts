// What could not be saved somewhere: ops and photos that a server did not take, or ops that this phone did not take from
// one. They are listed until a person has read it.

import { opOf } from "../op/erase.ts";
import { isRejection, type Op, readOp } from "../op/op.ts";
import type { Refusal, RejectedRow, Tables, Tx } from "./tables.ts";

export interface RejectedOp {
  readonly id: string; // of the op; of a photo its SHA-256
  readonly log: string;
  readonly code: string;
  readonly message: string; // the server's words, "" when this phone refused
  readonly op?: Op; // undefined: a photo, or an op that cannot be read
}

const all = 2 ** 32 - 1;

// ownFaults are the codes that say of an op, or of a photo, that this server will never take it. Any other says something
// of the server: then it is offered again.
const ownFaults = new Set([
  "op_malformed", "op_too_large", "at_out_of_range", "other_content", "body_too_large",
  "blob_wrong_hash", "blob_wrong_type", "blob_too_large", "blob_bad_name", "wrong_content_type",
]);

export function isOwnFault(code: string): boolean {
  return ownFaults.has(code);
}

// refuse lists what a log refused, beside what it or others refused before.
export async function refuse(tx: Tx, log: string, refused: readonly (Refusal & { readonly id: string; readonly bytes?: string })[]): Promise<void> {
  const held = await tx.get("rejected", refused.map(({ id }) => id));
  tx.put("rejected", refused.map(({ id, bytes, code, message }, i): RejectedRow => {
    const { dismissed, ...row } = held[i] ?? { id, byLog: {} };
    const again = dismissed === true && row.byLog[log]?.code === code;
    return { ...row, ...(bytes !== undefined && { bytes }), byLog: { ...row.byLog, [log]: { code, message } }, ...(again && { dismissed }) };
  }));
}

// refusedBy gives what is not to be sent to a log again. An app of before also noted here what was the server's fault.
export async function refusedBy(tx: Tx, log: string): Promise<ReadonlySet<string>> {
  const rows = await tx.page("rejected", "", all);
  return new Set(rows.filter((row) => isOwnFault(row.byLog[log]?.code ?? "")).map((row) => row.id));
}

// pardon forgets what a log refused, all of it or the named, because it is offered again or was taken after all.
export async function pardon(tx: Tx, log: string, ids?: readonly string[]): Promise<void> {
  const rows = await tx.page("rejected", "", all); // few: looking for each id would take longer
  const meant = ids && new Set(ids);
  for (const row of rows) {
    if (meant?.has(row.id) === false || !Object.hasOwn(row.byLog, log)) continue;
    const { [log]: _, ...byLog } = row.byLog;
    if (Object.keys(byLog).length === 0 && row.dismissed !== true) tx.remove("rejected", [row.id]);
    else tx.put("rejected", [{ ...row, byLog }]);
  }
}

// forgetValues drops the texts of refused ops whose records were erased.
export async function forgetValues(tx: Tx, recs: ReadonlySet<string>): Promise<void> {
  for (const row of await tx.page("rejected", "", all)) {
    const { bytes, ...withoutText } = row;
    const op = bytes === undefined ? undefined : readOp(bytes);
    if (op !== undefined && !isRejection(op) && recs.has(op.rec)) tx.put("rejected", [withoutText]);
  }
}

export async function listRejected(tables: Tables): Promise<readonly RejectedOp[]> {
  return tables.read(["rejected", "ops"], async (tx) => {
    const rows = (await tx.page("rejected", "", all)).filter((row) => row.dismissed !== true);
    const held = await tx.get("ops", rows.map((row) => row.id));
    return rows.flatMap((row, i) => listed(row, held[i] && opOf(held[i])));
  });
}

// dismiss takes it off the list. It stays known as refused, so that it is not offered again and again.
export async function dismiss(tables: Tables, id: string): Promise<void> {
  await tables.write(["rejected"], async (tx) => {
    const [row] = await tx.get("rejected", [id]);
    if (row !== undefined) tx.put("rejected", [{ ...row, dismissed: true }]);
  });
}

function listed(row: RejectedRow, held: Op | undefined): RejectedOp[] {
  const [log, refusal] = Object.entries(row.byLog).at(-1) ?? [];
  if (log === undefined || refusal === undefined) return [];
  const read = row.bytes === undefined ? held : readOp(row.bytes);
  const op = read === undefined || isRejection(read) ? undefined : read;
  return [{ id: row.id, log, ...refusal, ...(op && { op }) }];
}
