// The words that this phone has at hand. The English of the first screen is always there; another language, and what the
// other places say, is fetched before it is needed.

import type { Entry } from "./entry.ts";
import type { en } from "./en/index.ts";
import { first as english } from "./en/first.ts";
import { pseudo, pseudoLanguage } from "./pseudo.ts";
import { type Locale, locale } from "./wanted.ts";

export type English = typeof en;
export type Key = keyof English;
export type Catalogue = { readonly [K in Key]: Entry };

type Words = Readonly<Record<string, Entry>>;
type Language = Locale["words"];
export type Share = "first" | "later";

// A further language is one more line here (and its name in wanted.ts) and one more folder beside en.
const folders: Readonly<Record<Language, { readonly [S in Share]: () => Promise<Words> }>> = {
  en: { first: () => Promise.resolve(english), later: englishLater },
  de: { first: async () => (await import("./de/first.ts")).first, later: async () => ({ ...(await englishLater()), ...(await import("./de/later.ts")).later }) },
  [pseudoLanguage]: { first: () => Promise.resolve(pseudo(english)), later: async () => pseudo(await englishLater()) },
};

async function englishLater(): Promise<Words> {
  return (await import("./en/later.ts")).later;
}

const known: Partial<Record<Language, Words>> = { en: english };
const learnt = new Map<string, Promise<void>>();

// learn brings a share of the words into the language of now. It rejects when they cannot be fetched, and may be tried again.
export function learn(share: Share): Promise<void> {
  const { words } = locale();
  const name = `${words} ${share}`;
  let learning = learnt.get(name);
  if (learning === undefined) {
    learning = folders[words][share]().then((more) => void (known[words] = { ...(known[words] ?? english), ...more }));
    learning.catch(() => learnt.delete(name));
    learnt.set(name, learning);
  }
  return learning;
}

// catalogue is what was learnt. Until a language is, its words are English.
export function catalogue(): Catalogue {
  return (known[locale().words] ?? english) as Catalogue;
}
