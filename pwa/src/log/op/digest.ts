// The digest of a set of ops: the XOR of the SHA-256 of their ids, as 64 hex digits, kept up to date op by op.

import { hex, sha256 } from "./sha256.ts";

export const emptyDigest = "0".repeat(64);

// toggled adds ids to a digest, or takes them out again.
export function toggled(digest: string, ids: readonly string[]): string {
  const words = wordsOf(digest);
  const text = new TextEncoder();
  for (const id of ids) sha256(text.encode(id)).forEach((word, i) => (words[i] = (words[i] as number) ^ word));
  return hex(words);
}

// difference is the digest of what one of two sets has and the other has not.
export function difference(a: string, b: string): string {
  const other = wordsOf(b);
  return hex(wordsOf(a).map((word, i) => word ^ (other[i] as number)));
}

function wordsOf(digest: string): Uint32Array {
  return Uint32Array.from({ length: 8 }, (_, i) => parseInt(digest.slice(8 * i, 8 * i + 8), 16));
}
