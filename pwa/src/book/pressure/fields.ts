// The typed fields of the Pressure screen: where each goes in the request and what it measures.

import type { Side } from "./answer.ts";
import type { Dimension } from "../value/quantity.ts";

export interface FieldSpec {
  readonly id: string;
  readonly path: string; // in the request and in the calculation's field table
  readonly dimension: Dimension;
  readonly unit: string; // what a bare number is in; "" for the person's pressure unit
  readonly to: string; // the request's unit
  readonly parts?: number; // how many of the typed unit make one of the request's, where both are bare numbers
}

const kilo = { dimension: "pressure", unit: "", to: "kpa" } as const;
const millimetre = { dimension: "length", unit: "mm", to: "mm" } as const;
const mass = { dimension: "mass", unit: "kg", to: "kg" } as const;
const celsius = { dimension: "temperature", unit: "c", to: "c" } as const;
const altitude = { dimension: "altitude", unit: "m", to: "m" } as const;
const bare = { dimension: "plain" } as const;

// Fields of the whole bike and the day.
export const dayFields: readonly FieldSpec[] = [
  { id: "rider", path: "rider_kg", ...mass },
  { id: "bike", path: "bike_kg", ...mass },
  { id: "share", path: "front_share", ...bare, unit: "%", to: "%", parts: 100 },
  { id: "load.front", path: "front_load_kg", ...mass },
  { id: "load.rear", path: "rear_load_kg", ...mass },
  { id: "set.c", path: "set.c", ...celsius },
  { id: "set.m", path: "set.m", ...altitude },
  { id: "ride.c", path: "ride.c", ...celsius },
  { id: "ride.m", path: "ride.m", ...altitude },
  { id: "warmest.c", path: "warmest_c", ...celsius },
  { id: "high.m", path: "along.*.m", ...altitude },
  { id: "high.c", path: "along.*.c", ...celsius },
  { id: "low.m", path: "along.*.m", ...altitude },
  { id: "low.c", path: "along.*.c", ...celsius },
  { id: "gaugeError", path: "gauge_error_kpa", ...kilo },
  { id: "now.front", path: "now.front_gauge_kpa", ...kilo },
  { id: "now.rear", path: "now.rear_gauge_kpa", ...kilo },
  { id: "pump", path: "now.pump_stroke_ml", ...bare, unit: "ml", to: "ml" },
];

// Fields of one wheel. The rear's own are asked only when it differs.
export function wheelFields(side: Side): readonly FieldSpec[] {
  const tyre = `${side}.tyre.`;
  const rim = `${side}.rim.`;
  return [
    { id: `${side}.label`, path: `${tyre}label_mm`, ...millimetre },
    { id: `${side}.measured`, path: `${tyre}measured_mm`, ...millimetre },
    { id: `${side}.tyreMax`, path: `${tyre}max_kpa`, ...kilo },
    { id: `${side}.tyreMin`, path: `${tyre}min_kpa`, ...kilo },
    { id: `${side}.inner`, path: `${rim}inner_mm`, ...millimetre },
    { id: `${side}.bead`, path: `${rim}bead_seat_mm`, ...millimetre },
    { id: `${side}.rimMax`, path: `${rim}max_kpa`, ...kilo },
    { id: `${side}.tableMin`, path: `${rim}table_min_label_mm`, ...millimetre },
    { id: `${side}.tableMax`, path: `${rim}table_max_label_mm`, ...millimetre },
    { id: `${side}.tableKpa`, path: `${rim}table_max_kpa`, ...kilo },
  ];
}

export const allFields: readonly FieldSpec[] = [...dayFields, ...wheelFields("front"), ...wheelFields("rear")];

// Fields of one stretch of ground.
export const stretchFields = {
  km: { id: "km", path: "ground.*.share", dimension: "distance", unit: "km", to: "km" },
  part: { id: "part", path: "ground.*.share", dimension: "plain", unit: "%", to: "%", parts: 100 },
  kmh: { id: "kmh", path: "ground.*.kmh", dimension: "speed", unit: "km/h", to: "km/h" },
  gd0: { id: "gd0", path: "ground.*.gd0", dimension: "plain", unit: "m3", to: "m3", parts: 1e6 },
} as const satisfies Record<string, FieldSpec>;

// lengthField is what a stretch's length is shown in.
export function lengthField(by: "km" | "share"): FieldSpec {
  return by === "share" ? stretchFields.part : stretchFields.km;
}

export const groundKinds = ["smooth", "patched", "chips", "setts", "rice", "pea", "walnut", "egg", "fist", "soft"] as const;
export type GroundKind = (typeof groundKinds)[number];
