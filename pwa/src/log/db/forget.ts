// Erasing one book from this phone: its database and what the browser remembers beside it. The app's own files stay.

import { alone } from "./alone.ts";
import { remembered } from "../book.ts";
import { StorageTrouble } from "./idb.ts";
import { mirrored } from "./settings.ts";
import { forgetUnsaved } from "./unsaved.ts";

// Other tabs let go of the database when they are told; one that is asleep may not.
const patience = 5000; // ms

// forgetBook erases the book, while no tab meets a server, and then calls gone, which leads away from this page: whatever
// still ran here would make the database anew. It rejects, and nothing is erased, when another tab does not let go.
export async function forgetBook(book: string, gone: () => void): Promise<void> {
  await alone("rimside-sync", async () => {
    await deleted(`rimside-${book}`);
    for (const name of [remembered, mirrored]) forget(name);
    for (const db of [`rimside-${book}`, ""]) forgetUnsaved(db);
    gone();
    await new Promise<void>((resolve) => setTimeout(resolve, patience)); // keeps the others out until the page has gone
  });
}

function deleted(name: string): Promise<void> {
  return new Promise((resolve, reject) => {
    const request = indexedDB.deleteDatabase(name);
    const timer = setTimeout(() => reject(new StorageTrouble("silent", `${name} is still in use`)), patience);
    const settle = (): void => clearTimeout(timer);
    request.onsuccess = () => (settle(), resolve());
    request.onerror = () => (settle(), reject(new StorageTrouble("refused", request.error)));
  });
}

function forget(name: string): void {
  try {
    localStorage.removeItem(name);
  } catch {
    // refused: then it was never kept
  }
}
