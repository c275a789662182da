// Everything in the book by kind, also what was deleted or erased.

import type { RecordState } from "../../log/op/merge.ts";
import { kindWords } from "../value/kind_words.ts";
import { kinds } from "../value/kinds.ts";
import { describeRecord, type Teller } from "../value/record_words.ts";

export interface RecordLine {
  readonly rec: string;
  readonly title: string; // with its kind
  readonly name: string; // without
  readonly deleted: boolean;
  readonly erased: boolean;
  readonly state: RecordState;
}

export interface KindList {
  readonly kind: string;
  readonly title: string;
  readonly total: number;
  readonly lines: readonly RecordLine[]; // the first of them
}

const order = Object.keys(kinds);

// kindLists names at most so many of each kind: first what is there, then what was deleted, the newest on top.
export function kindLists(states: readonly RecordState[], teller: Teller, mostOf: (kind: string) => number): readonly KindList[] {
  const byKind = new Map<string, RecordState[]>();
  for (const state of states) {
    const others = byKind.get(state.kind);
    if (others === undefined) byKind.set(state.kind, [state]);
    else others.push(state);
  }
  const place = (kind: string): number => (order.includes(kind) ? order.indexOf(kind) : order.length);
  const found = [...byKind].sort(([a], [b]) => place(a) - place(b) || (a < b ? -1 : 1));
  return found.map(([kind, all]) => ({ kind, title: kindWords(kind), total: all.length, lines: linesOf(all, teller, mostOf(kind)) }));
}

function linesOf(states: readonly RecordState[], teller: Teller, most: number): readonly RecordLine[] {
  const rank = (state: RecordState): number => (state.erased ? 2 : state.deleted ? 1 : 0);
  const newest = [...states].sort((a, b) => rank(a) - rank(b) || b.newest - a.newest);
  return newest.slice(0, most).map((state) => ({
    rec: state.rec, title: describeRecord(state, teller), name: teller.nameOf(state.rec), deleted: state.deleted, erased: state.erased, state,
  }));
}
