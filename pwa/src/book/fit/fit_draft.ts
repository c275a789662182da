// What is kept of a fitting that is under way, so that a phone that went dark goes on where it was.

import type { Json } from "../../log/op/json.ts";
import { isObject } from "../pressure/answer.ts";
import { type Way, ways } from "./steps.ts";

export interface FitDraft {
  readonly tyre: string | undefined; // that goes on; undefined until somebody chose: then it is the one that is on
  readonly at: Readonly<Partial<Record<Way, number>>>; // the step of each way
  readonly texts: Readonly<Record<string, string>>; // of what was done
}

export const draftName = (wheel: string): string => `fit/${wheel}`;

export function readDraft(stored: unknown): FitDraft {
  const from: Readonly<Record<string, Json | undefined>> = isObject(stored as never) ? (stored as Record<string, Json>) : {};
  const at = isObject(from["at"]) ? from["at"] : {};
  const texts = isObject(from["texts"]) ? from["texts"] : {};
  return {
    tyre: typeof from["tyre"] === "string" ? from["tyre"] : undefined,
    at: Object.fromEntries(ways.flatMap((way) => (typeof at[way] === "number" ? [[way, at[way]] as const] : []))),
    texts: Object.fromEntries(Object.entries(texts).filter((each): each is [string, string] => typeof each[1] === "string")),
  };
}
