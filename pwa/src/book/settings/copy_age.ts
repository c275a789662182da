// Whether a rider whose book is on one phone alone is to be reminded of a copy.

import { dateWords } from "../value/when.ts";
import { w } from "../../words/index.ts";

const day = 24 * 60 * 60 * 1000; // ms

// longest is how long a book may stand on one phone alone before that is said: a month.
export const longest = 30; // days; our choice

export interface CopyFacts {
  readonly met: boolean; // this phone has synced with a server at some time
  readonly since: { readonly at: number; readonly never: boolean } | undefined; // of the last copy, or of the first entry
  readonly now: number;
}

// copyReminder is "" while there is nothing to remind of.
export function copyReminder({ met, since, now }: CopyFacts): string {
  if (met || since === undefined) return "";
  const n = Math.floor((now - since.at) / day);
  if (n <= longest) return "";
  return since.never ? w("copies.neverCopied", { n }) : w("copies.oldCopy", { n, date: dateWords(since.at, now) });
}
