// An op ("operation") is the only thing that is ever written: some fields of one record set at one moment. It is kept
// and passed on as the text that was received. What is checked here is the envelope, by the same rules as the server's;
// values, unknown kinds, fields and members are not judged: a newer app may have written them.

import { isList, isObject, isSound, type Json, type JsonObject, member } from "./json.ts";

export type { Json } from "./json.ts";

export type Bases = Readonly<Record<string, readonly string[]>>;

export interface Op {
  readonly id: string;
  readonly at: number; // ms since 1970
  readonly kind: string;
  readonly rec: string;
  readonly set: Readonly<Record<string, Json>>;
  readonly bases?: Bases; // field -> the ops whose value this one replaces
  readonly seen?: readonly string[]; // of a delete: the ops it knew of
  readonly author?: string; // author and device are claims
  readonly device?: string;
  readonly schema?: number;
  readonly erased?: boolean; // only the frame is left, the values are gone
}

// StoredOp is a row of the store "ops".
export interface StoredOp {
  readonly id: string;
  readonly rec: string;
  readonly at: number;
  readonly kind: string;
  readonly bytes: string; // the op's JSON text as received
  readonly via?: string; // the device whose session brought it to the server
  readonly receivedAt?: number; // when that was, by the server's clock
}

export type RejectionCode = "op_malformed" | "op_too_large" | "at_out_of_range" | "other_content";

// Rejection says why an op is not taken. The page has words for the codes.
export interface Rejection {
  readonly id: string; // "" when it cannot be read
  readonly code: RejectionCode;
  readonly member: string; // the member that is wrong, "" when it is the whole
}

export const eraseKind = "erase";
export const deletedField = "deleted";

// An op's time lies in the years 2020 to 2200: outside, a clock was not set at all.
export const minAt = 1577836800000; // 2020-01-01T00:00Z
export const endAt = 7289654400000; // 2201-01-01T00:00Z, the first moment that is too late

export const maxOpBytes = 2 << 20;
const maxLevels = 64;
const maxName = 64; // characters of a kind, an author, a device

const idShape = /^[0-9a-f]{32}$/;

export function isId(value: unknown): value is string {
  return typeof value === "string" && idShape.test(value);
}

export function isRejection(read: Op | Rejection): read is Rejection {
  return "code" in read; // an op as read has known members only
}

// erases tells whether the op means that its record's values are gone.
export function erases(op: Op): boolean {
  return op.kind === eraseKind || op.erased === true;
}

// byteLength is a text's length in UTF-8.
export function byteLength(text: string): number {
  return new TextEncoder().encode(text).length;
}

// readOp reads an op and checks its envelope.
export function readOp(bytes: string): Op | Rejection {
  if (bytes.length * 3 > maxOpBytes && byteLength(bytes) > maxOpBytes) return { id: idIn(bytes), code: "op_too_large", member: "" };
  let json: Json;
  try {
    json = JSON.parse(bytes) as Json;
  } catch {
    return { id: idIn(bytes), code: "op_malformed", member: "" };
  }
  if (!isObject(json)) return { id: "", code: "op_malformed", member: "" };
  if (!isSound(json, maxLevels)) return { id: idIn(bytes), code: "op_malformed", member: "" };
  return fromJson(json);
}

function fromJson(json: JsonObject): Op | Rejection {
  const wrong = wrongMember(json);
  const { id, at, kind, rec, set } = json;
  if (wrong !== undefined) return { id: isId(id) ? id : "", code: "op_malformed", member: wrong };
  const time = at as number;
  if (time < minAt || time >= endAt) return { id: id as string, code: "at_out_of_range", member: "at" };
  const present = ["bases", "seen", "author", "device", "schema", "erased"].filter((name) => Object.hasOwn(json, name));
  const optional = Object.fromEntries(present.map((name) => [name, json[name]])) as Partial<Op>;
  return { id: id as string, at: time, kind: kind as string, rec: rec as string, set: set as Op["set"], ...optional };
}

type Check = (value: Json) => boolean;

const isName: Check = (value) => typeof value === "string" && (value.length <= maxName || [...value].length <= maxName);
const isIds: Check = (value) => isList(value) && value.every(isId);

const needed: readonly (readonly [string, Check])[] = [
  ["id", isId],
  ["rec", isId],
  ["kind", (value) => isName(value) && value !== ""],
  ["set", isObject],
  ["at", (value) => Number.isInteger(value) && Math.abs(value as number) < 2 ** 63], // what the server can hold at all
];

const allowed: readonly (readonly [string, Check])[] = [
  ["author", isName],
  ["device", isName],
  ["bases", (value) => isObject(value) && Object.values(value).every(isIds)],
  ["seen", isIds],
  ["schema", (value) => Number.isInteger(value) && (value as number) >= 1],
  ["erased", (value) => typeof value === "boolean"],
];

function wrongMember(json: JsonObject): string | undefined {
  for (const [name, fits] of needed) {
    const value = member(json, name);
    if (value === undefined || !fits(value)) return name;
  }
  return allowed.find(([name, fits]) => Object.hasOwn(json, name) && !fits(json[name] as Json))?.[0];
}

// idIn finds the id of an op that cannot be read as a whole, so that it can be named.
function idIn(bytes: string): string {
  return /"id"[ \t\r\n]*:[ \t\r\n]*"([0-9a-f]{32})"/.exec(bytes)?.[1] ?? "";
}
