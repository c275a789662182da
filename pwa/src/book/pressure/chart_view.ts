// The loss curve of one wheel on the person's own gauge.

import { w } from "../../words/index.ts";
import { fixed } from "../../words/number.ts";
import type { Side, WheelAnswer } from "./answer.ts";
import { inUnit, type PressureUnit } from "../value/quantity.ts";
import { onGauge, type Scene, toldNumber } from "./told.ts";

export interface CurveView {
  readonly title: string;
  readonly points: readonly { readonly x: number; readonly casing: number; readonly rough: number }[];
  readonly good: readonly [number, number] | undefined;
  readonly low: number | undefined;
  readonly high: number | undefined;
  readonly best: number | undefined;
  readonly custom: number;
  readonly mark: { readonly x: number; readonly label: string } | undefined;
  readonly unit: string;
  readonly write: (x: number) => string;
  readonly watts: (x: number) => string;
}

export function curveView(side: Side, wheel: WheelAnswer, scene: Scene): CurveView | undefined {
  if (wheel.curve.length === 0 || wheel.custom_kpa === null) return undefined;
  const at = (kpa: number): number => inUnit(onGauge(kpa, wheel, scene) * 1e3, "pressure", scene.unit);
  const maybe = (kpa: number | null): number | undefined => (kpa === null ? undefined : at(kpa));
  return {
    title: w("chart.title", { side: w(`side.${side}`) }),
    points: wheel.curve.map((p) => ({ x: at(p.kpa), casing: p.casing_w, rough: p.roughness_w })),
    good: wheel.good_kpa === null ? undefined : [at(wheel.good_kpa[0]), at(wheel.good_kpa[1])],
    low: maybe(wheel.floor_kpa), high: maybe(wheel.ceiling_kpa), best: maybe(wheel.optimum_kpa), custom: at(wheel.custom_kpa),
    mark: wheel.recommended_kpa === null ? undefined : { x: at(wheel.recommended_kpa), label: toldNumber(wheel, scene)?.text ?? "" },
    unit: w(`unit.${scene.unit}`),
    write: (x) => fixed(x, decimalsOf(scene.unit)),
    watts: (x) => fixed(x, 1),
  };
}

function decimalsOf(unit: PressureUnit): number {
  return unit === "bar" ? 2 : 0;
}
