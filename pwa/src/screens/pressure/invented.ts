// The event that a demo server plays.

import { isObject } from "../../book/pressure/answer.ts";

let told: Promise<Record<string, unknown> | undefined> | undefined;

// invented is undefined everywhere but at a demo. A server is asked once; without one, a phone on its own starts empty and
// asks again.
export function invented(): Promise<Record<string, unknown> | undefined> {
  told ??= ask().catch(() => {
    told = undefined;
    return undefined;
  });
  return told;
}

async function ask(): Promise<Record<string, unknown> | undefined> {
  const answer = await fetch("api/demo", { signal: AbortSignal.timeout(1500) });
  if (answer.status !== 200) return undefined;
  const body: unknown = await answer.json();
  return isObject(body) ? body : undefined;
}
