// Several things after one another, as the language of the words separates them. Empty texts are left out.

import { pseudoLanguage, pseudoText } from "./pseudo.ts";
import { catalogue } from "./locale.ts";
import { wordsTag } from "./wanted.ts";

type Kind = "conjunction" | "disjunction" | "unit";

const formats = new Map<string, Intl.ListFormat>();

// all names every one: "a, b and c".
export function all(items: readonly string[]): string {
  return joined(items, "conjunction");
}

// either leaves the choice: "a, b or c".
export function either(items: readonly string[]): string {
  return joined(items, "disjunction");
}

// listed only sets them side by side: "a, b, c".
export function listed(items: readonly string[]): string {
  return joined(items, "unit");
}

// facts are short remarks on one thing: "28 mm · tubeless".
export function facts(items: readonly string[]): string {
  return filled(items).join(catalogue()["joint.facts"] as string);
}

// sentences are whole ones, each with its own full stop.
export function sentences(items: readonly string[]): string {
  return filled(items).join(catalogue()["joint.sentences"] as string);
}

function joined(items: readonly string[], type: Kind): string {
  const given = filled(items);
  const tag = wordsTag();
  const name = `${tag} ${type}`;
  let format = formats.get(name);
  if (format === undefined) formats.set(name, (format = new Intl.ListFormat(tag, { type, style: "long" })));
  const text = format.format(given);
  // In the language for tests a list is marked like any other words; what it names is not changed again.
  return tag === pseudoLanguage && given.length > 1 ? pseudoText("{list}").replace("{list}", () => text) : text;
}

function filled(items: readonly string[]): readonly string[] {
  return items.filter((each) => each !== "");
}
