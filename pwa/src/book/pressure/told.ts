// The number as it is told, shown and logged: one rounding for all three.

import { type PressureUnit, showKpa, steppedKpa } from "../value/quantity.ts";
import type { WheelAnswer } from "./answer.ts";

// Scene is where a pressure is read: in which unit, and how warm it is there and at the ride.
export interface Scene {
  readonly unit: PressureUnit;
  readonly hereC: number;
  readonly rideC: number;
}

export interface Told {
  readonly kpa: number; // on the gauge, where one stands
  readonly text: string;
}

// onGauge carries a true pressure at the ride to what the gauge shows where one stands. The air in the tyre only warms, so this
// is a straight line through the recommendation's own pair of values.
export function onGauge(kpa: number, wheel: WheelAnswer, scene: Scene): number {
  if (wheel.here_gauge_kpa === null || wheel.recommended_kpa === null) return kpa;
  return wheel.here_gauge_kpa + (kpa - wheel.recommended_kpa) * ((scene.hereC + 273.15) / (scene.rideC + 273.15));
}

// toldNumber is the step nearest to the number within its limits, else the next below the ceiling.
export function toldNumber(wheel: WheelAnswer, scene: Scene): Told | undefined {
  const at = wheel.here_gauge_kpa;
  if (at === null || wheel.recommended_kpa === null) return undefined;
  const carried = (kpa: number | null, none: number): number => (kpa === null ? none : onGauge(kpa, wheel, scene));
  // What holds the number where it is set or at the warmest hour lies below the ceiling: the number itself is the most then.
  const held = wheel.limited_by !== "none" && wheel.limited_by !== "floor" && wheel.limited_by !== "printed_minimum";
  return within(at, held ? at : carried(wheel.ceiling_kpa, Infinity), carried(wheel.floor_kpa, 0), scene.unit);
}

const slack = 1e-6; // kPa

function within(kpa: number, most: number, least: number, unit: PressureUnit): Told {
  const near = steppedKpa(kpa, unit);
  const way = near > most + slack ? "down" : near < least - slack && steppedKpa(kpa, unit, "up") <= most + slack ? "up" : "near";
  return { kpa: steppedKpa(kpa, unit, way), text: showKpa(kpa, unit, way) };
}

// toldRange rounds a range's ends inwards, then widens it to hold the number.
export function toldRange([low, high]: readonly [number, number], number: Told, unit: PressureUnit): readonly [Told, Told] {
  const end = (kpa: number, way: "up" | "down"): Told => ({ kpa: steppedKpa(kpa, unit, way), text: showKpa(kpa, unit, way) });
  const [from, to] = [end(low, "up"), end(high, "down")];
  return [from.kpa > number.kpa ? number : from, to.kpa < number.kpa ? number : to];
}
