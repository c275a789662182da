// A bike of the book as the Pressure screen opens it: what is known of today stays, what belongs to a bike comes from its
// records.

import type { RecordState } from "../../log/op/merge.ts";
import { type Role, roles } from "../bind/bonds.ts";
import type { States } from "../bind/commit.ts";
import type { PressureDraft } from "./draft.ts";
import { linksOf, take, type Who } from "../bind/take.ts";

export type Find = (rec: string) => RecordState | undefined;

// partKinds are the kinds of record that a bike leads to.
export const partKinds = ["person", "wheel", "tyre", "gauge", "pump"] as const;

// openedDraft points to the bike's records; nothing of them is on the screen yet.
export function openedDraft(bike: RecordState, find: Find, today: PressureDraft): PressureDraft {
  return {
    ...today, started: true, rearSame: true, links: linksOf(bike, find), based: {}, bike: "", firmness: 0, weigh: "share", picks: {},
    texts: weatherOf(today),
  };
}

// filledDraft is the draft once its records have been read.
export function filledDraft(bike: RecordState, find: Find, today: PressureDraft, who: Who): PressureDraft {
  const draft = openedDraft(bike, find, today);
  const known = roles.flatMap((role): (readonly [Role, RecordState])[] => {
    const rec = draft.links[role];
    const state = rec === bike.rec ? bike : rec === undefined ? undefined : find(rec);
    return state === undefined ? [] : [[role, state]];
  });
  return take(draft, Object.fromEntries(known) as States, who);
}

// weatherOf keeps what is typed about the day, and drops what belongs to a bike.
function weatherOf(draft: PressureDraft): Record<string, string> {
  return Object.fromEntries(Object.entries(draft.texts).filter(([id]) => /^(set|ride|warmest)\./.test(id)));
}
