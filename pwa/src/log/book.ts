// Which book is open on this phone. A book is one team's data. At the very first start it is the server's, when there is
// one that has a book; otherwise its id is drawn.

import { isAbout } from "./sync/answers.ts";
import { alone } from "./db/alone.ts";
import { newRec } from "./op/clock.ts";
import { Database, StorageTrouble } from "./db/idb.ts";
import { IdbTables } from "./db/idb_tables.ts";
import { isId } from "./op/op.ts";
import type { NamedRow } from "./db/tables.ts";

export const remembered = "rimside-book";
const prefix = "rimside-";

// openBook gives the database of the open book.
export async function openBook(ask: () => Promise<string | undefined> = serversBook): Promise<Database> {
  const known = recall();
  if (known !== undefined) return named(known);
  // Two tabs opened at once at the very first start must not take two books.
  return alone(remembered, async () => {
    const book = recall() ?? (await knownBooks())[0] ?? (await ask()) ?? newRec();
    remember(book);
    return named(book);
  });
}

// knownBooks lists the books that have a database on this phone; old browsers cannot tell.
export async function knownBooks(): Promise<readonly string[]> {
  try {
    const names = (await indexedDB.databases()).map((each) => each.name ?? "");
    return names.filter((name) => name.startsWith(prefix)).map((name) => name.slice(prefix.length)).filter(isId).sort();
  } catch {
    return [];
  }
}

// openNext makes a book the one that is opened at the next start of the page.
export function openNext(book: string): void {
  remember(book);
  if (recall() !== book) throw new StorageTrouble("refused", "the browser does not remember which book is open");
}

// copyOwn gives another book what this phone has of its own: as which device it counts, and while it has no data, drafts
// and settings too. What is there already stays.
export async function copyOwn(from: Database, book: string, empty: boolean): Promise<void> {
  const to = named(book);
  const stores = ["drafts", "meta"] as const;
  const [drafts, meta] = await new IdbTables(from).read(stores, async (tx) => [await tx.page("drafts", "", all), await tx.page("meta", "", all)] as const);
  await new IdbTables(to).write(stores, async (tx) => {
    const there = [new Set(await tx.keys("drafts")), new Set(await tx.keys("meta"))] as const;
    const absent = (rows: readonly NamedRow[], held: ReadonlySet<string>): NamedRow[] => rows.filter((row) => !held.has(row.name));
    if (empty) tx.put("drafts", absent(drafts, there[0]));
    tx.put("meta", absent(meta, there[1]).filter((row) => row.name === "device" || (empty && row.name === "me")));
  });
}

const all = 2 ** 32 - 1;

// named is a book's database, which is made when it is opened first.
export function named(book: string): Database {
  return new Database(`${prefix}${book}`);
}

const patience = 2000; // ms: nobody waits longer for a server that may not be there

async function serversBook(): Promise<string | undefined> {
  try {
    const response = await fetch("api/book", { cache: "no-store", signal: AbortSignal.timeout(patience) });
    const answer: unknown = await response.json();
    return response.ok && isAbout(answer) && isId(answer.book) ? answer.book : undefined;
  } catch {
    return undefined;
  }
}

function recall(): string | undefined {
  try {
    const book = localStorage.getItem(remembered);
    return isId(book) ? book : undefined;
  } catch {
    return undefined; // refused: the database itself will say so
  }
}

function remember(book: string): void {
  try {
    localStorage.setItem(remembered, book);
  } catch {
    // The list of databases finds it again next time.
  }
}
