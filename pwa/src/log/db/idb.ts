// The database on this phone: one per book, named rimside-<book>. Its version is 1 for ever, so every store that the
// log, its views and its photos need is made at the start; what is inside the values may grow, the stores do not.

export const storeNames = ["ops", "records", "logs", "sent", "photos", "drafts", "meta", "rejected"] as const;

export type StoreName = (typeof storeNames)[number];

// StorageTrouble says why this phone cannot keep something, in a form the page has words for.
export class StorageTrouble extends Error {
  readonly code: "refused" | "full" | "silent";

  constructor(code: StorageTrouble["code"], cause: unknown) {
    super(cause instanceof Error ? `${cause.name}: ${cause.message}` : String(cause), { cause });
    this.name = "StorageTrouble";
    this.code = code;
  }
}

export function troubleFrom(error: unknown): StorageTrouble {
  if (error instanceof StorageTrouble) return error;
  const full = error instanceof DOMException && error.name === "QuotaExceededError";
  return new StorageTrouble(full ? "full" : "refused", error);
}

// answered turns one request into a promise. Awaiting it keeps the transaction alive; awaiting anything else ends it.
export function answered<T>(request: IDBRequest<T>): Promise<T> {
  return new Promise((resolve, reject) => {
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error ?? new Error("the request failed without a reason"));
  });
}

const patience = 8000; // ms for the browser to open its storage; some never answer

export class Database {
  readonly name: string;
  #open: Promise<IDBDatabase> | undefined;
  readonly #dead = new WeakSet<IDBDatabase>();

  constructor(name: string) {
    this.name = name;
  }

  // handle gives the open database, opening it when there is none or the last one died.
  handle(): Promise<IDBDatabase> {
    if (this.#open === undefined) {
      const opening = this.#openOnce();
      this.#open = opening;
      opening.catch(() => {
        if (this.#open === opening) this.#open = undefined;
      });
    }
    return this.#open;
  }

  // drop forgets a handle; the next call of handle opens a new one.
  drop(handle: IDBDatabase): void {
    this.#dead.add(handle);
    this.#open = undefined;
    handle.close();
  }

  died(handle: IDBDatabase): boolean {
    return this.#dead.has(handle);
  }

  async #openOnce(): Promise<IDBDatabase> {
    const handle = await opened(this.name);
    // A phone may kill the handle in the background, and a person may clear the site's data in another tab.
    handle.onclose = () => this.drop(handle);
    handle.onversionchange = () => this.drop(handle);
    return handle;
  }
}

function opened(name: string): Promise<IDBDatabase> {
  return new Promise((resolve, reject) => {
    const timer = setTimeout(() => reject(new StorageTrouble("silent", `no answer in ${patience} ms`)), patience);
    const settle = (): void => clearTimeout(timer);
    try {
      const request = indexedDB.open(name, 1); // may throw: some browsers refuse even to name it
      request.onupgradeneeded = () => makeStores(request.result);
      request.onsuccess = () => (settle(), resolve(request.result));
      request.onerror = () => (settle(), reject(troubleFrom(request.error)));
    } catch (error) {
      settle();
      reject(troubleFrom(error));
    }
  });
}

function makeStores(db: IDBDatabase): void {
  const ops = db.createObjectStore("ops", { keyPath: "id" }); // {id, rec, at, kind, bytes as received}
  ops.createIndex("rec", "rec"); // merging looks at all ops of a record
  ops.createIndex("at", "at"); // history
  const records = db.createObjectStore("records", { keyPath: "rec" }); // merged state, redone from ops
  records.createIndex("kind", "kind");
  db.createObjectStore("logs", { keyPath: "log" }); // per server log: cursor, count, digest, last met
  // Which log has which op or photo, keyed [log, id]: a store of its own, because "what has this log not got" is then a
  // walk along two sorted key lists, and because ops stay as they were received.
  db.createObjectStore("sent", { keyPath: ["log", "id"] });
  db.createObjectStore("photos", { keyPath: "sha256" });
  db.createObjectStore("drafts", { keyPath: "name" });
  db.createObjectStore("meta", { keyPath: "name" });
  db.createObjectStore("rejected", { keyPath: "id" });
}
