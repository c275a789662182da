// How long ago, in words.

import { w } from "../../words/index.ts";

const minute = 60e3;
const hour = 60 * minute;
const day = 24 * hour;

const noAge = 20 * 365 * day; // older than any entry: its time lies ahead of any right clock, so nobody knows it

// ageOf tells a time span in ms. What lies ahead, because clocks differ, is "just now".
export function ageOf(ms: number): string {
  if (ms > noAge) return w("age.unknown");
  if (ms < 2 * minute) return w("age.now");
  if (ms < 2 * hour) return w("age.minutes", { n: Math.floor(ms / minute) });
  if (ms < 2 * day) return w("age.hours", { n: Math.floor(ms / hour) });
  return w("age.days", { n: Math.floor(ms / day) });
}
