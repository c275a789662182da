// What the log needs of a database: transactions over named stores. There are two, IndexedDB on a phone and one in
// memory for tests; the bookkeeping stands on this and knows neither.

import type { StoreName } from "./idb.ts";
import type { RecordState } from "../op/merge.ts";
import type { StoredOp } from "../op/op.ts";

// LogRow is what this phone knows of one server's log. Count and digest are those of the ops known to be in it.
export interface LogRow {
  readonly log: string;
  readonly book: string;
  readonly server: string;
  readonly name: string;
  readonly cursor: number; // arrival number there, up to which all was fetched
  readonly count: number;
  readonly digest: string;
  readonly lastMet: number; // ms since 1970 by this phone's clock; 0: not to the end yet
  readonly photosAsked?: number; // when the server was last asked about photos that it should have
  readonly version?: string; // of the server's program, when last met
  readonly fault?: string; // what was wrong with the server then, "" for nothing
  readonly stuck?: string; // the difference that exchanging everything did not remove
}

// SentRow: these ops, or photos, are in that log. One row for all that went or came together, under the first of them:
// a row each would cost as much as the ops themselves.
export interface SentRow {
  readonly log: string;
  readonly id: string;
  readonly ids: readonly string[];
}

export interface Refusal {
  readonly code: string;
  readonly message: string; // the server's words
}

// RejectedRow is an op or a photo that some log did not take, or an op that this phone did not take from it.
export interface RejectedRow {
  readonly id: string;
  readonly bytes?: string; // the op's text, when this phone holds no op of that id, or another one
  readonly byLog: Readonly<Record<string, Refusal>>;
  readonly dismissed?: boolean; // a person has read it
}

export interface PhotoRow {
  readonly sha256: string;
  readonly type: string;
  readonly bytes: ArrayBuffer; // a Blob would do, but some phones lose those they keep in a database
}

// StatesRow holds the states of some records of one kind, as they were merged at one moment: a later row's count. A row
// for each record, or states that are not one text, would double the time that fetching takes.
export interface StatesRow {
  readonly rec: string; // the row's own name, in order of writing
  readonly kind: string;
  readonly count: number; // of the states
  readonly states: string | readonly RecordState[]; // as JSON, if that can tell all of their values
  readonly gone: readonly string[]; // records that are of another kind now
}

export interface NamedRow {
  readonly name: string;
  readonly value: unknown;
  readonly at?: number; // of a draft: ms since 1970 when it was typed
}

export interface Rows {
  readonly ops: StoredOp;
  readonly records: StatesRow;
  readonly logs: LogRow;
  readonly sent: SentRow;
  readonly photos: PhotoRow;
  readonly drafts: NamedRow;
  readonly meta: NamedRow;
  readonly rejected: RejectedRow;
}

export type Key = string | readonly [log: string, id: string];

// Tx is one transaction. Its work awaits nothing but these, lest IndexedDB end it.
export interface Tx {
  get<S extends StoreName>(store: S, keys: readonly Key[]): Promise<readonly (Rows[S] | undefined)[]>;
  opsOf(recs: readonly string[]): Promise<readonly (readonly StoredOp[])[]>;
  statesOf(kind: string): Promise<readonly StatesRow[]>; // in order of writing
  // page gives the rows after a key, in the order of keys.
  page<S extends StoreName>(store: S, after: string, limit: number): Promise<readonly Rows[S][]>;
  keys(store: StoreName): Promise<readonly string[]>; // of stores keyed by one text
  sentTo(log: string): Promise<readonly string[]>; // ids
  count(store: StoreName): Promise<number>;
  put<S extends StoreName>(store: S, rows: readonly Rows[S][]): void;
  remove(store: StoreName, keys: readonly Key[]): void;
  forgetSent(log: string): void;
}

export interface Tables {
  readonly name: string;
  read<T>(stores: readonly StoreName[], work: (tx: Tx) => Promise<T>): Promise<T>;
  // write resolves when everything is on the disk; when it rejects, nothing is.
  write<T>(stores: readonly StoreName[], work: (tx: Tx) => Promise<T>): Promise<T>;
}
