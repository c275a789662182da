// The one way to write on this phone: everything in one transaction, and "saved" means that it is on the disk.

import { type Database, type StoreName, troubleFrom } from "./idb.ts";

type Work<T> = (tx: IDBTransaction) => T | Promise<T>;

// write runs the work in one transaction over the named stores and resolves on its complete event. The work awaits
// nothing but requests of this transaction (see answered); it may run twice when the first handle turns out to be dead.
// It rejects with a StorageTrouble when the phone refuses, and with the work's own error when the work threw.
export function write<T>(db: Database, stores: readonly StoreName[], work: Work<T>): Promise<T> {
  return attempt(db, stores, "readwrite", work);
}

// read is the same for looking only.
export function read<T>(db: Database, stores: readonly StoreName[], work: Work<T>): Promise<T> {
  return attempt(db, stores, "readonly", work);
}

async function attempt<T>(
  db: Database, stores: readonly StoreName[], mode: "readonly" | "readwrite", work: Work<T>,
): Promise<T> {
  const handle = await db.handle();
  try {
    return await transact(handle, stores, mode, work);
  } catch (error) {
    if (!handleDied(db, handle, error)) throw asTrouble(error);
    db.drop(handle);
  }
  const next = await db.handle();
  return transact(next, stores, mode, work).catch((error: unknown) => {
    throw asTrouble(error);
  });
}

function handleDied(db: Database, handle: IDBDatabase, error: unknown): boolean {
  if (db.died(handle)) return true;
  return error instanceof DOMException && (error.name === "InvalidStateError" || error.name === "UnknownError");
}

// Only the browser's own refusals are storage trouble; a mistake in the work keeps its name and stack.
function asTrouble(error: unknown): unknown {
  return error instanceof DOMException && error.name !== "DataCloneError" ? troubleFrom(error) : error;
}

function transact<T>(
  handle: IDBDatabase, stores: readonly StoreName[], mode: "readonly" | "readwrite", work: Work<T>,
): Promise<T> {
  return new Promise((resolve, reject) => {
    const tx = handle.transaction([...stores], mode, { durability: "strict" });
    let outcome: { value: T } | undefined;
    let failure: unknown;
    const fail = (error: unknown): void => {
      failure ??= error;
      try {
        tx.abort();
      } catch {
        if (tx.error === null) reject(failure); // already over: nothing to undo
      }
    };
    const done = (value: T): void => {
      try {
        tx.commit(); // refuses when the transaction is over already
        outcome = { value };
      } catch {
        if (tx.error === null) reject(new Error("the work awaited something other than its transaction"));
      }
    };
    tx.oncomplete = () => {
      if (outcome === undefined) reject(new Error("the work awaited something other than its transaction"));
      else resolve(outcome.value);
    };
    tx.onabort = () => reject(tx.error ?? failure ?? new DOMException("the transaction was given up", "UnknownError"));
    try {
      const result = work(tx);
      if (result instanceof Promise) result.then(done, fail);
      else done(result);
    } catch (error) {
      fail(error);
    }
  });
}
