// What went into each of a wheel's numbers, with the values that were typed, assumed or worked out.

import { hooklessCapKpa } from "../../contract/contract.ts";
import { w } from "../../words/index.ts";
import { fixed, plain } from "../../words/number.ts";
import type { WheelAnswer } from "./answer.ts";
import { type PressureUnit, showKpa } from "../value/quantity.ts";
import type { RequestBody, WheelBody } from "./request.ts";
import type { Paged, WhyFacts } from "./why_view.ts";

// usesOf lists a number's inputs.
export function usesOf(name: Paged, wheel: WheelAnswer, facts: WhyFacts): string {
  const { question, side, unit } = facts;
  const body = question[side];
  return partsOf(name).flatMap((part): readonly string[] => {
    switch (part) {
      case "load": return [facts.veiled ? w("uses.weight") : w("uses.load", { n: fixed(wheel.load_n, 0) })];
      case "all": return [w("uses.weight")];
      case "width": return wheel.width_mm === null ? [] : [w(`uses.${wheel.width_from}`, { mm: plain(Math.round(wheel.width_mm * 10) / 10) })];
      case "squash": return [side === "front" ? w("uses.squashFront") : w("uses.squashRear")];
      case "shift": return [w("uses.shift", { percent: fixed((Math.exp(question.shift?.[side] ?? 0) - 1) * 100, 1) })];
      case "casing": return [w(`sidewall.${sidewallOf(body)}`)];
      case "setup": return [w(`setup.${setupOf(body)}`)];
      case "min": return body.tyre.min_kpa === undefined ? [] : [w("uses.min", { p: pressure(body.tyre.min_kpa, unit) })];
      case "marks": return marks(body, unit);
      case "air": return air(question);
      case "gauge": return [w("uses.gauge", { p: pressure(question.gauge_error_kpa ?? 0, unit) })];
      case "buttons": return [w("uses.buttons", { n: (question.firmness ?? 0) - (question.wet ? 1 : 0) })];
      case "numbers": return [w("uses.numbers")];
      case "ground": return [w("uses.ground")];
      case "pressure": return [w("uses.pressure")];
    }
  }).join(", ");
}

type Part = "load" | "all" | "width" | "squash" | "shift" | "casing" | "setup" | "min" | "marks" | "air" | "gauge" | "buttons" | "numbers" | "ground" | "pressure";

function partsOf(name: Paged): readonly Part[] {
  const parts: Readonly<Record<Paged, readonly Part[]>> = {
    recommended: ["numbers", "shift", "buttons"], custom: ["load", "width", "squash", "setup"], optimum: ["ground", "load", "width", "casing"],
    good: ["ground", "load", "width", "casing"], floor: ["all", "width", "setup", "min"], ceiling: ["marks", "air"], set: ["pressure", "air", "gauge"],
    likely: ["ground", "width", "load"], load: ["all"], squash: ["load", "width", "pressure"], loss: ["ground", "load", "width", "casing", "pressure"],
  };
  return parts[name];
}

function pressure(kpa: number, unit: PressureUnit): string {
  return w("why.one", { p: showKpa(kpa, unit), unit: w(`unit.${unit}`) });
}

function sidewallOf({ tyre }: WheelBody): "cloth" | "glove" | "hose" {
  return (["cloth", "hose"] as const).find((each) => each === tyre.sidewall) ?? "glove";
}

function setupOf({ tyre }: WheelBody): "tube" | "tubeless" | "insert" {
  return (["tube", "insert"] as const).find((each) => each === tyre.setup) ?? "tubeless";
}

function marks({ tyre, rim }: WheelBody, unit: PressureUnit): readonly string[] {
  return [
    ...(tyre.max_kpa === undefined ? [] : [w("uses.tyreMax", { p: pressure(tyre.max_kpa, unit) })]),
    ...(rim.max_kpa === undefined ? [] : [w("uses.rimMax", { p: pressure(rim.max_kpa, unit) })]),
    ...(rim.table_max_kpa === undefined ? [] : [w("uses.tableMax", { p: pressure(rim.table_max_kpa, unit) })]),
    ...(rim.profile === "hooked" ? [] : [w("uses.hookless", { p: pressure(hooklessCapKpa, unit) })]),
  ];
}

function air({ set, ride, warmest_c }: RequestBody): readonly string[] {
  const at = ({ c, m }: { c: number; m: number }): { c: string; m: string } => ({ c: plain(Math.round(c * 10) / 10), m: fixed(m, 0) });
  return [w("uses.set", at(set)), w("uses.ride", at(ride)), ...(warmest_c === undefined ? [] : [w("uses.warmest", { c: plain(Math.round(warmest_c * 10) / 10) })])];
}
