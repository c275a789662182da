// The reasons behind an answer, a page for each wheel: its curve, and where its numbers come from.

import { type Side, sides } from "./answer.ts";
import { type CurveView, curveView } from "./chart_view.ts";
import type { Kept } from "./kept.ts";
import { type NoticeView, noticeViews } from "./notices.ts";
import { sceneOf, underReasons } from "./screen_view.ts";
import type { PressureUnit } from "../value/quantity.ts";
import { type Row, whyRows } from "./why_view.ts";

export interface Answered {
  readonly kept: Kept;
  readonly unit: PressureUnit;
  readonly veiled: boolean; // what the rider weighs is not for this phone to show
}

// WhyView is one wheel's page of reasons.
export interface WhyView {
  readonly side: Side;
  readonly curve: CurveView | undefined;
  readonly rows: readonly Row[];
  readonly remark: string;
}

// The same answer in the same unit gives the same views, also the same objects, so that curves need not be drawn again.
const drawn = new WeakMap<Kept, { readonly of: Answered; readonly views: readonly WhyView[] }>();

export function whyViews(of: Answered): readonly WhyView[] {
  const { kept, unit, veiled } = of;
  const before = drawn.get(kept);
  if (before?.of.unit === unit && before.of.veiled === veiled) return before.views;
  const { question, answer } = kept;
  const [scene, notices] = [sceneOf(question, unit), noticeViews(answer, unit)];
  const views = sides.map((side) => ({
    side, curve: curveView(side, answer[side], scene), rows: whyRows(answer[side], { side, question, unit, veiled }), remark: remarkOf(side, notices),
  }));
  drawn.set(kept, { of, views });
  return views;
}

function remarkOf(side: Side, notices: readonly NoticeView[]): string {
  return notices.find((each) => each.code === underReasons && (each.wheel === side || each.wheel === "both"))?.text ?? "";
}
