// An older app kept one walk-around for each bike, with its findings, on the phone alone. They come into the book, and the walk goes on.

import type { Change } from "../../log/book_log.ts";
import type { RecordState } from "../../log/op/merge.ts";
import { isRow, type Parts, rowTitle } from "./rows.ts";
import { begunChange, foundChange, photoChange, textOf } from "./walk_save.ts";
import { stations, type Walk, walkDraft } from "./walk.ts";

export interface Adopted {
  readonly name: string; // of the draft as it is kept now
  readonly value: Walk;
  readonly changes: readonly Change[];
}

// adopted works out what to write. Findings that are in the book already are left alone.
export function adopted(walk: Walk, bike: RecordState | undefined, known: readonly (RecordState | undefined)[]): Adopted {
  const there = new Set(known.flatMap((state) => (state === undefined ? [] : [state.rec])));
  const parts: Parts = { bike: walk.bike, wheel: (side) => textOf(bike, side), tyre: () => "" };
  const at = walk.started;
  const findings = Object.entries(walk.found).flatMap(([id, found]): Change[] => {
    const station = stations.find((each) => id.startsWith(`${each}.`));
    if (there.has(found.rec) || station === undefined || !isRow(id)) return [];
    const worded = { ...found, words: found.words.trim() || rowTitle(id) };
    return [foundChange(walk, { id, station }, worded, parts, at, undefined), ...found.photos.map((photo) => photoChange(walk, found, photo, at))];
  });
  return { name: walkDraft(walk.bike, walk.moment), value: walk, changes: [begunChange(walk), ...findings] };
}
