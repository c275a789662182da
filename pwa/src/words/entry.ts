// What stands in a catalogue, and how it is read out. An entry is a sentence with named values, or its plural forms.

import { plain } from "./number.ts";

type Category = "zero" | "one" | "two" | "few" | "many";

// Forms are one sentence by number: `by` names the value that chooses, the forms are those of Intl.PluralRules.
export type Forms = Readonly<{ by: string; other: string } & { [C in Category]?: string }>;
export type Entry = string | Forms;

// What the compiler reads out of an entry: the values it needs, and those of them that must be a number.
type Holes<S> = S extends `${string}{${infer Name}}${infer Rest}` ? Name | Holes<Rest> : never;
type Needed<E> = E extends string ? Holes<E> : E extends { by: infer By } ? By | Holes<E[keyof E]> : never;
type Counted<E> = E extends { by: infer By } ? By : never;
type Names<T> = Extract<T, string>;

export type Values = Readonly<Record<string, string | number>>;
export type Args<E> = [Needed<E>] extends [never] ? []
  : [values: Readonly<Record<Exclude<Names<Needed<E>>, Counted<E>>, string | number> & Record<Names<Counted<E>>, number>>];

// say puts the values into an entry. The language is that of the words: it decides between one and many.
export function say(entry: Entry, values: Values, language: string): string {
  return formOf(entry, values, language).replace(/\{(\w+)\}/g, (whole, name: string) => {
    const value = values[name];
    if (value === undefined) return whole;
    return typeof value === "number" ? plain(value) : value;
  });
}

function formOf(entry: Entry, values: Values, language: string): string {
  if (typeof entry === "string") return entry;
  const count = Number(values[entry.by]);
  const category = Number.isFinite(count) ? rulesOf(language).select(count) : "other";
  return entry[category] ?? entry.other;
}

const rules = new Map<string, Intl.PluralRules>();

function rulesOf(language: string): Intl.PluralRules {
  let made = rules.get(language);
  if (made === undefined) rules.set(language, (made = new Intl.PluralRules(language, { maximumFractionDigits: 3 })));
  return made;
}
