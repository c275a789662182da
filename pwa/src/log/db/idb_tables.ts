// The tables in IndexedDB. Many requests are made at once and only the last is waited for: they end in order.

import { answered, type Database, type StoreName } from "./idb.ts";
import type { StoredOp } from "../op/op.ts";
import type { Key, Rows, SentRow, StatesRow, Tables, Tx } from "./tables.ts";
import { read, write } from "./write.ts";

export class IdbTables implements Tables {
  readonly #db: Database;

  constructor(db: Database) {
    this.#db = db;
  }

  get name(): string {
    return this.#db.name;
  }

  read<T>(stores: readonly StoreName[], work: (tx: Tx) => Promise<T>): Promise<T> {
    return read(this.#db, stores, (tx) => work(new IdbTx(tx)));
  }

  write<T>(stores: readonly StoreName[], work: (tx: Tx) => Promise<T>): Promise<T> {
    return write(this.#db, stores, (tx) => work(new IdbTx(tx)));
  }
}

class IdbTx implements Tx {
  readonly #tx: IDBTransaction;

  constructor(tx: IDBTransaction) {
    this.#tx = tx;
  }

  get<S extends StoreName>(store: S, keys: readonly Key[]): Promise<readonly (Rows[S] | undefined)[]> {
    const from = this.#tx.objectStore(store);
    return results(keys.map((key): IDBRequest<Rows[S] | undefined> => from.get(key as IDBValidKey)));
  }

  opsOf(recs: readonly string[]): Promise<readonly (readonly StoredOp[])[]> {
    const index = this.#tx.objectStore("ops").index("rec");
    return results(recs.map((rec): IDBRequest<StoredOp[]> => index.getAll(rec)));
  }

  statesOf(kind: string): Promise<readonly StatesRow[]> {
    const all: IDBRequest<StatesRow[]> = this.#tx.objectStore("records").index("kind").getAll(kind);
    return answered(all);
  }

  page<S extends StoreName>(store: S, after: string, limit: number): Promise<readonly Rows[S][]> {
    const rows: IDBRequest<Rows[S][]> = this.#tx.objectStore(store).getAll(IDBKeyRange.lowerBound(after, true), limit);
    return answered(rows);
  }

  async keys(store: StoreName): Promise<readonly string[]> {
    return (await answered(this.#tx.objectStore(store).getAllKeys())) as string[];
  }

  async sentTo(log: string): Promise<readonly string[]> {
    const rows: IDBRequest<SentRow[]> = this.#tx.objectStore("sent").getAll(under(log));
    return (await answered(rows)).flatMap((row) => row.ids);
  }

  count(store: StoreName): Promise<number> {
    return answered(this.#tx.objectStore(store).count());
  }

  put<S extends StoreName>(store: S, rows: readonly Rows[S][]): void {
    const into = this.#tx.objectStore(store);
    for (const row of rows) into.put(row);
  }

  remove(store: StoreName, keys: readonly Key[]): void {
    const from = this.#tx.objectStore(store);
    for (const key of keys) from.delete(key as IDBValidKey);
  }

  forgetSent(log: string): void {
    this.#tx.objectStore("sent").delete(under(log));
  }
}

// under spans all keys [log, id]: a list sorts after every text.
function under(log: string): IDBKeyRange {
  return IDBKeyRange.bound([log], [log, []]);
}

async function results<T>(requests: readonly IDBRequest<T>[]): Promise<readonly T[]> {
  const last = requests.at(-1);
  if (last === undefined) return [];
  await answered(last);
  return requests.map((request) => request.result);
}
