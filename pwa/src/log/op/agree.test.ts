// What this phone makes of ops, in words that the server's program can compare with its own: see pwa/journey/agree_test.go.

import { erasedRow, isSame } from "./erase.ts";
import { type FieldState, merge, type RecordState } from "./merge.ts";
import { isRejection, type Op, readOp, type StoredOp } from "./op.ts";

// verdict tells what becomes of some texts that come one after the other: why each is not taken, which are the same, what is
// left of each once it is erased, and what they make together of the first one's record.
function verdict(texts: readonly string[]): string {
  const said: string[] = [];
  const rows: StoredOp[] = [];
  const ops: Op[] = [];
  for (const bytes of texts) {
    const op = readOp(bytes);
    if (isRejection(op)) {
      said.push(`${op.code} ${op.id}`);
      continue;
    }
    const row = { id: op.id, rec: op.rec, at: op.at, kind: op.kind, bytes };
    const known = rows.find((each) => each.id === op.id);
    said.push(known === undefined ? "new" : isSame(known, row) ? "same" : "other", erasedRow(row).bytes);
    if (known === undefined) {
      rows.push(row);
      ops.push(op);
    }
  }
  const rec = ops[0]?.rec ?? "";
  const picture = ops.length === 0 ? "" : pictureOf(merge(rec, ops.filter((op) => op.rec === rec)));
  return [...said, picture].join("\n");
}

function pictureOf(state: RecordState): string {
  const field = ({ shown, others }: FieldState): string => [shown, ...others].map(({ op, ops }) => `${op}(${ops.join(" ")})`).join("|");
  const fields = Object.entries(state.fields).map(([name, value]) => `${JSON.stringify(name)}=${field(value)}`).sort(byPoints);
  const deletion = state.deletion === undefined ? "" : field(state.deletion);
  const names = state.clashes.map((name) => JSON.stringify(name)).sort(byPoints);
  return [state.kind, state.erased, state.deleted, state.newest, names.join(), state.unseen.join(), deletion, ...fields].join(" ");
}

// byPoints orders as Go does, which compares UTF-8.
function byPoints(a: string, b: string): number {
  const points = (text: string): string => Array.from(text, (sign) => (sign.codePointAt(0) ?? 0).toString(16).padStart(6, "0")).join("");
  return points(a) < points(b) ? -1 : 1;
}

Object.assign(globalThis, { agree: (cases: readonly (readonly string[])[]): string[] => cases.map(verdict) });
