// What the server answers, checked before it is believed: a portal on the way may answer with anything.

import type { Refusal } from "../db/tables.ts";

export interface About {
  readonly book: string; // "": none yet
  readonly log: string;
  readonly server: string;
  readonly name: string;
  readonly count: number;
  readonly digest: string;
  readonly now: number;
  readonly version?: string; // of the server's program
  readonly can?: readonly string[]; // calls that servers of before have not
  readonly held?: readonly { readonly count: number }[]; // erasures that wait until somebody agrees, by device
}

// HeldErasures are one device's erasures that wait.
export interface HeldErasures {
  readonly device: string;
  readonly label: string;
  readonly since: number; // ms since 1970
  readonly ids: readonly string[]; // of the ops that erase
  readonly recs: readonly string[]; // of the records, one for each
  readonly kinds: Readonly<Record<string, number>>;
  readonly stopped: boolean;
  readonly may_agree: boolean; // the phone that asks
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
  readonly hash?: string; // the SHA-256 of the SHA-256 of each op's bytes in a row
}

// Wanted is what a server had and lost.
export interface Wanted {
  readonly ops: readonly string[]; // ids
  readonly photos: readonly string[]; // SHA-256
}

// Part is how much of a photo a server has.
export interface Part {
  readonly have: number; // bytes
  readonly whole: boolean; // it is kept, and nothing is left to send
}

// Device is a phone or a computer that the server knows.
export interface Device {
  readonly id: string; // its record
  readonly label: string;
  readonly paired_at: number; // ms since 1970; 0: never at this server
  readonly seen_at: number; // ms since 1970; 0: never
  readonly revoked: boolean; // shut out
  readonly here: boolean; // the one that asks, as far as the server can tell
}

// Visit is what was tried at the server's door.
export interface Visit {
  readonly at: number; // ms since 1970 by the server's clock
  readonly what: string;
  readonly device: string; // its record, "" when nobody knows
  readonly from: string; // an address
}

export interface NewCode {
  readonly code: string;
  readonly expires_at: number; // ms since 1970 by the server's clock
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

const optional = (check: Check): Check => (value) => value === undefined || check(value);

const about = object({
  book: text, log: text, server: text, name: text, count: number, digest: text, now: number, version: optional(text), can: optional(listOf(text)),
  held: optional(listOf(object({ count: number }))),
});
const pushed = object({ log: text, stored: listOf(text), known: listOf(text), rejected: listOf(object({ id: text, code: text, message: text })) });
const page = object({
  log: text, ops: list, via: listOf(object({ id: text, device: text, received_at: number })),
  next: number, more: flag, count: number, digest: text, hash: optional(text),
});
const wanted = object({ ops: listOf(text), photos: listOf(text) });
const part = object({ have: number, whole: flag });
const missing = object({ missing: listOf(text) });
const paired = object({ device: text, book: text });
const devices = object({ devices: listOf(object({ id: text, label: text, paired_at: number, seen_at: number, revoked: flag, here: flag })) });
const held = object({
  held: listOf(object({
    device: text, label: text, since: number, ids: listOf(text), recs: listOf(text), kinds: object({}), stopped: flag, may_agree: flag,
  })),
});
const visits = object({ visits: listOf(object({ at: number, what: text, device: text, from: text })) });
const newCode = object({ code: text, expires_at: number });

export const isAbout = (answer: unknown): answer is About => about(answer);
export const isPushed = (answer: unknown): answer is Pushed => pushed(answer);
export const isPage = (answer: unknown): answer is Page => page(answer);
export const isMissing = (answer: unknown): answer is { readonly missing: readonly string[] } => missing(answer);
export const isWanted = (answer: unknown): answer is Wanted => wanted(answer);
export const isPart = (answer: unknown): answer is Part => part(answer);
export const isPaired = (answer: unknown): answer is { readonly device: string } => paired(answer);
export const isDevices = (answer: unknown): answer is { readonly devices: readonly Device[] } => devices(answer);
export const isHeld = (answer: unknown): answer is { readonly held: readonly HeldErasures[] } => held(answer);
export const isVisits = (answer: unknown): answer is { readonly visits: readonly Visit[] } => visits(answer);
export const isNewCode = (answer: unknown): answer is NewCode => newCode(answer);
