// JSON values as they stand in ops, compared as the server compares them: the order of members does not count, and
// numbers are IEEE doubles.

export type Json = null | boolean | number | string | readonly Json[] | { readonly [name: string]: Json };

export type JsonObject = { readonly [name: string]: Json };

export function isObject(value: Json | undefined): value is JsonObject {
  return typeof value === "object" && value !== null && !isList(value);
}

export function isList(value: Json | undefined): value is readonly Json[] {
  return Array.isArray(value);
}

// member reads an object's own member: names such as "constructor" or "__proto__" are names like any other.
export function member<T>(of: { readonly [name: string]: T } | undefined, name: string): T | undefined {
  return of !== undefined && Object.hasOwn(of, name) ? of[name] : undefined;
}

// canonical writes equal values alike, so that they can be compared and looked up as texts.
export function canonical(value: Json): string {
  if (isList(value)) return `[${value.map(canonical).join(",")}]`;
  if (isObject(value)) {
    return `{${Object.keys(value).sort().map((name) => `${JSON.stringify(name)}:${canonical(value[name] as Json)}`).join(",")}}`;
  }
  // A number too large for a double is an infinity, which JSON.stringify would write as null.
  return typeof value === "number" ? String(value === 0 ? 0 : value) : JSON.stringify(value);
}

export function sameValue(a: Json, b: Json): boolean {
  return a === b || canonical(a) === canonical(b);
}

// isFinite tells whether JSON can write a value: it has no word for numbers too large for a double.
export function isFinite(value: Json): boolean {
  if (typeof value === "number") return Number.isFinite(value);
  if (typeof value !== "object" || value === null) return true;
  return Object.values(value).every(isFinite);
}

const halfCharacter = /\p{Surrogate}/u;

// isSound tells whether a value nests no deeper than so many levels and holds no half characters (lone surrogates),
// which the server could not keep.
export function isSound(value: Json, levels: number): boolean {
  if (typeof value === "string") return !halfCharacter.test(value);
  if (typeof value !== "object" || value === null) return true;
  if (levels === 0) return false;
  if (isList(value)) return value.every((each) => isSound(each, levels - 1));
  return Object.entries(value).every(([name, each]) => !halfCharacter.test(name) && isSound(each, levels - 1));
}

const halves = /\p{Surrogate}/gu;

// mended replaces half characters, which some keyboards and pastes leave behind, by the sign for "unreadable".
export function mended(value: Json): Json {
  if (typeof value === "string") return value.replace(halves, "\uFFFD");
  if (isList(value)) return value.map(mended);
  if (!isObject(value)) return value;
  return Object.fromEntries(Object.entries(value).map(([name, each]) => [name.replace(halves, "\uFFFD"), mended(each)]));
}
