// The erasures that wait, in words: whose they are, how many of what, and a few by name.

import type { HeldErasures } from "../../log/sync/answers.ts";
import { facts, listed, w } from "../../words/index.ts";
import { ageOf } from "../value/age.ts";
import { kindWords } from "../value/kind_words.ts";
import type { Teller } from "../value/record_words.ts";

export interface HeldView {
  readonly key: string;
  readonly ids: readonly string[];
  readonly recs: readonly string[];
  readonly name: string; // of the phone that erases
  readonly title: string;
  readonly since: string;
  readonly kinds: readonly string[];
  readonly names: string;
  readonly state: string; // why there is nothing to press, or what was decided
  readonly mayAgree: boolean;
  readonly stopped: boolean;
}

const named = 5; // records; the others are counted

export function heldViews(held: readonly HeldErasures[], teller: Teller, now: number): readonly HeldView[] {
  return held.map(({ device, label, since, ids, recs, kinds, stopped, may_agree }) => {
    const name = label || w("phones.unnamed");
    const known = recs.filter((rec) => teller.find(rec)?.erased === false).slice(0, named).map((rec) => teller.nameOf(rec));
    const more = recs.length - known.length;
    return {
      key: `${device} ${stopped ? "stopped" : ""}`, ids, recs, name,
      title: w("held.who", { name, n: ids.length }),
      since: w("held.since", { when: ageOf(now - since) }),
      kinds: Object.entries(kinds).sort(([, a], [, b]) => b - a).map(([kind, n]) => w("held.kind", { kind: kindWords(kind), n })),
      names: known.length === 0 ? "" : listed([...known, more > 0 ? w("held.more", { n: more }) : ""]),
      state: facts([stopped ? w("held.stopped") : "", may_agree ? "" : w("held.mine")]),
      mayAgree: may_agree, stopped,
    };
  });
}
