// What the tests of the book's views share: ops by hand, and somebody to tell them to.

import type { Json } from "../../log/op/json.ts";
import { merge, type RecordState } from "../../log/op/merge.ts";
import type { Op } from "../../log/op/op.ts";
import { tellerOf, type Teller } from "./record_words.ts";

export const now = new Date(2026, 6, 14, 12, 0).getTime();

// at is a moment of that day.
export function at(hour: number, minute: number, daysAgo = 0): number {
  return new Date(2026, 6, 14 - daysAgo, hour, minute).getTime();
}

let drawn = 0;

export function hex(name: string): string {
  return [...name].map((letter) => letter.charCodeAt(0).toString(16)).join("").padEnd(32, "0").slice(0, 32);
}

export const anaPhone = hex("phone-a");
export const benPhone = hex("phone-b");
export const ana = record("person", "ana", { name: "Ana", mass_kg: 61 });
export const ben = record("person", "ben", { name: "Ben" });
export const phones = [record("device", "phone-a", { label: "Ana’s phone" }), record("device", "phone-b", { label: "" })];

export function op(rec: string, kind: string, set: Record<string, Json>, more: Partial<Op> = {}): Op {
  return { id: hex(`op${++drawn}`), at: at(9, 0), kind, rec, set, author: "", device: "", ...more };
}

// record is a record of one op.
export function record(kind: string, name: string, set: Record<string, Json>): RecordState {
  return merge(hex(name), [op(hex(name), kind, set)]);
}

// ops merged, all of one record.
export function merged(...ops: readonly Op[]): RecordState {
  return merge(ops[0]?.rec ?? "", ops);
}

export const byAna = { author: ana.rec, device: anaPhone };
export const byBen = { author: ben.rec, device: benPhone };

// told is the teller on Ana's phone, in a week of 2026.
export function told(states: readonly RecordState[] = [], change: Partial<Teller> = {}): Teller {
  const known = { states: [ana, ben, ...phones, ...states], unit: "bar" as const, now, me: "", device: anaPhone };
  return { ...tellerOf({ ...known, ...change }), ...change };
}
