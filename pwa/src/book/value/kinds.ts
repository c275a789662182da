// What records may hold, for names that are only known at run time.

import { kinds as known, type Kind, type KindField } from "../../contract/kinds.ts";
import { member } from "../../log/op/json.ts";

export type { Kind, KindField } from "../../contract/kinds.ts";

export const kinds: Readonly<Record<string, Kind>> = known;

// fieldOf is what is known of a field; nothing of what only a newer app knows.
export function fieldOf(kind: string, field: string): KindField | undefined {
  return member(member(kinds, kind)?.fields, field);
}
