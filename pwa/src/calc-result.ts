// Reading what the calculator said. Its answers have the shapes of the contract, which is made from its own tables.

import type { Said } from "./calc-protocol.ts";
import type { Answers, CalcError, Name, Result } from "./contract/contract.ts";

// resultOf takes an answer, or all that is wrong with the request.
export function resultOf<N extends Name>({ status, body }: Said): Result<N> {
  if (status === 200) return { answer: JSON.parse(body) as Answers[N], errors: [] };
  return { answer: undefined, errors: errorsOf(body) };
}

function errorsOf(body: string): readonly CalcError[] {
  const { error, errors } = JSON.parse(body) as { error?: Partial<CalcError>; errors?: readonly CalcError[] };
  // A server tells what is no calculation's own error as one, without values.
  return errors ?? [{ code: "cannot_compute", field: "", values: {}, ...error }];
}

// panicDetails takes what a panic says of itself out of the error's body.
export function panicDetails(body: string): string {
  try {
    const [{ values }] = errorsOf(body) as [CalcError];
    if (typeof values["message"] === "string") return `${values["message"]}\n${String(values["details"] ?? "")}`;
  } catch {
    // then the body as it is
  }
  return body;
}
