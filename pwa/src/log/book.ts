// Which book is open on this phone. A book is one team's data; its id is drawn once, with the first database.

import { Database } from "./idb.ts";

const remembered = "rimside-book";
const shape = /^[0-9a-f]{32}$/;

// openBook gives the database of the open book, drawing a book id at the very first start.
export async function openBook(): Promise<Database> {
  const known = recall();
  if (known !== undefined) return named(known);
  return alone(async () => {
    const book = recall() ?? (await found()) ?? drawn();
    remember(book);
    return named(book);
  });
}

function named(book: string): Database {
  return new Database(`rimside-${book}`);
}

// Two tabs opened at once at the very first start must not draw two books.
function alone<T>(work: () => Promise<T>): Promise<T> {
  return "locks" in navigator ? navigator.locks.request(remembered, work) : work();
}

function recall(): string | undefined {
  try {
    const book = localStorage.getItem(remembered);
    return book !== null && shape.test(book) ? book : undefined;
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

async function found(): Promise<string | undefined> {
  try {
    const names = (await indexedDB.databases()).map((each) => each.name ?? "");
    const books = names.filter((name) => name.startsWith("rimside-")).map((name) => name.slice("rimside-".length));
    return books.filter((book) => shape.test(book)).sort()[0];
  } catch {
    return undefined; // old browsers cannot list
  }
}

function drawn(): string {
  return Array.from(crypto.getRandomValues(new Uint8Array(16)), (byte) => byte.toString(16).padStart(2, "0")).join("");
}
