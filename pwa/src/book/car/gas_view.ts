// What a cartridge and a pump do to a tyre, in words.

import type { Co2Answer } from "../../contract/contract.ts";
import { w } from "../../words/index.ts";
import { fixed, plain } from "../../words/number.ts";

// gasLines are what to know before the cartridge is screwed on, the danger first.
export function gasLines(gas: Co2Answer, cartridge: number, pressure: (kpa: number) => string): readonly { readonly words: string; readonly care: boolean }[] {
  const { kpa, g } = gas.grams_for_kpa;
  const limit = pressure(kpa);
  const share = w("value.percent", { n: Math.floor((100 * g) / cartridge) });
  return [
    gas.over_limit ? { words: w("gas.over", { limit, g: plain(Math.floor(g)), share }), care: true } : { words: w("gas.fits", { limit }), care: false },
    { words: w("gas.reaches", { p: pressure(gas.kpa) }), care: false },
    { words: w("gas.warmed", { p: pressure(gas.warmed_kpa) }), care: false },
    { words: w("gas.tomorrow", { p: pressure(gas.tomorrow_kpa) }), care: false },
    { words: w("gas.frost"), care: true },
  ];
}

export function strokesWords([low, high]: readonly [number, number]): string {
  return w("gas.strokes", { low: fixed(Math.ceil(low), 0), high: fixed(Math.ceil(high), 0) });
}
