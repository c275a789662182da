// The tables in memory, for tests that play hundreds of phones.

import { type StoreName, storeNames } from "./idb.ts";
import type { StoredOp } from "../op/op.ts";
import type { Key, Rows, StatesRow, Tables, Tx } from "./tables.ts";

type Row = Rows[StoreName];

const keyOf: { readonly [S in StoreName]: (row: Rows[S]) => Key } = {
  ops: (row) => row.id, records: (row) => row.rec, logs: (row) => row.log, sent: (row) => [row.log, row.id],
  photos: (row) => row.sha256, drafts: (row) => row.name, meta: (row) => row.name, rejected: (row) => row.id,
};

const keyText = (key: Key): string => (typeof key === "string" ? key : key.join("\n"));

export class MemoryTables implements Tables {
  readonly name: string;
  readonly #stores = new Map<StoreName, Map<string, Row>>(storeNames.map((store) => [store, new Map()]));
  #last: Promise<unknown> = Promise.resolve();

  constructor(name: string) {
    this.name = name;
  }

  read<T>(_stores: readonly StoreName[], work: (tx: Tx) => Promise<T>): Promise<T> {
    return this.#next(() => work(new MemoryTx(this.#stores, [])));
  }

  write<T>(_stores: readonly StoreName[], work: (tx: Tx) => Promise<T>): Promise<T> {
    return this.#next(async () => {
      const undo: (() => void)[] = [];
      try {
        return await work(new MemoryTx(this.#stores, undo));
      } catch (error) {
        for (const back of undo.reverse()) back();
        throw error;
      }
    });
  }

  // One transaction after the other, which is what IndexedDB shows too.
  #next<T>(work: () => Promise<T>): Promise<T> {
    const result = this.#last.then(work);
    this.#last = result.catch(() => undefined);
    return result;
  }
}

class MemoryTx implements Tx {
  readonly #stores: ReadonlyMap<StoreName, Map<string, Row>>;
  readonly #undo: (() => void)[];

  constructor(stores: ReadonlyMap<StoreName, Map<string, Row>>, undo: (() => void)[]) {
    this.#stores = stores;
    this.#undo = undo;
  }

  async get<S extends StoreName>(store: S, keys: readonly Key[]): Promise<readonly (Rows[S] | undefined)[]> {
    const rows = this.#rows(store);
    return keys.map((key) => rows.get(keyText(key)));
  }

  async opsOf(recs: readonly string[]): Promise<readonly (readonly StoredOp[])[]> {
    const wanted = new Map<string, StoredOp[]>(recs.map((rec) => [rec, []]));
    for (const row of this.#sorted("ops")) wanted.get(row.rec)?.push(row);
    return recs.map((rec) => wanted.get(rec) ?? []);
  }

  async statesOf(kind: string): Promise<readonly StatesRow[]> {
    return this.#sorted("records").filter((row) => row.kind === kind);
  }

  async page<S extends StoreName>(store: S, after: string, limit: number): Promise<readonly Rows[S][]> {
    return this.#sorted(store).filter((row) => keyText(keyOf[store](row)) > after).slice(0, limit);
  }

  async keys(store: StoreName): Promise<readonly string[]> {
    return [...this.#rows(store).keys()].sort();
  }

  async sentTo(log: string): Promise<readonly string[]> {
    return this.#sorted("sent").filter((row) => row.log === log).flatMap((row) => row.ids);
  }

  async count(store: StoreName): Promise<number> {
    return this.#rows(store).size;
  }

  put<S extends StoreName>(store: S, rows: readonly Rows[S][]): void {
    for (const row of rows) this.#set(store, keyText(keyOf[store](row)), row);
  }

  remove(store: StoreName, keys: readonly Key[]): void {
    for (const key of keys) this.#set(store, keyText(key), undefined);
  }

  forgetSent(log: string): void {
    for (const row of this.#sorted("sent")) if (row.log === log) this.#set("sent", keyText([log, row.id]), undefined);
  }

  #rows<S extends StoreName>(store: S): Map<string, Rows[S]> {
    return this.#stores.get(store) as Map<string, Rows[S]>;
  }

  #sorted<S extends StoreName>(store: S): Rows[S][] {
    return [...this.#rows(store)].sort(([a], [b]) => (a < b ? -1 : 1)).map(([, row]) => row);
  }

  #set(store: StoreName, key: string, row: Row | undefined): void {
    const rows: Map<string, Row> = this.#rows(store);
    const before = rows.get(key);
    this.#undo.push(() => (before === undefined ? rows.delete(key) : rows.set(key, before)));
    if (row === undefined) rows.delete(key);
    else rows.set(key, row);
  }
}
