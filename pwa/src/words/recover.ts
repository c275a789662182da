// w for the repair page, which loads its own words only.

import { type Args, say } from "./entry.ts";
import { recoverWords } from "./en/recover.ts";
import { recoverWords as recoverWorte } from "./de/recover.ts";
import { pseudo, pseudoLanguage } from "./pseudo.ts";
import { locale } from "./wanted.ts";

type Words = typeof recoverWords;

// A further language is one more line here.
const catalogues = { en: recoverWords, de: recoverWorte, [pseudoLanguage]: pseudo(recoverWords) };

export function w<K extends keyof Words>(key: K, ...args: Args<Words[K]>): string {
  return say(catalogues[locale().words][key], args[0] ?? {}, locale().words);
}
