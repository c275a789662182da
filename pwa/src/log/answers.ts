// What the server answers, checked before it is believed: a portal on the way may answer with anything.

import type { Refusal } from "./tables.ts";

export interface Standing {
  readonly book: string; // "": none yet
  readonly log: string;
  readonly server: string;
  readonly name: string;
  readonly count: number;
  readonly digest: string;
  readonly now: number;
}

export interface Pushed {
  readonly log: string;
  readonly stored: readonly string[];
  readonly known: readonly string[];
  readonly rejected: readonly (Refusal & { readonly id: string })[];
}

export interface Via {
  readonly id: string;
  readonly device: string;
  readonly received_at: number;
}

export interface Page {
  readonly log: string;
  readonly ops: readonly unknown[];
  readonly via: readonly Via[]; // one for each op
  readonly next: number;
  readonly more: boolean;
  readonly count: number;
  readonly digest: string;
}

type Check = (value: unknown) => boolean;

const text: Check = (value) => typeof value === "string";
const number: Check = (value) => typeof value === "number" && Number.isFinite(value);
const flag: Check = (value) => typeof value === "boolean";
const list: Check = Array.isArray;
const listOf = (check: Check): Check => (value) => Array.isArray(value) && value.every(check);
const object = (members: Readonly<Record<string, Check>>): Check => (value) =>
  typeof value === "object" && value !== null &&
  Object.entries(members).every(([name, check]) => check((value as Record<string, unknown>)[name]));

const standing = object({ book: text, log: text, server: text, name: text, count: number, digest: text, now: number });
const pushed = object({ log: text, stored: listOf(text), known: listOf(text), rejected: listOf(object({ id: text, code: text, message: text })) });
const page = object({
  log: text, ops: list, via: listOf(object({ id: text, device: text, received_at: number })),
  next: number, more: flag, count: number, digest: text,
});
const missing = object({ missing: listOf(text) });

export const isStanding = (answer: unknown): answer is Standing => standing(answer);
export const isPushed = (answer: unknown): answer is Pushed => pushed(answer);
export const isPage = (answer: unknown): answer is Page => page(answer);
export const isMissing = (answer: unknown): answer is { readonly missing: readonly string[] } => missing(answer);
