// The last answer with its question, kept so that a cold start shows it before the calculator is awake.

import { isAnswer, isObject, type PressureAnswer } from "./answer.ts";
import type { RequestBody } from "./request.ts";
import type { Tables } from "./tables.ts";

export interface Kept {
  readonly question: RequestBody;
  readonly answer: PressureAnswer;
}

export const noTables: Tables = { bounds: new Map(), usualInner: [] };

// unpack takes the answer from the store.
export function unpack(stored: unknown): Kept | undefined {
  if (!isObject(stored)) return undefined;
  const { question, answer } = stored;
  return isObject(question) && isObject(question["set"]) && isObject(question["ride"]) && isAnswer(answer) ? { question: question as unknown as RequestBody, answer } : undefined;
}
