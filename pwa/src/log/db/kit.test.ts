// What the log's tests share: chance that can be repeated, and ops.

import { isRejection, type Op, readOp } from "../op/op.ts";

// chance gives the same numbers for the same seed: a failing history can be run again.
export function chance(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x9e3779b9) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 16), 0x21f0aaad);
    mixed = Math.imul(mixed ^ (mixed >>> 15), 0x735a2d97);
    return ((mixed ^ (mixed >>> 15)) >>> 0) / 2 ** 32;
  };
}

export function pick<T>(random: () => number, from: readonly T[]): T {
  return from[Math.floor(random() * from.length)] as T;
}

export function shuffled<T>(random: () => number, from: readonly T[]): T[] {
  const keyed = from.map((value) => ({ value, key: random() }));
  return keyed.sort((a, b) => a.key - b.key).map(({ value }) => value);
}

export function hexId(random: () => number): string {
  return Array.from({ length: 32 }, () => Math.floor(random() * 16).toString(16)).join("");
}

// parsed reads an op that must be a good one.
export function parsed(bytes: string): Op {
  const op = readOp(bytes);
  if (isRejection(op)) throw new Error(`${op.code} (${op.member}): ${bytes}`);
  return op;
}

export const t0 = 1790000000000; // a moment in 2026
