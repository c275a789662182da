// w gives the words for a key. The compiler knows the keys, which values each one needs, and which must be a number.

import { type Args, say } from "./entry.ts";
import { catalogue, type English, type Key } from "./locale.ts";
import { wordsTag } from "./wanted.ts";

export type { Key } from "./locale.ts";
export { locale, useLocale } from "./wanted.ts";
export { all, either, facts, listed, sentences } from "./list.ts";

// isKey tells whether the catalogue has words for what an older or newer app may have named.
export function isKey(text: string): text is Key {
  return Object.hasOwn(catalogue(), text);
}

export function w<K extends Key>(key: K, ...args: Args<English[K]>): string {
  return say(catalogue()[key], args[0] ?? {}, wordsTag());
}
