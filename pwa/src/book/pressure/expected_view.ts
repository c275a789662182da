// What the screen says of the reading that is expected.

import { listed, w } from "../../words/index.ts";
import { fixed, plain } from "../../words/number.ts";
import { ageOf } from "../value/age.ts";
import { type Side, sides } from "./answer.ts";
import type { BothExpected, Expected } from "./expected.ts";
import { type PressureUnit, showKpa } from "../value/quantity.ts";
import type { ExpectedReadings, Reading } from "./request.ts";

const warmer = 5; // K: a smaller difference explains nothing

// expectedWords say what a wheel should read and why: "Front should read 1.98 bar: set to 2.05 14 h ago, 8 °C colder, 900 m higher".
export function expectedWords(side: Side, expected: Expected, unit: PressureUnit, now: number): string {
  const { last, here, loss, gauge_kpa } = expected;
  const [dc, dm] = [here.c - last.place.c, here.m - last.place.m];
  const why = [
    w("expect.set", { p: showKpa(last.read, unit), age: ageOf(now - last.at) }),
    ...(Math.abs(dc) >= 1 ? [dc > 0 ? w("expect.warmer", { c: fixed(dc, 0) }) : w("expect.colder", { c: fixed(-dc, 0) })] : []),
    ...(Math.abs(dm) >= 50 ? [dm > 0 ? w("expect.higher", { m: fixed(dm, 0) }) : w("expect.lower", { m: fixed(-dm, 0) })] : []),
    loss === undefined ? w("expect.noLeak") : w("expect.leak", { percent: plain(Math.round(loss * 1000) / 10) }),
  ];
  return w("expect.line", { side: w(`side.${side}`), p: `${showKpa(gauge_kpa, unit)} ${w(`unit.${unit}`)}`, why: listed(why) });
}

// isWarm tells whether a reading so much above what is expected is most likely warmth.
export function isWarm(found: number | undefined, expected: Expected | undefined): boolean {
  if (found === undefined || expected === undefined) return false;
  // Air 5 K warmer than the day reads this much more (gas law at constant volume; 101 kPa of air around).
  const warm = ((expected.gauge_kpa + 101) * warmer) / (expected.here.c + 273.15);
  return found > expected.gauge_kpa + warm;
}

// expectedView is what stands with the readings.
export function expectedView(both: BothExpected, reading: Reading, unit: PressureUnit, now: number): { readonly expected: readonly string[]; readonly warm: boolean } {
  const known = sides.flatMap((side) => (both[side] === undefined ? [] : [[side, both[side]] as const]));
  return {
    expected: known.map(([side, each]) => expectedWords(side, each, unit, now)),
    warm: known.some(([side, each]) => isWarm(reading.values.get(`now.${side}`), each)),
  };
}

// readingsOf are what the sums may take for readings.
export function readingsOf(both: BothExpected): ExpectedReadings {
  return Object.fromEntries(sides.flatMap((side) => (both[side] === undefined ? [] : [[side, both[side].gauge_kpa]])));
}
