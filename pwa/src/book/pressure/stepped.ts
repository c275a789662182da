// One tap on a reading's stepper.

import { parse, type PressureUnit, stepKpa, typedKpa } from "../value/quantity.ts";

// stepped moves a typed reading by a gauge's step, up or down. The first tap, where nothing is typed, shows what the gauge
// should read; undefined when that is not known either.
export function stepped(text: string, aim: number | undefined, by: number, unit: PressureUnit): string | undefined {
  const now = parse(text, "pressure", unit);
  const from = "si" in now ? now.si / 1000 : aim;
  if (from === undefined) return undefined;
  const step = "si" in now ? stepKpa(unit) * Math.sign(by) : 0;
  return typedKpa(Math.max(0, from + step), unit);
}
