// A measured value against the limit that the calculator gives with what to look at.

import type { Ask, Found, Severity } from "./walk.ts";
import { severities } from "./walk.ts";
import { parse } from "../value/quantity.ts";

export type Measure = NonNullable<Ask["measure"]>;
type Edge = Measure["stop"];

function past(edge: Edge, mm: number): boolean {
  if (edge === null) return false;
  return edge.when === "below" ? mm < edge.mm : edge.when === "to" ? mm <= edge.mm : mm > edge.mm;
}

// judged tells how bad a value is; undefined when it is within its limits.
export function judged({ stop, care }: Measure, mm: number): Severity | undefined {
  return past(stop, mm) ? "stop" : past(care, mm) ? "care" : undefined;
}

// asMeasured lets a measured value make a finding worse, never better: the person may know more than the number tells.
export function asMeasured(ask: Ask | undefined, found: Found): Found {
  const mm = parse(found.mm, "length", "mm");
  const severity = ask?.measure === undefined || !("si" in mm) ? undefined : judged(ask.measure, Number((mm.si * 1e3).toPrecision(12)));
  if (severity === undefined || severities.indexOf(severity) <= severities.indexOf(found.severity ?? "note")) return found;
  return { ...found, severity };
}
