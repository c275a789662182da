// One wheel's card: the action, the number on the person's own gauge, and how sure it is.

import { w } from "../../words/index.ts";
import { plain } from "../../words/number.ts";
import type { PressureAnswer, Side, WheelAnswer } from "./answer.ts";
import type { NoticeView } from "./notices.ts";
import { coarseKpa, type PressureUnit, type Rounding, showKpa } from "../value/quantity.ts";

export interface WheelView {
  readonly side: Side;
  readonly title: string;
  readonly number: string; // "" when there is none
  readonly unit: string;
  readonly act: string;
  readonly strokes: string;
  readonly good: readonly [label: string, range: string] | undefined;
  readonly facts: readonly string[]; // below the number
  readonly stops: readonly string[];
  readonly wanting: "" | "tyreMax" | "rimMax" | "inner"; // a field that would end the stop
  readonly old: string; // why the number no longer holds; "" when it does
}

// Held is what the wheel holds now: read on the gauge, or expected.
export interface Held {
  readonly kpa: number;
  readonly isRead: boolean;
}

export interface Scene {
  readonly unit: PressureUnit;
  readonly setC: number;
  readonly rideC: number;
}

// onGauge carries a pressure at the ride to what the gauge shows where it is set: linear, since the air in the tyre only
// warms (slope) and the recommendation's own pair of values gives the rest.
export function onGauge(kpa: number, wheel: WheelAnswer, scene: Scene): number {
  if (wheel.gauge_kpa === null || wheel.recommended_kpa === null) return kpa;
  return wheel.gauge_kpa + (kpa - wheel.recommended_kpa) * ((scene.setC + 273.15) / (scene.rideC + 273.15));
}

// roundingOf keeps a rounded number on the safe side of what holds it.
export function roundingOf(wheel: WheelAnswer): Rounding {
  if (wheel.limited_by === "floor" || wheel.limited_by === "printed_minimum") return "up";
  if (wheel.limited_by !== "none") return "down";
  const { ceiling_kpa: top, recommended_kpa: p, floor_kpa: floor } = wheel;
  const coarse = 1; // kPa: more than any display's rounding
  if (p !== null && top !== null && top - p < coarse) return "down";
  return p !== null && floor !== null && p - floor < coarse ? "up" : "near";
}

export function wheelView(side: Side, answer: PressureAnswer, notices: readonly NoticeView[], scene: Scene, reading: Held | undefined, old: string, age = ""): WheelView {
  const wheel = answer[side];
  const stops = notices.filter((each) => each.severity === "stop" && each.wheel === side);
  const base = { side, title: w(`side.${side}`), unit: w(`unit.${scene.unit}`), old };
  if (wheel.gauge_kpa === null || wheel.recommended_kpa === null) {
    const wanting = stops.some((each) => each.code === "ask_max_rim") ? "rimMax"
      : stops.some((each) => each.code.startsWith("ask_max")) ? "tyreMax" : "";
    return { ...base, number: "", act: "", strokes: "", good: undefined, facts: widthFact(wheel, age), stops: stops.map((each) => each.text), wanting };
  }
  return {
    ...base, number: showKpa(wheel.gauge_kpa, scene.unit, roundingOf(wheel)), ...deed(wheel, scene),
    good: goodRange(wheel, scene), facts: [...facts(wheel, scene, reading), ...widthFact(wheel, age)], stops: [], wanting: "",
  };
}

function deed(wheel: WheelAnswer, scene: Scene): { act: string; strokes: string } {
  const action = wheel.action;
  if (action === null) return { act: w("act.set"), strokes: "" };
  if (action.do === "leave") return { act: w("act.leave"), strokes: "" };
  const by = showKpa(action.by_kpa, scene.unit, amountRounding(roundingOf(wheel), action.do));
  const unit = w(`unit.${scene.unit}`);
  const strokes = action.strokes === null ? "" : w("act.strokes", { n: Math.max(1, Math.round(action.strokes)) });
  return { act: action.do === "add" ? w("act.add", { by, unit }) : w("act.let_out", { by, unit }), strokes };
}

// amountRounding rounds as the number is rounded, so that reading, amount and number add up on the card.
function amountRounding(ofNumber: Rounding, act: "add" | "let_out"): Rounding {
  if (ofNumber === "near" || act === "add") return ofNumber;
  return ofNumber === "down" ? "up" : "down";
}

function facts(wheel: WheelAnswer, scene: Scene, reading: Held | undefined): readonly string[] {
  const unit = w(`unit.${scene.unit}`);
  const out: string[] = [];
  if (reading !== undefined) {
    const p = showKpa(reading.kpa, scene.unit);
    out.push(reading.isRead ? w("act.read", { p }) : w("act.expected", { p }));
  }
  if (wheel.at_ride_kpa !== null && wheel.gauge_kpa !== null && Math.abs(wheel.at_ride_kpa - wheel.gauge_kpa) >= 2) {
    out.push(w("wheel.atRide", { p: showKpa(wheel.at_ride_kpa, scene.unit, roundingOf(wheel)), unit }));
  }
  return out;
}

// The good range is shown where it may be used: between floor and ceiling.
function goodRange(wheel: WheelAnswer, scene: Scene): readonly [string, string] | undefined {
  if (wheel.good_kpa === null) return undefined;
  const low = Math.max(wheel.good_kpa[0], wheel.floor_kpa ?? 0);
  const high = Math.min(wheel.good_kpa[1], wheel.ceiling_kpa ?? Infinity);
  if (low >= high) return [w("wheel.good"), w("wheel.goodNone")];
  const show = (kpa: number): string => coarseKpa(onGauge(kpa, wheel, scene), scene.unit);
  return [w("wheel.good"), w("wheel.goodOf", { low: show(low), high: show(high) })];
}

// widthFact tells the width that the answer is for; a measured one with its age.
function widthFact(wheel: WheelAnswer, age: string): readonly string[] {
  if (wheel.width_mm === null) return [];
  const tenths = (mm: number): string => plain(Math.round(mm * 10) / 10);
  const mm = tenths(wheel.width_mm);
  if (wheel.width_from === "predicted") return [w("wheel.predicted", { mm })];
  const measured = age === "" ? w("wheel.measured", { mm }) : w("wheel.aged", { mm, age });
  return [wheel.predicted_mm === null ? measured : w("wheel.beside", { measured, predicted: tenths(wheel.predicted_mm) })];
}
