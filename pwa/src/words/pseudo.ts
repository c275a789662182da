// A language made from English, for tests: a third longer, accented, and marked at both ends. What shows without marks
// came past the catalogue, and what is cut off would be cut off in a longer language too.

import type { Entry } from "./entry.ts";

export const pseudoLanguage = "en-XA"; // the tag that browsers use for such a language

const plainLetters = "AEIOUYaeiouycdnrstzCDNRSTZ";
const accented = "ÅÉÎÖÛÝåéîöûýçðñřšťžÇÐÑŘŠŤŽ";
const doubled = /[aeiou]/i; // some 35 % of the letters

export function pseudo<C extends Readonly<Record<string, Entry>>>(words: C): { readonly [K in keyof C]: Entry } {
  const made: Partial<Record<keyof C, Entry>> = {};
  for (const key in words) made[key] = pseudoEntry(words[key] as Entry);
  return made as { readonly [K in keyof C]: Entry };
}

function pseudoEntry(entry: Entry): Entry {
  if (typeof entry === "string") return pseudoText(entry);
  const { by, ...forms } = entry;
  return { by, ...(Object.fromEntries(Object.entries(forms).map(([name, text]) => [name, pseudoText(text)])) as { other: string }) };
}

// A text of several lines is shown line by line, so each is marked.
export function pseudoText(text: string): string {
  if (!/[\p{L}{]/u.test(text)) return text;
  return text.split("\n").map((line) => `[${line.split(/(\{\w+\})/).map((part) => (part.startsWith("{") ? part : lengthened(part))).join("")}]`).join("\n");
}

function lengthened(text: string): string {
  return [...text].map((letter) => {
    const at = plainLetters.indexOf(letter);
    const changed = at < 0 ? letter : accented[at] ?? letter;
    return doubled.test(letter) ? changed + changed : changed;
  }).join("");
}
