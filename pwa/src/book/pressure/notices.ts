// Notices in words: from the catalogue where it has them, with pressures in the person's unit.

import { w } from "../../words/index.ts";
import type { Notice, PressureAnswer, Side, WheelAnswer } from "./answer.ts";
import { type PressureUnit, showKpa } from "../value/quantity.ts";

export interface NoticeView {
  readonly key: string;
  readonly severity: Notice["severity"];
  readonly wheel: Notice["wheel"];
  readonly code: string;
  readonly text: string;
}

export const plainCodes = [
  "bead_differs", "not_for_hookless", "hookless_too_narrow", "outside_rim_table", "too_narrow", "too_wide", "narrow_care",
  "wide_care", "hookless_no_table", "impossible_width", "ask_max_tyre", "ask_max_rim", "ask_max_both", "flat_where_set",
  "rim_edge_unknown", "at_floor", "over_limit_now", "no_computed_best", "mostly_soft", "partly_soft",
  "front_raised_to_rear", "tube_on_hookless", "wheel_leaves_ground", "none_big_enough", "scales_win",
] as const;

// noticeViews words every notice; what holds for both wheels alike is said once.
export function noticeViews(answer: PressureAnswer, unit: PressureUnit, limitKpa: (side: Side) => number | null): NoticeView[] {
  const out: NoticeView[] = [];
  for (const notice of answer.notices) {
    const text = words(notice, answer, unit, limitKpa);
    const twin = out.findIndex((each) => each.code === notice.code && each.text === text && each.severity !== "stop");
    const earlier = out[twin];
    if (earlier !== undefined && earlier.wheel !== notice.wheel) {
      out[twin] = { ...earlier, wheel: "both", key: `${notice.code} both` };
    } else {
      out.push({ key: `${notice.code} ${notice.wheel}`, severity: notice.severity, wheel: notice.wheel, code: notice.code, text });
    }
  }
  return out;
}

function words(notice: Notice, answer: PressureAnswer, unit: PressureUnit, limitKpa: (side: Side) => number | null): string {
  const plain = plainCodes.find((code) => code === notice.code);
  if (plain !== undefined) return w(`plainNotice.${plain}`);
  if (notice.wheel === "both") return notice.text;
  const wheel = answer[notice.wheel];
  const whose = wheel.limited_by === "none" || wheel.limited_by === "floor" ? undefined : w(`whose.${wheel.limited_by}`);
  if (whose === undefined) return notice.text;
  if (notice.code === "floor_above_ceiling") return tooSmall(answer, notice.wheel, wheel, whose, unit);
  const mark = limitKpa(notice.wheel);
  if (mark === null) return notice.text;
  const limit = shown(mark, unit);
  switch (notice.code) {
    case "at_limit_ride": return w("notice.at_limit_ride", { whose, limit });
    case "at_limit_set": return w("notice.at_limit_set", { whose, limit });
    case "at_limit_warmest": return w("notice.at_limit_warmest", { whose, limit });
  }
  return notice.text;
}

function tooSmall(answer: PressureAnswer, side: Side, wheel: WheelAnswer, whose: string, unit: PressureUnit): string {
  const floor = shown(wheel.floor_kpa ?? 0, unit, "up");
  const ceiling = shown(wheel.ceiling_kpa ?? 0, unit, "down");
  const text = w("notice.floor_above_ceiling", { floor, whose, ceiling });
  const bigger = answer.bigger_tyre.find((each) => each.wheel === side);
  return bigger === undefined ? text : `${text} ${w("notice.bigger", { mm: bigger.label_mm, p: shown(bigger.recommended_kpa, unit, "up") })}`;
}

function shown(kpa: number, unit: PressureUnit, rounding: "near" | "up" | "down" = "near"): string {
  return w("why.one", { p: showKpa(kpa, unit, rounding), unit: w(`unit.${unit}`) });
}
