// Which words and which number habits this phone uses. They may differ: English words with a decimal comma are fine.

import { en } from "./en/index.ts";

export type Key = keyof typeof en;
export type Catalogue = { readonly [K in Key]: string };

// A further language is one more line here and one more folder beside en.
const catalogues: Readonly<Record<string, Catalogue>> = { en };

interface Locale {
  readonly words: string;
  readonly numbers: string;
}

let current: Locale = choose(typeof navigator === "undefined" ? [] : navigator.languages);

// choose picks the first wanted language that has a catalogue, and the first usable number format.
export function choose(wanted: readonly string[]): Locale {
  const words = wanted.map((tag) => tag.toLowerCase().split("-")[0] ?? "").find((tag) => tag in catalogues) ?? "en";
  return { words, numbers: wanted.find(usable) ?? words };
}

function usable(tag: string): boolean {
  try {
    return Intl.NumberFormat.supportedLocalesOf(tag).length > 0;
  } catch {
    return false; // a malformed tag from the browser must not stop the app
  }
}

// useLocale switches the language at run time; what is on the screen must be drawn again by the caller.
export function useLocale(wanted: readonly string[]): void {
  current = choose(wanted);
}

export function locale(): Locale {
  return current;
}

export function catalogue(): Catalogue {
  return catalogues[current.words] ?? en;
}
