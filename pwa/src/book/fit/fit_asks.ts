// What the calculator is asked before and while a tyre is fitted, made of the records of the wheel and the tyre.

import type { Answers, Requests } from "../../contract/contract.ts";
import { fitFields } from "../../contract/fit_fields.ts";
import { seatFields } from "../../contract/seat_fields.ts";
import { type RecordState, valueOf } from "../../log/op/merge.ts";
import { chosen } from "../value/choice.ts";

export type SeatAnswer = Answers["seat"];
export type FitAnswer = Answers["fit"];
type SeatRequest = Requests["seat"];
export type FitRequest = Requests["fit"];

export const assumedBead = 622; // mm, as Pressure assumes it

// Field is one of a record: "wheel.inner_mm".
export type FieldId = `${"wheel" | "tyre"}.${string}`;

// Asking is a question, or what has to be known before it can be asked.
export type Asking<R> = { readonly request: R } | { readonly missing: readonly FieldId[] };

function numberOf(state: RecordState | undefined, field: string, bound: { readonly min: number; readonly max: number }): number | undefined {
  const value = valueOf(state, field);
  return typeof value === "number" && value >= bound.min && value <= bound.max ? value : undefined;
}

function given(name: string, value: number | undefined): Record<string, number> {
  return value === undefined ? {} : { [name]: value };
}

// seatAsking is the gate before the first step. A rim edge that nobody named is unknown; the way it is fitted must be said.
export function seatAsking(wheel: RecordState | undefined, tyre: RecordState | undefined, gauge?: RecordState): Asking<SeatRequest> {
  const label = numberOf(tyre, "label_mm", seatFields["tyre.label_mm"]);
  const inner = numberOf(wheel, "inner_mm", seatFields["rim.inner_mm"]);
  const setup = chosen(seatFields["tyre.setup"].choices, valueOf(wheel, "setup"));
  if (label === undefined || inner === undefined || setup === undefined) {
    return { missing: [...(label === undefined ? ["tyre.label_mm" as const] : []), ...(inner === undefined ? ["wheel.inner_mm" as const] : []), ...(setup === undefined ? ["wheel.setup" as const] : [])] };
  }
  const [own, rims] = [numberOf(tyre, "bead_seat_mm", seatFields["tyre.bead_seat_mm"]), numberOf(wheel, "bead_seat_mm", seatFields["rim.bead_seat_mm"])];
  return { request: {
    tyre: {
      label_mm: label, setup, hookless_ok: valueOf(tyre, "hookless_ok") === "yes", tubeless_ok: valueOf(tyre, "tubeless_ok") === "yes",
      ...given("max_kpa", numberOf(tyre, "max_kpa", seatFields["tyre.max_kpa"])), ...given("bead_seat_mm", own),
    },
    rim: {
      bead_seat_mm: rims ?? own ?? assumedBead, inner_mm: inner, profile: chosen(seatFields["rim.profile"].choices, valueOf(wheel, "profile")) ?? "unknown",
      ...given("max_kpa", numberOf(wheel, "max_kpa", seatFields["rim.max_kpa"])), ...tableOf(wheel),
    },
    ...given("gauge_error_kpa", numberOf(gauge, "error_kpa", seatFields.gauge_error_kpa)),
  } };
}

// tableOf is the rim's own table, without one that is the wrong way round: that is told where it is typed.
function tableOf(wheel: RecordState | undefined): Partial<SeatRequest["rim"]> {
  const [least, most] = [numberOf(wheel, "table_min_label_mm", seatFields["rim.table_min_label_mm"]), numberOf(wheel, "table_max_label_mm", seatFields["rim.table_max_label_mm"])];
  const wrong = least !== undefined && most !== undefined && least > most;
  return { ...given("table_min_label_mm", wrong ? undefined : least), ...given("table_max_label_mm", most), ...given("table_max_kpa", numberOf(wheel, "table_max_kpa", seatFields["rim.table_max_kpa"])) };
}

const ofWheel = ["tape_layers", "tape_mm", "valve_width_mm", "valve_height_mm"] as const;

// fitAsking is the question for the room to spare: the edge and the well must be measured, the rest counts as nothing.
export function fitAsking(wheel: RecordState | undefined, tyre: RecordState | undefined): Asking<FitRequest> {
  const well = numberOf(wheel, "well_depth_mm", fitFields.well_depth_mm);
  const flange = numberOf(wheel, "flange_mm", fitFields.flange_mm);
  if (well === undefined || flange === undefined) {
    return { missing: [...(flange === undefined ? ["wheel.flange_mm" as const] : []), ...(well === undefined ? ["wheel.well_depth_mm" as const] : [])] };
  }
  const [wide, bead] = [numberOf(wheel, "well_width_mm", fitFields.well_width_mm), numberOf(tyre, "bead_mm", fitFields.bead_mm)];
  return { request: {
    bead_seat_mm: numberOf(wheel, "bead_seat_mm", fitFields.bead_seat_mm) ?? numberOf(tyre, "bead_seat_mm", fitFields.bead_seat_mm) ?? assumedBead,
    well_depth_mm: well, flange_mm: flange, ...Object.assign({}, ...ofWheel.map((field) => given(field, numberOf(wheel, field, fitFields[field])))) as object,
    ...given("bead_undersize_mm", numberOf(tyre, "bead_undersize_mm", fitFields.bead_undersize_mm)),
    ...(wide !== undefined && bead !== undefined && { well_width_mm: wide, bead_mm: bead }), insert: valueOf(wheel, "setup") === "insert",
  } };
}
