// Taking back what a list changed.

import type { Change } from "../../../log/book_log.ts";
import { type RecordState, valueOf } from "../../../log/op/merge.ts";

// undone are the changes that put back what a list changed; what it added is removed apart.
export function undone(changes: readonly Change[], states: readonly RecordState[]): readonly Change[] {
  const now = new Map(states.map((state) => [state.rec, state]));
  return changes.flatMap(({ rec, kind, set, shown: before }): Change[] => {
    const shown = now.get(rec);
    if (before === undefined || shown === undefined) return [];
    return [{ rec, kind, set: Object.fromEntries(Object.keys(set).map((field) => [field, valueOf(before, field) ?? null])), shown }];
  });
}
