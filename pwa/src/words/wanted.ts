// The language of the words and that of numbers, dates and lists, as the phone wants them.

import { pseudoLanguage } from "./pseudo.ts";

const languages = ["en", "de"] as const; // those that have a folder here

export interface Locale {
  readonly words: (typeof languages)[number] | typeof pseudoLanguage;
  readonly numbers: string;
}

let current: Locale = choose(typeof navigator === "undefined" ? [] : navigator.languages);

// choose picks the first wanted language that has a catalogue, and the first usable number format.
export function choose(wanted: readonly string[]): Locale {
  const words = wanted.map(languageOf).find((each) => each !== undefined) ?? "en";
  return { words, numbers: wanted.find(usable) ?? words };
}

// wantedLanguages puts the language that a person chose for this phone before those of its browser.
export function wantedLanguages(chosen: string): readonly string[] {
  return chosen === "phone" ? navigator.languages : [chosen, ...navigator.languages];
}

function languageOf(tag: string): Locale["words"] | undefined {
  if (tag.toLowerCase() === pseudoLanguage.toLowerCase()) return pseudoLanguage;
  return languages.find((each) => each === tag.toLowerCase().split("-")[0]);
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

// wordsTag is the language of the words as Intl wants it: the English here is British.
export function wordsTag(): string {
  return current.words === "en" ? "en-GB" : current.words;
}
