// The whole log as a file, and back: one line that names the book, then one op a line, as received.

import { Held } from "../db/held.ts";
import { isId, isRejection, readOp, type RejectionCode, type StoredOp } from "../op/op.ts";
import { receive, receiveStores, rowOf, type Taken } from "../db/receive.ts";
import type { Tables } from "../db/tables.ts";

export interface BadLine {
  readonly line: number; // from 1, as an editor counts
  readonly id: string; // "" when it cannot be read
  readonly code: RejectionCode;
}

export type ImportResult =
  | {
      readonly kind: "read"; readonly stored: readonly string[]; readonly known: number; readonly bad: readonly BadLine[];
      readonly records: number; // that the new ops are of
      readonly photos: number; // of them: what tells of a photo; the picture itself is in no file
    }
  | { readonly kind: "not_ours" | "newer" } // not such a file; or one that a newer app wrote
  | { readonly kind: "other_book"; readonly book: string };

const format = 1;
const pageSize = 500;

// exported is the file of all ops. Its name ends in .txt because phones share no other text.
export async function exported(tables: Tables, book: string, now: number): Promise<File> {
  const parts = [`${JSON.stringify({ rimside: format, book })}\n`];
  for (let after = ""; ; ) {
    const rows = await tables.read(["ops"], (tx) => tx.page("ops", after, pageSize));
    const last = rows.at(-1);
    if (last === undefined) break;
    parts.push(rows.map((row) => `${oneLine(row.bytes)}\n`).join(""));
    after = last.id;
  }
  return new File(parts, `rimside-${new Date(now).toISOString().slice(0, 10)}.txt`, { type: "text/plain" });
}

// An op may have come with line ends between its members; inside its texts they are always escaped.
function oneLine(bytes: string): string {
  return bytes.replace(/[\r\n]+/g, " ");
}

// linesOf splits a file; a line that is not UTF-8 gives undefined.
export function linesOf(bytes: Uint8Array): (string | undefined)[] {
  const decoder = new TextDecoder("utf-8", { fatal: true });
  const lines: (string | undefined)[] = [];
  for (let from = 0; from <= bytes.length; ) {
    const found = bytes.indexOf(10, from);
    const end = found < 0 ? bytes.length : found;
    try {
      lines.push(decoder.decode(bytes.subarray(from, end)));
    } catch {
      lines.push(undefined);
    }
    from = end + 1;
  }
  return lines;
}

// imported takes the good lines in and names the bad ones.
export async function imported(tables: Tables, book: string, lines: readonly (string | undefined)[], tell: (taken: Taken) => Promise<void>): Promise<ImportResult> {
  const wrong = wrongHeader(lines[0] ?? "", book);
  if (wrong !== undefined) return wrong;
  const bad: BadLine[] = [];
  const stored: string[] = [];
  const [recs, photos] = [new Set<string>(), new Set<string>()];
  let known = 0;
  const held = lines.length > pageSize ? await Held.read(tables) : undefined;
  for (let from = 1; from < lines.length; from += pageSize) {
    const { rows, lineOf } = readLines(lines, from, bad);
    const taken = await tables.write(receiveStores, (tx) => receive(tx, rows, held));
    for (const row of taken.refused) bad.push({ line: lineOf.get(row) ?? 0, id: row.id, code: "other_content" });
    stored.push(...taken.stored);
    const fresh = new Set(taken.stored);
    for (const row of rows) {
      if (!fresh.has(row.id)) continue;
      recs.add(row.rec);
      if (row.kind === "photo") photos.add(row.rec);
    }
    known += taken.known.length;
    await tell(taken);
  }
  return { kind: "read", stored, known, bad: bad.sort((a, b) => a.line - b.line), records: recs.size, photos: photos.size };
}

function wrongHeader(line: string, book: string): ImportResult | undefined {
  let header: { rimside?: unknown; book?: unknown } | null;
  try {
    header = JSON.parse(line.replace(/^\uFEFF/, "")) as typeof header;
  } catch {
    return { kind: "not_ours" };
  }
  if (typeof header?.rimside !== "number") return { kind: "not_ours" };
  if (header.rimside !== format) return { kind: "newer" };
  if (!isId(header.book)) return { kind: "not_ours" };
  return header.book === book ? undefined : { kind: "other_book", book: header.book };
}

function readLines(lines: readonly (string | undefined)[], from: number, bad: BadLine[]): { rows: StoredOp[]; lineOf: Map<StoredOp, number> } {
  const rows: StoredOp[] = [];
  const lineOf = new Map<StoredOp, number>();
  lines.slice(from, from + pageSize).forEach((text, i) => {
    const line = from + i + 1;
    if (text?.trim() === "") return;
    const op = text === undefined ? { id: "", code: "op_malformed" as const, member: "" } : readOp(text.trim());
    if (isRejection(op)) {
      bad.push({ line, id: op.id, code: op.code });
      return;
    }
    const row = rowOf(op, (text as string).trim());
    rows.push(row);
    lineOf.set(row, line);
  });
  return { rows, lineOf };
}
