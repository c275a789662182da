// One wheel's card: the number where one stands, the action, what was read or is expected, and the ruler.

import { w } from "../../words/index.ts";
import { plain } from "../../words/number.ts";
import type { PressureAnswer, Side, WheelAnswer } from "./answer.ts";
import type { NoticeView } from "./notices.ts";
import { showKpa, steppedKpa } from "../value/quantity.ts";
import { type RulerView, rulerView } from "./ruler_view.ts";
import { type Scene, type Told, toldNumber } from "./told.ts";

export interface WheelView {
  readonly side: Side;
  readonly title: string;
  readonly width: string; // how the width is known
  readonly number: string; // "" when there is none
  readonly kpa: number | undefined; // the same on the gauge, as it is logged
  readonly unit: string;
  readonly act: string;
  readonly strokes: string;
  readonly told: string; // "expected, not read"
  readonly ruler: RulerView | undefined;
  readonly stops: readonly string[];
  readonly wanting: "" | "tyreMax" | "rimMax" | "inner" | "tableMin"; // a field that would end the stop
  readonly old: string; // why the number no longer holds; "" when it does
}

// Held is what the wheel holds now: read on the gauge, or expected. Faulty is a reading that cannot be understood.
export interface Held {
  readonly kpa: number | undefined;
  readonly from: "read" | "expected" | "faulty" | "nothing";
}

export function wheelView(side: Side, answer: PressureAnswer, notices: readonly NoticeView[], scene: Scene, held: Held, old: string, age = ""): WheelView {
  const wheel = answer[side];
  const number = toldNumber(wheel, scene);
  const base = { side, title: w(`side.${side}`), unit: w(`unit.${scene.unit}`), old, width: widthWords(wheel, age) };
  if (number === undefined) {
    const stops = notices.filter((each) => each.severity === "stop" && (each.wheel === side || each.wheel === "both"));
    return { ...base, number: "", kpa: undefined, act: "", strokes: "", told: "", ruler: undefined, stops: stops.map((each) => each.text), wanting: wantingOf(stops) };
  }
  return {
    ...base, number: number.text, kpa: number.kpa, ...deed(wheel, number, scene, held), ruler: rulerView(wheel, number, scene, held.from === "read" ? held.kpa : undefined),
    told: held.from === "expected" ? w("act.unread") : "", stops: [], wanting: "",
  };
}

function wantingOf(stops: readonly NoticeView[]): WheelView["wanting"] {
  const has = (code: string): boolean => stops.some((each) => each.code === code);
  if (has("ask_table_min")) return "tableMin";
  return has("ask_max_rim") ? "rimMax" : has("ask_max_tyre") || has("ask_max_both") ? "tyreMax" : "";
}

// deed is the action. Its amount is the difference of the two numbers that are shown, so that they add up on the card.
function deed(wheel: WheelAnswer, number: Told, scene: Scene, held: Held): { act: string; strokes: string } {
  const action = wheel.action;
  if (held.from === "faulty") return { act: w("act.readAgain"), strokes: "" };
  if (action === null || held.kpa === undefined) return { act: w("act.set"), strokes: "" };
  if (action.do === "leave") return { act: w("act.leave"), strokes: "" };
  const by = showKpa(Math.abs(steppedKpa(held.kpa, scene.unit) - number.kpa), scene.unit);
  const unit = w(`unit.${scene.unit}`);
  const strokes = action.strokes === null ? "" : w("act.strokes", { n: Math.max(1, Math.round(action.strokes)) });
  return { act: action.do === "add" ? w("act.add", { by, unit }) : w("act.let_out", { by, unit }), strokes };
}

// widthWords tells the width that the answer is for; a measured one with its age.
export function widthWords(wheel: WheelAnswer, age: string): string {
  if (wheel.width_mm === null) return "";
  const mm = plain(Math.round(wheel.width_mm * 10) / 10);
  if (wheel.width_from === "predicted") return w("wheel.predicted", { mm });
  return age === "" ? w("wheel.measured", { mm }) : w("wheel.aged", { mm, age });
}
