// Which wheel was put into a bike and which was taken out, as the bike's own history tells: a line for each, in the history of the bike
// and of the wheel.

import type { HistoryEntry } from "../../log/op/history.ts";
import { type Side, sides } from "../pressure/answer.ts";

export interface Swap {
  readonly key: string;
  readonly at: number;
  readonly bike: string;
  readonly side: Side;
  readonly wheel: string;
  readonly into: boolean; // put in, not taken out
}

// swapsOf reads a bike's history, newest first. The wheels that it was made with were never put in.
export function swapsOf(bike: string, history: readonly HistoryEntry[]): readonly Swap[] {
  const swaps: Swap[] = [];
  const on: Partial<Record<Side, string>> = {};
  history.toReversed().forEach(({ op, at, set }, n) => {
    for (const side of sides) {
      if (!(side in set)) continue;
      const wheel = typeof set[side] === "string" ? set[side] : "";
      const before = on[side] ?? "";
      on[side] = wheel;
      if (n === 0 || wheel === before) continue;
      if (before !== "") swaps.push({ key: `${op} ${side} out`, at, bike, side, wheel: before, into: false });
      if (wheel !== "") swaps.push({ key: `${op} ${side} in`, at, bike, side, wheel, into: true });
    }
  });
  return swaps.toReversed();
}
