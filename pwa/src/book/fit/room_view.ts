// How a tyre goes on, in words: the grade on the face, the millimetres behind "Why".

import { w } from "../../words/index.ts";
import { fixed } from "../../words/number.ts";
import type { FitAnswer } from "./fit_asks.ts";

export interface RoomView {
  readonly grade: FitAnswer["goes_on"];
  readonly title: string;
  readonly text: string;
  readonly why: readonly string[];
}

export function roomView(answer: FitAnswer): RoomView {
  const { finish_at_valve, start_at_valve } = answer.free_arc_mm;
  const cost = (key: "fit.tapeCosts" | "fit.undersizeCosts" | "fit.secondCosts", mm: number): readonly string[] => (mm > 0 ? [w(key, { mm: fixed(mm, 1) })] : []);
  return {
    grade: answer.goes_on, title: w(`fit.grade.${answer.goes_on}`), text: w(`fit.gradeText.${answer.goes_on}`),
    why: [
      w("fit.spare", { mm: fixed(answer.slack_mm, 1) }), w("fit.need", { mm: fixed(answer.need_mm, 1) }), w("fit.valveCosts", { mm: fixed(answer.valve_costs_mm, 1) }),
      w("fit.finishArc", { mm: fixed(finish_at_valve, 0) }), w("fit.startArc", { mm: fixed(start_at_valve, 0) }),
      ...cost("fit.tapeCosts", answer.each_tape_layer_costs_mm), ...cost("fit.undersizeCosts", answer.undersize_costs_mm), ...cost("fit.secondCosts", answer.second_bead_costs_mm),
    ],
  };
}
