// What a thing belongs to, and what belongs to it: the ways from its page to others.

import { type RecordState, valueOf } from "../../log/op/merge.ts";
import { w } from "../../words/index.ts";
import { fieldWords } from "../value/kind_words.ts";
import { shortNameOf, type Teller } from "../value/record_words.ts";

export interface Tie {
  readonly key: string;
  readonly rec: string;
  readonly words: string;
}

const holds: Readonly<Record<string, readonly string[]>> = { bike: ["rider", "front", "rear", "gauge", "pump"], wheel: ["tyre"] };

// tiesOf lists first what a thing holds, then what holds it.
export function tiesOf(thing: RecordState, things: readonly RecordState[], teller: Teller): readonly Tie[] {
  const known = new Set(things.map(({ rec }) => rec));
  const ties: Tie[] = [];
  for (const field of holds[thing.kind] ?? []) {
    const rec = valueOf(thing, field);
    if (typeof rec === "string" && known.has(rec)) ties.push({ key: `${field} ${rec}`, rec, words: w("things.holds", { what: fieldWords(thing.kind, field), name: nameHere(rec, teller) }) });
  }
  for (const other of things) {
    for (const field of holds[other.kind] ?? []) {
      if (valueOf(other, field) !== thing.rec) continue;
      ties.push({ key: `${field} of ${other.rec}`, rec: other.rec, words: w("things.heldBy", { what: fieldWords(other.kind, field), name: teller.nameOf(other.rec) }) });
    }
  }
  return ties;
}

// nameHere leaves out the place, which the page that leads there tells.
function nameHere(rec: string, teller: Teller): string {
  const state = teller.find(rec);
  return state === undefined ? teller.nameOf(rec) : shortNameOf(state, teller);
}
