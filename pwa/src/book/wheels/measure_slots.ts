// The fields of the form for each thing that can be measured.

import { w } from "../../words/index.ts";
import type { Side } from "../pressure/answer.ts";
import { fieldOf } from "../value/kinds.ts";
import type { ValueField, What } from "./measure.ts";
import type { PressureUnit } from "../value/quantity.ts";
import { rangeWords, readTyped, type TypedValue, unitWords } from "../value/typed_value.ts";

// Slot is one field of the form. Its type and bounds are those of a field of kinds.json.
export interface Slot {
  readonly id: SlotId;
  readonly kind: string;
  readonly field: string;
  readonly as?: ValueField; // it makes an entry of its own
  readonly side?: Side;
  readonly place?: string; // as entries keep it
  readonly most?: number; // less than kinds.json allows; our choice, to catch a slip
}

export type SlotId =
  | "place1" | "place2" | "place3" | "kpa" | "days" | "ml" | "inner" | "thickness" | "min" | "runout" | "front" | "rear"
  | "saddle" | "setback" | "reach" | "stack" | "bar" | "other" | "mine" | "theirs";

const built = (id: SlotId, place: string, as: "mm" | "degrees" = "mm"): Slot => ({ id, kind: "measure", field: as, as, place });
const runout: Slot = { id: "runout", kind: "measure", field: "mm", as: "mm", most: 20 };

const slots: Readonly<Record<What, readonly Slot[]>> = {
  width: [
    ...(["place1", "place2", "place3"] as const).map((id) => ({ id, kind: "tyre", field: "measured_mm" })),
    { id: "kpa", kind: "pressure_set", field: "kpa" }, { id: "days", kind: "measure", field: "days_fitted", most: 9999 },
  ],
  sealant: [{ id: "ml", kind: "tyre", field: "sealant_ml", as: "ml" }],
  inner: [{ id: "inner", kind: "wheel", field: "inner_mm", as: "mm" }],
  rotor_thickness: [{ id: "thickness", kind: "wheel", field: "rotor_thickness_mm", as: "mm" }, { id: "min", kind: "wheel", field: "rotor_min_mm" }],
  rotor_runout: [runout],
  rim_runout: [runout],
  load: [
    { id: "front", kind: "bike", field: "front_load_kg", as: "kg", side: "front" },
    { id: "rear", kind: "bike", field: "rear_load_kg", as: "kg", side: "rear" },
  ],
  room: [
    { id: "front", kind: "bike", field: "room_front_mm", as: "mm", side: "front" },
    { id: "rear", kind: "bike", field: "room_rear_mm", as: "mm", side: "rear" },
  ],
  as_built: [
    built("saddle", "saddle_height"), built("setback", "setback"), built("reach", "reach"), built("stack", "stack"),
    built("bar", "bar_angle", "degrees"), built("other", ""),
  ],
  // What gauges read; only the difference, which the entry keeps, may lie below zero.
  gauge_error: [{ id: "mine", kind: "pressure_set", field: "kpa" }, { id: "theirs", kind: "pressure_set", field: "kpa" }],
};

export function slotsOf(what: What): readonly Slot[] {
  return slots[what];
}

// readSlot reads what was typed into a slot.
export function readSlot(slot: Slot, text: string, unit: PressureUnit): TypedValue {
  const bare = slot.field === "degrees" ? text.replace(/\s*(°|deg)\s*$/i, "") : text;
  const read = readTyped(slot.kind, slot.field, bare, unit);
  if (slot.most === undefined || "fault" in read || typeof read.value !== "number" || read.value <= slot.most) return read;
  return { fault: w("fault.bounds", boundsOf(slot.most, slot, unit)) };
}

// slotRange says a slot's bounds before they are broken.
export function slotRange(slot: Slot, unit: PressureUnit): string {
  const { kind, field, most } = slot;
  return most === undefined ? rangeWords(kind, field, unit) : w("field.range", boundsOf(most, slot, unit));
}

function boundsOf(most: number, slot: Slot, unit: PressureUnit): { low: number; high: number; unit: string } {
  return { low: 0, high: most, unit: slotUnit(slot, unit) };
}

// slotUnit is the unit that stands beside a slot.
export function slotUnit({ kind, field }: Slot, unit: PressureUnit): string {
  if (field === "days_fitted") return w("recUnit.d");
  return field === "degrees" ? w("recUnit.deg") : unitWords(fieldOf(kind, field), unit);
}
