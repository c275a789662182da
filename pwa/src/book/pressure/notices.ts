// Notices in words: each code has its own, with its values in the person's unit.

import { w } from "../../words/index.ts";
import { plain } from "../../words/number.ts";
import type { Notice, PressureAnswer } from "./answer.ts";
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
  "rim_edge_unknown", "at_floor", "over_limit_now", "no_computed_best", "all_soft", "tube_on_hookless", "wheel_leaves_ground",
  "none_big_enough", "front_raised_to_rear", "front_over_rear",
] as const;

// noticeViews words every notice; what holds for both wheels alike is said once.
export function noticeViews(answer: PressureAnswer, unit: PressureUnit): NoticeView[] {
  const out: NoticeView[] = [];
  for (const notice of answer.notices) {
    const text = words(notice, unit);
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

function words(notice: Notice, unit: PressureUnit): string {
  const plainCode = plainCodes.find((code) => code === notice.code);
  if (plainCode !== undefined) return w(`plainNotice.${plainCode}`);
  const values = new Values(notice, unit);
  switch (notice.code) {
    case "at_limit_ride": return w("notice.at_limit_ride", values.limit());
    case "at_limit_set": return w("notice.at_limit_set", values.limit());
    case "at_limit_warmest": return w("notice.at_limit_warmest", values.limit());
    case "held_unread": return w(`heldUnread.${values.missing()}`, { mark: values.pressure("mark_kpa", "down"), wants: values.pressure("wants_here_kpa", "near") });
    case "at_printed_minimum": return w("notice.at_printed_minimum", { min: values.pressure("min_kpa", "near") });
    case "ask_table_min": return w("notice.ask_table_min", { mm: plain(values.number("label_mm")), inner: plain(values.number("inner_mm")) });
    case "partly_soft": return w("notice.partly_soft", { percent: plain(Math.round(values.number("share") * 100)), p: values.pressure("softer_kpa", "near") });
    case "floor_above_ceiling": return values.tooSmall();
  }
  return notice.code;
}

const owners = ["tyre", "rim", "hookless", "table"] as const;
const unread = ["tyre", "rim", "both"] as const;

class Values {
  readonly #values: Readonly<Record<string, number | string | undefined>>;
  readonly #unit: PressureUnit;

  constructor({ values }: Notice, unit: PressureUnit) {
    this.#values = values;
    this.#unit = unit;
  }

  number(name: string): number {
    const value = this.#values[name];
    return typeof value === "number" ? value : 0;
  }

  pressure(name: string, rounding: "near" | "up" | "down"): string {
    return w("why.one", { p: showKpa(this.number(name), this.#unit, rounding), unit: w(`unit.${this.#unit}`) });
  }

  missing(): (typeof unread)[number] {
    return unread.find((each) => each === this.#values["missing"]) ?? "both";
  }

  limit(): { whose: string; limit: string } {
    const owner = owners.find((each) => each === this.#values["limit"]) ?? "tyre";
    return { whose: w(`whose.${owner}`), limit: this.pressure("mark_kpa", "near") };
  }

  tooSmall(): string {
    const { whose, limit } = this.limit();
    const floor = this.pressure("floor_needs_kpa", "up");
    const text = this.#values["floor_by"] === "printed_minimum" ? w("notice.minimum_above_ceiling", { floor, whose, ceiling: limit })
      : w("notice.floor_above_ceiling", { floor, whose, ceiling: limit });
    if (this.#values["label_mm"] === undefined) return text;
    return `${text} ${w("notice.bigger", { mm: plain(this.number("label_mm")), p: this.pressure("needs_mark_kpa", "up") })}`;
  }
}
