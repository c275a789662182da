// Where a wheel's numbers come from, as rows of words and values: true pressures at the ride. Each of the main numbers has
// a page: what went in, the formula in words, the source, and how sure it is.

import { w } from "../../words/index.ts";
import { fixed } from "../../words/number.ts";
import type { Pair, Side, WheelAnswer } from "./answer.ts";
import { type PressureUnit, showKpa } from "../value/quantity.ts";
import type { RequestBody } from "./request.ts";
import { usesOf } from "./why_uses.ts";

export interface WhyPage {
  readonly uses: string; // the inputs
  readonly how: string;
  readonly source: string;
  readonly sure: string;
}

export interface Row {
  readonly label: string;
  readonly value: string;
  readonly page: WhyPage | undefined;
}

const paged = ["custom", "optimum", "good", "floor", "ceiling", "recommended", "set", "likely", "load", "squash", "loss"] as const;
export type Paged = (typeof paged)[number];

// Told is what the reasons rest on besides the answer.
export interface WhyFacts {
  readonly side: Side;
  readonly question: RequestBody;
  readonly unit: PressureUnit;
  readonly veiled: boolean; // what the rider weighs is not for this phone to show
}

export function whyRows(wheel: WheelAnswer, facts: WhyFacts): readonly Row[] {
  if (wheel.custom_kpa === null) return []; // a refused pair: no number anywhere
  const { unit } = facts;
  const one = (kpa: number | null): string => (kpa === null ? "" : w("why.one", { p: showKpa(kpa, unit), unit: w(`unit.${unit}`) }));
  const two = (pair: Pair | null): string => (pair === null ? "" : rangeWords(pair, unit));
  const row = (name: Paged, label: string, value: string): Row => ({ label, value, page: pageOf(name, wheel, facts) });
  const rows: Row[] = [
    row("recommended", w("why.recommended"), one(wheel.recommended_kpa)),
    row("custom", w("why.custom"), one(wheel.custom_kpa)),
    row("optimum", w("why.optimum"), wheel.optimum_kpa === null ? w("why.optimumNone") : one(wheel.optimum_kpa)),
    row("good", w("why.good"), two(wheel.good_kpa)),
    row("floor", w("why.floor"), one(wheel.floor_kpa)),
    row("ceiling", w("why.ceiling"), wheel.ceiling_kpa === null ? w("why.ceilingNone") : one(wheel.ceiling_kpa)),
    { label: w("why.limited"), value: w(`limit.${wheel.limited_by}`), page: undefined },
    row("set", w("why.set"), one(wheel.set_kpa)),
    row("likely", w("why.likely"), two(wheel.likely_kpa)),
    row("load", w("why.load"), facts.veiled ? w("why.veiled") : w("why.newtons", { n: fixed(wheel.load_n, 0) })),
    ...physics(wheel, row),
  ];
  return rows.filter(({ value }) => value !== "");
}

function physics(wheel: WheelAnswer, row: (name: Paged, label: string, value: string) => Row): readonly Row[] {
  const plain = (label: string, value: string): Row => ({ label, value, page: undefined });
  const rows: Row[] = [];
  if (wheel.squash !== null) rows.push(row("squash", w("why.squash"), w("why.percent", { n: fixed(wheel.squash * 100, 1) })));
  if (wheel.loss_w !== null) {
    const { casing, roughness } = wheel.loss_w;
    rows.push(row("loss", w("why.loss"), w("why.lossOf", { casing: fixed(casing, 1), rough: fixed(roughness, 1) })));
  }
  if (wheel.cost_w !== null) rows.push(plain(w("why.cost"), w("why.watts", { n: fixed(wheel.cost_w, 2) })));
  if (wheel.light_share !== null) rows.push(plain(w("why.light"), w("why.percent", { n: fixed(wheel.light_share * 100, 1) })));
  if (wheel.frame_ms2 !== null) rows.push(plain(w("why.frame"), w("why.shake", { n: fixed(wheel.frame_ms2, 1) })));
  return rows;
}

function pageOf(name: Paged, wheel: WheelAnswer, facts: WhyFacts): WhyPage {
  const likely = wheel.likely_kpa;
  const band = name === "recommended" && likely !== null ? ` ${w("whySure.band", { range: rangeWords(likely, facts.unit) })}` : "";
  return { uses: usesOf(name, wheel, facts), how: w(`whyHow.${name}`), source: w(`whySource.${name}`), sure: w(`whySure.${name}`) + band };
}

function rangeWords([low, high]: Pair, unit: PressureUnit): string {
  return w("why.range", { low: showKpa(low, unit), high: showKpa(high, unit), unit: w(`unit.${unit}`) });
}
