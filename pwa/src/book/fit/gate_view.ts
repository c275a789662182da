// The gate before the first step, in words: may this tyre go on this rim, and how high may its bead be pumped while it is seated.

import { isKey, listed, w } from "../../words/index.ts";
import { plain } from "../../words/number.ts";
import { fieldWords } from "../value/kind_words.ts";
import { type PressureUnit, showKpa } from "../value/quantity.ts";
import type { FieldId, SeatAnswer } from "./fit_asks.ts";

export interface GateView {
  readonly open: boolean; // the first step may be taken
  readonly severity: "stop" | "care" | "";
  readonly title: string; // "" for none
  readonly lines: readonly string[];
}

// nameOf is what a field is called: "Width printed on the tyre".
export function nameOf(id: FieldId): string {
  const dot = id.indexOf(".");
  return fieldWords(id.slice(0, dot), id.slice(dot + 1));
}

export function missingGate(missing: readonly FieldId[]): GateView {
  return { open: false, severity: "care", title: "", lines: [w("fit.answer", { fields: listed(missing.map(nameOf)) })] };
}

// gateView words an answer; undefined where no sums run: then the gate stays shut.
export function gateView(answer: SeatAnswer | undefined): GateView {
  if (answer === undefined) return { open: false, severity: "stop", title: w("fit.refused"), lines: [w("fit.unsure")] };
  const { refused, values, cares } = answer;
  if (refused !== null) {
    const mm = (value: number | undefined): string => (value === undefined ? "" : plain(value));
    return { open: false, severity: "stop", title: w("fit.refused"), lines: [w(`fitGate.${refused}`, { label: mm(values.label_mm), inner: mm(values.inner_mm), least: mm(values.least_label_mm) })] };
  }
  return { open: true, severity: cares.length > 0 ? "care" : "", title: w("fit.passed"), lines: cares.flatMap(careWords) };
}

function careWords(code: string): readonly string[] {
  return isKey(`fitCare.${code}`) ? [w(`fitCare.${code}` as "fitCare.wide_care")] : [];
}

// limitWords is what the gauge may never show while the bead is seated, rounded down, and whose it is; "" where there is none.
export function limitWords({ gauge_kpa, limited_by }: SeatAnswer, unit: PressureUnit): string {
  if (gauge_kpa === null) return "";
  return w(`fitLimit.${limited_by}`, { p: w("value.with", { value: showKpa(gauge_kpa, unit, "down"), unit: w(`unit.${unit}`) }) });
}
