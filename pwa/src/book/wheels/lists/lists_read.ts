// A list that comes in: what it would change, told before anything is changed. What is wrong is named by line and column
// and left out; the rest is taken.

import type { Change } from "../../../log/book_log.ts";
import { type Json, sameValue } from "../../../log/op/json.ts";
import { type RecordState, valueOf } from "../../../log/op/merge.ts";
import { isId } from "../../../log/op/op.ts";
import { listed, w } from "../../../words/index.ts";
import { csvRows, type CsvRow, fileText, unguard } from "./csv.ts";
import { kindWords } from "../../value/kind_words.ts";
import { type Column, idColumn, type Shelf } from "./lists.ts";
import { readCell } from "./lists_cell.ts";
import { type Head, headOf } from "./lists_head.ts";
import { Names, short } from "./lists_names.ts";
import { cellOf, isKept } from "./lists_write.ts";

export interface ListPlan {
  readonly changes: readonly Change[];
  readonly fresh: number;
  readonly changed: number;
  readonly same: number; // rows that change nothing
  readonly left: number; // rows left out
  readonly reasons: readonly string[]; // why
  readonly edits: readonly string[]; // which records change, and in which columns
  readonly unknown: readonly string[]; // columns left out
}

export type ListRead = ListPlan | { readonly refused: string };

export const mostBytes = 4 << 20;
const mostRows = 10_000;

// readList reads a file against the book.
export function readList(bytes: Uint8Array, shelf: Shelf, newRec: () => string): ListRead {
  if (bytes.length > mostBytes) return { refused: w("listFault.large", { mb: mostBytes >> 20 }) };
  const text = fileText(bytes);
  if (text === undefined) return { refused: w("listFault.coded") };
  const head = headOf(text, shelf);
  if (head === undefined) return { refused: w("listFault.header", { kind: kindWords(shelf.kind) }) };
  const reader = new Reader(shelf, head, newRec);
  let rows = 0;
  for (const row of csvRows(text, head.separator)) {
    if (rows++ > mostRows) return { refused: w("listFault.rows", { n: mostRows }) };
    if (rows > 1) reader.take(row);
  }
  return reader.plan();
}

class Reader {
  readonly #shelf: Shelf;
  readonly #head: Head;
  readonly #newRec: () => string;
  readonly #names: Names;
  readonly #met = new Map<string, number>(); // id -> line
  readonly #changes: Change[] = [];
  readonly #reasons: string[] = [];
  readonly #edits: string[] = [];
  #fresh = 0;
  #same = 0;
  #left = 0;

  constructor(shelf: Shelf, head: Head, newRec: () => string) {
    this.#shelf = shelf;
    this.#head = head;
    this.#newRec = newRec;
    this.#names = new Names(shelf.states);
  }

  plan(): ListPlan {
    const changed = this.#changes.length - this.#fresh;
    return {
      changes: this.#changes, fresh: this.#fresh, changed, same: this.#same, left: this.#left,
      reasons: this.#reasons, edits: this.#edits, unknown: this.#head.unknown,
    };
  }

  take(row: CsvRow): void {
    if (row.cells.every((cell) => cell.trim() === "") && row.fault === undefined) return;
    const wrong = this.#wrongRow(row);
    if (wrong !== "") return this.#leave(w("list.badRow", { line: row.line, reason: wrong }));
    const id = this.#idIn(row);
    if (id !== "" && !isId(id)) return this.#leave(this.#bad(row, idColumn, w("listFault.id", { text: short(id) })));
    const state = this.#names.find(id);
    const unfit = this.#unfit(id, state);
    if (unfit !== "") return this.#leave(this.#bad(row, idColumn, unfit));
    if (id !== "") this.#met.set(id, row.line);
    this.#change(row, id, state);
  }

  #leave(...reasons: readonly string[]): void {
    this.#left++;
    this.#reasons.push(...reasons);
  }

  #bad({ line }: CsvRow, column: string, reason: string): string {
    return w("list.badCell", { line, column, reason });
  }

  #wrongRow({ cells, fault }: CsvRow): string {
    if (fault === "open") return w("listFault.open");
    if (fault === "after") return w("listFault.after");
    return cells.slice(this.#head.width).some((cell) => cell.trim() !== "") ? w("listFault.wide", { n: cells.length, most: this.#head.width }) : "";
  }

  #idIn({ cells }: CsvRow): string {
    const at = this.#head.columns.indexOf(idColumn);
    return at < 0 ? "" : unguard(cells[at] ?? "").trim().toLowerCase();
  }

  #unfit(id: string, state: RecordState | undefined): string {
    const line = this.#met.get(id);
    if (line !== undefined) return w("listFault.twice", { line });
    if (state === undefined) return "";
    if (state.erased) return w("listFault.erased");
    if (state.kind !== this.#shelf.kind) return w("listFault.kind", { kind: kindWords(state.kind) });
    return state.deleted ? w("listFault.deleted") : "";
  }

  #change(row: CsvRow, id: string, state: RecordState | undefined): void {
    const set: Record<string, Json> = {};
    const faults: string[] = [];
    this.#head.columns.forEach((column, i) => {
      const cell = row.cells[i] ?? "";
      if (column === undefined || column === idColumn || cell === "" || this.#isAsWritten(cell, column, state)) return;
      if (column.spec.type !== "text" && cell.trim() === "") return;
      // Changed here and taken back, a weight that is not for this phone would have been typed on it.
      const read = this.#isKept(column, state) ? { fault: w("listFault.kept") } : readCell(cell, column, this.#names);
      if ("fault" in read) faults.push(this.#bad(row, column.name, read.fault));
      else if (this.#isNews(read.value, column, state)) set[column.name] = read.value;
    });
    if (faults.length > 0) return this.#leave(...faults);
    if (state === undefined) return this.#add(row, id, set);
    if (Object.keys(set).length === 0) return void this.#same++;
    this.#edits.push(w("list.edit", { name: this.#nameOf(state), columns: listed(Object.keys(set)) }));
    const undated = "measured_mm" in set && !("measured_at" in set) && valueOf(state, "measured_at") != null;
    this.#changes.push({ rec: state.rec, kind: state.kind, set: undated ? { ...set, measured_at: null } : set, shown: state });
  }

  #add(row: CsvRow, id: string, set: Readonly<Record<string, Json>>): void {
    const known = Object.entries(set).filter(([, value]) => value !== null);
    if (known.length === 0) return this.#leave(w("list.badRow", { line: row.line, reason: w("listFault.nothing") }));
    this.#fresh++;
    this.#changes.push({ rec: id || this.#newRec(), kind: this.#shelf.kind, set: Object.fromEntries(known) });
  }

  // isAsWritten: what came back as it went out is no edit, even where it would not be taken from a person.
  #isAsWritten(cell: string, column: Column, state: RecordState | undefined): boolean {
    if (state === undefined) return false;
    return ([".", ","] as const).some((decimal) => cellOf(state, column, this.#shelf, this.#names, decimal) === cell);
  }

  #isKept(column: Column, state: RecordState | undefined): boolean {
    return state !== undefined && isKept(state, column, this.#shelf.who);
  }

  #isNews(value: Json, { name }: Column, state: RecordState | undefined): boolean {
    if (state === undefined) return true;
    const now = valueOf(state, name) ?? null;
    return !sameValue(value, now) && !(value === null && now === "");
  }

  #nameOf(state: RecordState): string {
    const name = valueOf(state, "name");
    return typeof name === "string" && name !== "" ? short(name) : w("list.byId", { id: state.rec.slice(0, 8) });
  }
}
