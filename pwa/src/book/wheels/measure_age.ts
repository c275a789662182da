// How old a measured width is, and when to take it again: a tyre grows in its first days on the rim.

import { growDays } from "../../contract/contract.ts";
import { type RecordState, valueOf } from "../../log/op/merge.ts";
import { w } from "../../words/index.ts";
import { dayAge, dayOf, daysFrom, isDay } from "./measure_days.ts";

// widthDue tells why a width measured on a day should be taken again: it was taken before the tyre had grown, or before
// it was put on this rim.
export function widthDue(measured: string, fitted: unknown, today: string): "" | "grown" | "moved" {
  if (!isDay(fitted) || daysFrom(fitted, today) < 0) return "";
  const after = daysFrom(fitted, measured);
  if (after < 0) return "moved";
  return after < growDays && daysFrom(fitted, today) >= growDays ? "grown" : "";
}

// widthAge tells how old a tyre's measured width is; "" when none is known, or nobody noted when.
export function widthAge(tyre: RecordState | undefined, now: number): string {
  if (typeof valueOf(tyre, "measured_mm") !== "number") return "";
  const at = valueOf(tyre, "measured_at");
  if (typeof at !== "number") return "";
  const day = dayOf(at);
  const age = w("measureAge.measured", { age: dayAge(day, now) });
  const due = widthDue(day, valueOf(tyre, "fitted"), dayOf(now));
  return due === "" ? age : w("measureAge.due", { age, due: w(`measureDue.${due}`) });
}
