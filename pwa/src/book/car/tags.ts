// Tags on wheels: a short code that can be called out and typed, made from the record itself, so that every phone and car has
// the same one without asking.

import type { RecordState } from "../../log/op/merge.ts";

const letters = "0123456789ABCDEFGHJKMNPQRSTVWXYZ"; // none that is taken for another (Crockford's base 32)
const length = 5; // 33 million codes: among 300 wheels two alike once in 700 books; then both are offered

// tagOf is a wheel's code. A record's name is random, so its end is as good as any other part.
export function tagOf(rec: string): string {
  let rest = parseInt(rec.slice(-8), 16) || 0;
  let code = "";
  for (let n = 0; n < length; n++) {
    code = (letters[rest % 32] ?? "0") + code;
    rest = Math.floor(rest / 32);
  }
  return code;
}

// readTag takes a code as it is typed or read off: small letters, spaces, a whole address, and letters taken for digits.
export function readTag(typed: string): string {
  const last = typed.trim().split("/").at(-1) ?? "";
  return last.toUpperCase().replace(/[\s-]/g, "").replace(/O/g, "0").replace(/[IL]/g, "1");
}

// tagged are the wheels of this code.
export function tagged(wheels: readonly RecordState[], typed: string): readonly RecordState[] {
  const code = readTag(typed);
  return code.length === length ? wheels.filter(({ rec }) => tagOf(rec) === code) : [];
}
