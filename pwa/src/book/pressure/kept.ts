// The last answer with its question, kept so that a cold start shows it before the calculator is awake.

import { isAnswer, isObject, type PressureAnswer } from "./answer.ts";
import type { RequestBody } from "./request.ts";
import type { Tables } from "./tables.ts";

export interface Kept {
  readonly question: string; // the request's JSON
  readonly answer: PressureAnswer;
}

export const noTables: Tables = { bounds: new Map(), usualInner: [] };

// unpack takes the answer from the store.
export function unpack(stored: unknown): Kept | undefined {
  if (!isObject(stored)) return undefined;
  const { question, answer } = stored;
  return typeof question === "string" && isAnswer(answer) ? { question, answer } : undefined;
}

// asked is the question that an answer belongs to.
export function asked(kept: Kept): RequestBody {
  return JSON.parse(kept.question) as RequestBody;
}
