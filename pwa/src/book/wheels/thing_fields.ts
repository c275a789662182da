// What a person is asked about each thing on the Wheels screen: which fields, in which groups. Types and bounds are those of
// kinds.json.

export interface Group {
  readonly name: string; // its words: thing.group.<name>
  readonly fields: readonly string[];
}

const materials = { name: "materials", fields: ["rim_material", "spoke_material", "nipple_material", "hub_material"] };

// thingKinds are the kinds that the screen keeps, in the order it lists them.
export const thingKinds = ["bike", "wheel", "tyre", "person", "gauge", "pump"] as const;
export type ThingKind = (typeof thingKinds)[number];

export function isThing(kind: string): kind is ThingKind {
  return (thingKinds as readonly string[]).includes(kind);
}

// groups: the first one stands open, the others are folds.
export const groups: Readonly<Record<ThingKind, readonly Group[]>> = {
  bike: [
    { name: "bike", fields: ["name", "number", "rider", "front", "rear"] },
    { name: "frame", fields: ["brake", "use", "room_front_mm", "room_rear_mm", "least_label_mm", "speeds", "max_cog", "spacing", "mass_kg"] },
    { name: "packing", fields: ["pedals", "shifting", "derailleur", "seatpost", "cockpit", "frame_material", "bar_material"] },
    { name: "kit", fields: ["gauge", "pump"] },
    { name: "car", fields: ["spare", "place", "cleat"] },
    { name: "more", fields: ["note"] },
  ],
  wheel: [
    { name: "wheel", fields: ["name", "side", "tyre", "setup", "inner_mm", "profile"] },
    { name: "rim", fields: ["max_kpa", "table_min_label_mm", "table_max_label_mm", "table_max_kpa", "bead_seat_mm"] },
    { name: "disc", fields: ["brake", "rotor_mm", "rotor_mount", "rotor_thickness_mm", "rotor_min_mm"] },
    { name: "hub", fields: ["hub_width_mm", "axle_mm", "body", "speeds", "max_cog", "spacing", "spokes", "free_left_mm", "free_right_mm", "spoke_mm", "spoke_most_n"] },
    materials,
    { name: "fitting", fields: ["well_depth_mm", "well_width_mm", "flange_mm", "tape_layers", "tape_mm", "tape_day", "valve_width_mm", "valve_height_mm", "valve_day"] },
    { name: "more", fields: ["note"] },
  ],
  tyre: [
    { name: "tyre", fields: ["name", "label_mm", "measured_mm", "sidewall", "max_kpa", "hookless_ok"] },
    { name: "inside", fields: ["fitted", "direction", "sealant_ml", "sealant_day"] },
    { name: "bead", fields: ["bead_seat_mm", "min_kpa", "tubeless_ok", "bead", "bead_undersize_mm", "bead_mm"] },
    { name: "more", fields: ["note"] },
  ],
  person: [{ name: "person", fields: ["name", "number", "mass_kg"] }, { name: "more", fields: ["note"] }],
  gauge: [{ name: "gauge", fields: ["name", "error_kpa"] }, { name: "more", fields: ["note"] }],
  pump: [{ name: "pump", fields: ["name", "stroke_ml"] }, { name: "more", fields: ["note"] }],
};
