// The height profile of a course: at even steps, smoothed, with its highest and lowest point.

import type { Points } from "./points.ts";

export interface Place {
  readonly m: number; // altitude
  readonly km: number; // along the course
}

export interface Profile {
  readonly km: number; // length
  readonly step: number; // m between heights
  readonly heights: readonly number[]; // m, smoothed; none where the file tells no heights
  readonly start: number | undefined; // m
  readonly highest: Place | undefined;
  readonly lowest: Place | undefined;
}

export const smoothing = 100; // m either way: what a receiver's height scatters by is gone, a climb is not (our choice)
const steps = 1000; // at most, and not nearer than leastStep (our choice)
const leastStep = 10; // m

export function profileOf(points: Points): Profile {
  const step = Math.max(leastStep, points.length / steps);
  const heights = smoothed(evenly(points, step), Math.max(1, Math.round(smoothing / step)));
  return { km: points.length / 1000, step, heights, start: heights[0], highest: extreme(heights, step, (a, b) => a > b), lowest: extreme(heights, step, (a, b) => a < b) };
}

// evenly takes the mean height of each step's points, and the straight line between those where a step has none.
function evenly(points: Points, step: number): readonly number[] {
  const count = Math.floor(points.length / step) + 1;
  const sums = new Float64Array(count);
  const known = new Uint32Array(count);
  for (let n = 0; n < points.count; n++) {
    const high = points.high(n);
    if (Number.isNaN(high)) continue;
    const at = Math.min(count - 1, Math.round(points.far(n) / step));
    sums[at] = (sums[at] ?? 0) + high;
    known[at] = (known[at] ?? 0) + 1;
  }
  const at = [...known.keys()].filter((n) => (known[n] ?? 0) > 0);
  if (at.length === 0) return [];
  const mean = (n: number): number => (sums[n] ?? 0) / (known[n] ?? 1);
  const out: number[] = [];
  let next = 0;
  for (let n = 0; n < count; n++) {
    while ((at[next] ?? Infinity) < n) next++;
    const [before, after] = [at[next - 1], at[next]];
    if (after === n || before === undefined) out.push(mean(after ?? 0));
    else if (after === undefined) out.push(mean(before));
    else out.push(mean(before) + ((mean(after) - mean(before)) * (n - before)) / (after - before));
  }
  return out;
}

// smoothed is the mean of so many heights either way.
function smoothed(heights: readonly number[], way: number): readonly number[] {
  const sums = [0];
  for (const height of heights) sums.push((sums[sums.length - 1] ?? 0) + height);
  return heights.map((_, n) => {
    const reach = Math.min(way, n, heights.length - 1 - n); // as far on both sides, so that the ends are not drawn inwards
    return ((sums[n + reach + 1] ?? 0) - (sums[n - reach] ?? 0)) / (2 * reach + 1);
  });
}

function extreme(heights: readonly number[], step: number, beyond: (a: number, b: number) => boolean): Place | undefined {
  let best = -1;
  heights.forEach((height, n) => {
    if (best < 0 || beyond(height, heights[best] ?? 0)) best = n;
  });
  const m = heights[best];
  return m === undefined ? undefined : { m, km: (best * step) / 1000 };
}
