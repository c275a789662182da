// The answer of the pressure calculation, as it arrives.

export type Side = "front" | "rear";
export const sides: readonly Side[] = ["front", "rear"];

export type Pair = readonly [number, number];

export interface WheelAnswer {
  readonly custom_kpa: number | null; // usual practice
  readonly want_kpa: number | null;
  readonly p0_kpa: number | null; // recommended before the personal shift and firmness
  readonly optimum_kpa: number | null;
  readonly good_kpa: Pair | null;
  readonly recommended_kpa: number | null;
  readonly set_kpa: number | null;
  readonly gauge_kpa: number | null;
  readonly here_gauge_kpa: number | null; // what the gauge should show where one stands
  readonly at_ride_kpa: number | null;
  readonly floor_kpa: number | null;
  readonly ceiling_kpa: number | null;
  readonly limited_by: "none" | "tyre" | "rim" | "hookless" | "table" | "unread" | "floor" | "printed_minimum";
  readonly likely_kpa: Pair | null;
  readonly width_mm: number | null;
  readonly width_from: "measured" | "predicted";
  readonly predicted_mm: number | null;
  readonly squash: number | null;
  readonly load_n: number;
  readonly cost_w: number | null;
  readonly loss_w: { readonly casing: number; readonly roughness: number; readonly total: number } | null;
  readonly light_share: number | null;
  readonly frame_ms2: number | null;
  readonly action: { readonly do: "leave" | "let_out" | "add"; readonly by_kpa: number; readonly strokes: number | null } | null;
  readonly curve: readonly { readonly kpa: number; readonly casing_w: number; readonly roughness_w: number }[];
}

export interface Notice {
  readonly code: string;
  readonly severity: "stop" | "care" | "info";
  readonly wheel: Side | "both";
  readonly values: Readonly<Record<string, number | string>>; // numbers with the unit in their name, and keys
}

export interface PressureAnswer {
  readonly front: WheelAnswer;
  readonly rear: WheelAnswer;
  readonly notices: readonly Notice[];
  readonly bigger_tyre: readonly { readonly wheel: Side; readonly label_mm: number; readonly recommended_kpa: number; readonly needs_mark_kpa: number }[];
}

// isAnswer tells an answer of this shape from anything else that a store may hold.
export function isAnswer(value: unknown): value is PressureAnswer {
  return isObject(value) && isWheel(value["front"]) && isWheel(value["rear"]) &&
    Array.isArray(value["notices"]) && Array.isArray(value["bigger_tyre"]);
}

function isWheel(value: unknown): boolean {
  return isObject(value) && "here_gauge_kpa" in value && Array.isArray(value["curve"]);
}

export function isObject(value: unknown): value is Record<string, unknown> {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}
