// Which words and which number habits this phone uses. They may differ: English words with a decimal comma are fine.

import type { Entry } from "./entry.ts";
import { en } from "./en/index.ts";
import { pseudo, pseudoLanguage } from "./pseudo.ts";
import { type Locale, locale } from "./wanted.ts";

export type English = typeof en;
export type Key = keyof English;
export type Catalogue = { readonly [K in Key]: Entry };

// A further language is one more line here (and its name in wanted.ts) and one more folder beside en.
const catalogues: Readonly<Record<Exclude<Locale["words"], typeof pseudoLanguage>, Catalogue>> = { en };

let made: Catalogue | undefined; // the language for tests, once somebody wants it

export function catalogue(): Catalogue {
  const { words } = locale();
  return words === pseudoLanguage ? (made ??= pseudo(en)) : catalogues[words];
}
