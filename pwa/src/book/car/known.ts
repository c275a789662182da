// What a record says, where it says it: numbers and texts that are filled in.

import { type RecordState, valueOf } from "../../log/op/merge.ts";

export function numberIn(state: RecordState | undefined, field: string): number | undefined {
  const value = valueOf(state, field);
  return typeof value === "number" ? value : undefined;
}

export function textIn(state: RecordState | undefined, field: string): string {
  const value = valueOf(state, field);
  return typeof value === "string" ? value : "";
}

export function flagIn(state: RecordState | undefined, field: string): boolean {
  return valueOf(state, field) === true;
}
