// The two-gauge check: how far one's own gauge is off another that is trusted.

import { w } from "../../words/index.ts";
import { parse, type PressureUnit, showKpa, typedKpa } from "../value/quantity.ts";

export interface GaugeCheck {
  readonly words: string; // "" while one of them is not read
  readonly text: string; // for the gauge's error, "" when there is nothing to store
}

const most = 100; // kPa: as far as a gauge's error may go

// gaugeCheck compares two readings of the same tyre.
export function gaugeCheck(mine: string, other: string, unit: PressureUnit): GaugeCheck {
  const [own, trusted] = [parse(mine, "pressure", unit), parse(other, "pressure", unit)];
  if (!("si" in own) || !("si" in trusted)) return { words: "", text: "" };
  const kpa = (own.si - trusted.si) / 1000;
  const named = (by: number): { by: string; unit: string } => ({ by: showKpa(by, unit), unit: w(`unit.${unit}`) });
  if (Math.abs(kpa) > most) return { words: w("gauges.far", named(most)), text: "" };
  if (showKpa(Math.abs(kpa), unit) === showKpa(0, unit)) return { words: w("gauges.same"), text: typedKpa(0, unit) };
  const words = kpa > 0 ? w("gauges.high", named(kpa)) : w("gauges.low", named(-kpa));
  return { words, text: typedKpa(kpa, unit) };
}
