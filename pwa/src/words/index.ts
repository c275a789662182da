// w gives the words for a key. The compiler knows the keys and which placeholders each one needs.

import type { en } from "./en/index.ts";
import { catalogue, type Key } from "./locale.ts";
import { plain } from "./number.ts";

export type { Key } from "./locale.ts";
export { locale, useLocale } from "./locale.ts";

type Names<S> = S extends `${string}{${infer Name}}${infer Rest}` ? Name | Names<Rest> : never;
type Needed<K extends Key> = Names<(typeof en)[K]>;
type Args<K extends Key> = [Needed<K>] extends [never] ? [] : [params: Readonly<Record<Needed<K>, string | number>>];

export function w<K extends Key>(key: K, ...args: Args<K>): string {
  const params: Readonly<Record<string, string | number>> = args[0] ?? {};
  return catalogue()[key].replace(/\{(\w+)\}/g, (whole, name: string) => {
    const value = params[name];
    if (value === undefined) return whole;
    return typeof value === "number" ? plain(value) : value;
  });
}
