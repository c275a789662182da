// Where a wheel's number comes from, as rows of words and values: true pressures at the ride.

import { w } from "../words/index.ts";
import { fixed } from "../words/number.ts";
import type { Pair, WheelAnswer } from "./answer.ts";
import { type PressureUnit, showKpa } from "./quantity.ts";

export type Row = readonly [label: string, value: string];

export function whyRows(wheel: WheelAnswer, unit: PressureUnit): readonly Row[] {
  if (wheel.custom_kpa === null) return []; // a refused pair: no number anywhere
  const one = (kpa: number | null): string => (kpa === null ? "" : w("why.one", { p: showKpa(kpa, unit), unit: w(`unit.${unit}`) }));
  const two = (pair: Pair | null): string =>
    pair === null ? "" : w("why.range", { low: showKpa(pair[0], unit), high: showKpa(pair[1], unit), unit: w(`unit.${unit}`) });
  const rows: Row[] = [
    [w("why.custom"), one(wheel.custom_kpa)],
    [w("why.optimum"), wheel.optimum_kpa === null ? w("why.optimumNone") : one(wheel.optimum_kpa)],
    [w("why.good"), two(wheel.good_kpa)],
    [w("why.floor"), one(wheel.floor_kpa)],
    [w("why.ceiling"), wheel.ceiling_kpa === null ? w("why.ceilingNone") : one(wheel.ceiling_kpa)],
    [w("why.limited"), w(`limit.${wheel.limited_by}`)],
    [w("why.recommended"), one(wheel.recommended_kpa)],
    [w("why.set"), one(wheel.set_kpa)],
    [w("why.likely"), two(wheel.likely_kpa)],
    ...physics(wheel),
  ];
  return rows.filter(([, value]) => value !== "");
}

function physics(wheel: WheelAnswer): readonly Row[] {
  const rows: Row[] = [[w("why.load"), w("why.newtons", { n: fixed(wheel.load_n, 0) })]];
  if (wheel.squash !== null) rows.push([w("why.squash"), w("why.percent", { n: fixed(wheel.squash * 100, 1) })]);
  if (wheel.loss_w !== null) {
    const { casing, roughness } = wheel.loss_w;
    rows.push([w("why.loss"), w("why.lossOf", { casing: fixed(casing, 1), rough: fixed(roughness, 1) })]);
  }
  if (wheel.cost_w !== null) rows.push([w("why.cost"), w("why.watts", { n: fixed(wheel.cost_w, 2) })]);
  if (wheel.light_share !== null) rows.push([w("why.light"), w("why.percent", { n: fixed(wheel.light_share * 100, 1) })]);
  if (wheel.frame_ms2 !== null) rows.push([w("why.frame"), w("why.shake", { n: fixed(wheel.frame_ms2, 1) })]);
  return rows;
}
