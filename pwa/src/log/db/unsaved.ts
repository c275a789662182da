// What was typed and is not in the database yet when the page is taken away. A page that goes has no time to wait for
// IndexedDB, but localStorage answers at once: the values lie there until the next start brings them into the database.
// Each has the time it was typed, as its row in the database has: whichever is newer counts, so a copy that a phone
// failed to remove can never undo what was typed after it.

import { answered, type Database } from "./idb.ts";
import type { NamedRow } from "./tables.ts";
import { write } from "./write.ts";

export const unsavedName = "rimside-unsaved";

export interface Typed {
  readonly value: unknown; // as JSON
  readonly at: number; // ms since 1970, rising within one page
}

interface Kept extends Typed {
  readonly db: string; // "" when the page did not know yet which book it had open
  readonly name: string;
}

// keepUnsaved lays values aside, beside what other tabs laid there. A browser that refuses leaves them to IndexedDB alone.
export function keepUnsaved(db: string, typed: ReadonlyMap<string, Typed>): void {
  if (typed.size === 0) return;
  const others = listed().filter((each) => each.db !== db || !typed.has(each.name));
  const ours = [...typed].map(([name, { value, at }]): Kept => ({ db, name, value, at }));
  store([...others, ...ours]);
}

// forgetUnsaved drops the values of one database.
export function forgetUnsaved(db: string): void {
  const kept = listed();
  const others = kept.filter((each) => each.db !== db);
  if (others.length < kept.length) store(others);
}

// recoverUnsaved brings what the last page left into the database, and tells the newest time that it met.
export async function recoverUnsaved(db: Database): Promise<number> {
  const ours = listed().filter((each) => each.db === db.name || each.db === "");
  if (ours.length === 0) return 0;
  await write(db, ["drafts"], async (tx) => {
    const drafts = tx.objectStore("drafts");
    for (const { name, value, at } of ours) {
      const row = (await answered(drafts.get(name))) as NamedRow | undefined;
      if ((row?.at ?? 0) < at) drafts.put({ name, value, at });
    }
  });
  // Another tab may have laid something aside meanwhile: only what was brought in goes.
  store(listed().filter((each) => !ours.some(({ db: of, name, at }) => of === each.db && name === each.name && at === each.at)));
  return Math.max(...ours.map(({ at }) => at));
}

function listed(): readonly Kept[] {
  try {
    const list: unknown = JSON.parse(localStorage.getItem(unsavedName) ?? "[]");
    return Array.isArray(list) ? list.filter(isKept) : [];
  } catch {
    return [];
  }
}

function isKept(each: unknown): each is Kept {
  const { db, name, at } = (each ?? {}) as Partial<Kept>;
  return typeof db === "string" && typeof name === "string" && typeof at === "number";
}

function store(list: readonly Kept[]): void {
  try {
    if (list.length === 0) localStorage.removeItem(unsavedName);
    else localStorage.setItem(unsavedName, JSON.stringify(list));
  } catch {
    // Refused, or full: what IndexedDB was given is on its way to the disk all the same.
  }
}
