// The clock of a record, and ids.

import { endAt, minAt } from "./op.ts";

// nextAt is the time of a new op: now, or just above the newest known op of the same record, so that what a person just
// typed shows, whatever the clocks say. It stays within the years that servers take.
export function nextAt(now: number, newest: number): number {
  return Math.min(Math.max(Math.floor(now), newest + 1, minAt), endAt - 1);
}

const aDay = 24 * 60 * 60 * 1000; // ms

// isAhead tells whether a time lies so far past now that the clock it comes from was wrong. Whoever wrote it meant some
// time that nobody knows: it is shown with a question, and never counts as the newest.
export function isAhead(at: number, now: number): boolean {
  return at > now + aDay;
}

// newRec draws an id for a record, an op or a book: 32 hex digits.
export function newRec(): string {
  return Array.from(crypto.getRandomValues(new Uint8Array(16)), (byte) => byte.toString(16).padStart(2, "0")).join("");
}

// idAbove makes an id greater than another one, by half of a drawn id; two phones will not make the same.
export function idAbove(id: string, drawn: string): string {
  const above = (BigInt(`0x${id}`) + BigInt(`0x1${drawn.slice(16)}`)).toString(16).padStart(32, "0");
  return above.length === 32 ? above : drawn;
}
