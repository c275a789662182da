// The answer of the pressure calculation, as it arrives.

import type { Answers } from "../../contract/contract.ts";

export type Side = "front" | "rear";
export const sides: readonly Side[] = ["front", "rear"];

export type PressureAnswer = Answers["pressure"];
export type WheelAnswer = PressureAnswer["front"];
export type Notice = PressureAnswer["notices"][number];
export type Pair = NonNullable<WheelAnswer["good_kpa"]>;

// isAnswer tells an answer of this shape from anything else that a store may hold.
export function isAnswer(value: unknown): value is PressureAnswer {
  return isObject(value) && isWheel(value["front"]) && isWheel(value["rear"]) &&
    Array.isArray(value["notices"]) && Array.isArray(value["bigger_tyre"]);
}

function isWheel(value: unknown): boolean {
  return isObject(value) && "here_gauge_kpa" in value && Array.isArray(value["curve"]);
}

export function isObject(value: unknown): value is Record<string, unknown> {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}
