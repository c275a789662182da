// What kinds of records, their fields and the options of their choices are called. What only a newer app knows is named
// as it stands.

import { type Key, w } from "../../words/index.ts";
import { catalogue } from "../../words/locale.ts";

type NameIn<Family extends string> = Key extends infer K ? (K extends `${Family}${infer Name}` ? Name : never) : never;

function hasWords<Family extends "recKind." | "recField." | "recOption.">(family: Family, name: string): name is NameIn<Family> {
  return Object.hasOwn(catalogue(), `${family}${name}`);
}

type PlainKind = Exclude<NameIn<"recKind.">, "other">;

export function kindWords(kind: string): string {
  return hasWords("recKind.", kind) && kind !== "other" ? w(`recKind.${kind as PlainKind}`) : w("recKind.other", { kind });
}

// fieldWords is what a field is called, for this kind or for all.
export function fieldWords(kind: string, field: string): string {
  const own = `${kind}.${field}`;
  if (hasWords("recField.", own)) return w(`recField.${own}`);
  return hasWords("recField.", field) ? w(`recField.${field}`) : field;
}

// optionWords is what one of the options of a choice is called, for this field or for all.
export function optionWords(field: string, option: string): string {
  const own = `${field}.${option}`;
  if (hasWords("recOption.", own)) return w(`recOption.${own}`);
  return hasWords("recOption.", option) ? w(`recOption.${option}`) : option;
}
