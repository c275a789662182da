// The last answer with its question, kept so that a cold start shows it before the calculator is awake.

import { isAnswer, isObject, type PressureAnswer } from "./answer.ts";
import type { RequestBody } from "./request.ts";
import type { Tables } from "./tables.ts";

export interface Kept {
  readonly question: string; // the request's JSON
  readonly answer: PressureAnswer;
}

export const noTables: Tables = { bounds: new Map(), usualInner: [] };

// pack and unpack take the answer and the field tables to the store and back.
export function pack(kept: Kept, tables: Tables): object {
  return { ...kept, bounds: [...tables.bounds], usualInner: tables.usualInner };
}

export function unpack(stored: unknown): { kept: Kept; tables: Tables } | undefined {
  if (!isObject(stored)) return undefined;
  const { question, answer, bounds, usualInner } = stored;
  if (typeof question !== "string" || !isAnswer(answer) || !Array.isArray(bounds) || !Array.isArray(usualInner)) return undefined;
  return { kept: { question, answer }, tables: { bounds: new Map(bounds as [string, { min: number; max: number }][]), usualInner: usualInner as Tables["usualInner"] } };
}

// asked is the question that an answer belongs to.
export function asked(kept: Kept): RequestBody {
  return JSON.parse(kept.question) as RequestBody;
}
