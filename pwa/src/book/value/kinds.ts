// What records may hold: the list that the server reads too, with types.

import list from "../../../../store/record/kinds.json";
import { member } from "../../log/op/json.ts";

export interface KindField {
  readonly type: "number" | "text" | "choice" | "flag" | "ref" | "day" | "time" | "blob" | "list" | "object" | "any";
  readonly unit?: string; // of a number; "" for a bare one
  readonly min?: number; // of a number
  readonly max?: number; // of a number; of a text, its length in characters
  readonly options?: readonly string[]; // of a choice
  readonly kinds?: readonly string[]; // what a ref may point to
  readonly of?: KindField; // what a list holds
}

export interface Kind {
  readonly is: "description" | "entry" | "control"; // edited in place, written once, or told to whoever holds the record
  readonly fields: Readonly<Record<string, KindField>>;
}

export const kinds = list.kinds as unknown as Readonly<Record<string, Kind>>;

// fieldOf is what is known of a field; nothing of what only a newer app knows.
export function fieldOf(kind: string, field: string): KindField | undefined {
  return member(member(kinds, kind)?.fields, field);
}
