// One typed field, ready to be shown: its label, unit, range, what was typed and what is wrong with it.

import { type Key, w } from "../../words/index.ts";
import { fixed, plain } from "../../words/number.ts";
import { type Side, sides } from "./answer.ts";
import { type FieldSpec } from "./fields.ts";
import { inUnit, convert, type PressureUnit, stepOf } from "../value/quantity.ts";
import type { Fault } from "./request.ts";
import type { Bound, Tables } from "./tables.ts";

export interface FieldView {
  readonly id: string;
  readonly label: string;
  readonly spoken: string; // the label with its side, for those who do not see the heading above
  readonly text: string;
  readonly unit: string;
  readonly range: string;
  readonly fault: string;
  readonly signed: boolean; // needs a keyboard with a minus
  readonly step: number; // of a stepper; 0 for none
}

const units = { bar: "unit.bar", psi: "unit.psi", kpa: "unit.kpa", kg: "unit.kg", mm: "unit.mm", c: "unit.c", m: "unit.m", km: "unit.km", "km/h": "unit.km/h", "%": "unit.%", ml: "unit.ml", m3: "unit.m3" } as const satisfies Record<string, Key>;

type UnitName = keyof typeof units;

const labels = {
  rider: "field.rider", bike: "field.bike", share: "field.share", "load.front": "field.load.front", "load.rear": "field.load.rear",
  "set.c": "field.set.c", "set.m": "field.set.m", "ride.c": "field.ride.c", "ride.m": "field.ride.m", "warmest.c": "field.warmest.c",
  "high.m": "field.high.m", "high.c": "field.high.c", "low.m": "field.low.m", "low.c": "field.low.c",
  gaugeError: "field.gaugeError", "now.front": "field.now.front", "now.rear": "field.now.rear", pump: "field.pump",
  label: "field.label", measured: "field.measured", tyreMax: "field.tyreMax", tyreMin: "field.tyreMin", inner: "field.inner",
  bead: "field.bead", rimMax: "field.rimMax", tableMin: "field.tableMin", tableMax: "field.tableMax", tableKpa: "field.tableKpa",
  km: "field.km", kmh: "field.kmh", gd0: "field.gd0",
} as const satisfies Record<string, Key>;

const hints: Readonly<Record<string, Key>> = {
  bike: "hint.bike", inner: "hint.inner", share: "hint.share", bead: "hint.bead", "ride.c": "hint.ride", "ride.m": "hint.ride",
};

// nameOf takes the side off a wheel's field.
function nameOf(id: string): string {
  const side = sides.find((each) => id.startsWith(`${each}.`));
  return side === undefined ? id : id.slice(side.length + 1);
}

// labelOf is what a field is called on the screen, also for a stretch's ("ground.<id>.km").
export function labelOf(id: string): string {
  const name = id.startsWith("ground.") ? id.slice(id.lastIndexOf(".") + 1) : nameOf(id);
  return name in labels ? w(labels[name as keyof typeof labels]) : id;
}

function limit(value: number, spec: FieldSpec, unit: UnitName): number {
  return convert(value * (spec.parts ?? 1), spec.dimension, spec.to, unit);
}

// rangeOf is a bound in the field's unit, rounded inwards so that what is promised is also accepted.
function rangeOf(bound: Bound, spec: FieldSpec, unit: UnitName): { low: string; high: string; unit: string } {
  const round = (x: number, way: (y: number) => number): string => plain(way(Number((x * 100).toFixed(4))) / 100);
  return { low: round(limit(bound.min, spec, unit), Math.ceil), high: round(limit(bound.max, spec, unit), Math.floor), unit: w(units[unit]) };
}

export function fieldView(spec: FieldSpec, id: string, text: string, fault: Fault | undefined, pressureUnit: PressureUnit, tables: Tables, of: { stepper?: boolean; sided?: boolean; note?: string } = {}): FieldView {
  const unit = (spec.unit || pressureUnit) as UnitName;
  const label = labelOf(id);
  const side: Side | undefined = of.sided === true ? sides.find((each) => id.startsWith(`${each}.`)) : undefined;
  const bound = tables.bounds.get(spec.path);
  const hint = hints[nameOf(id)];
  const range = bound === undefined ? "" : w("field.range", rangeOf(bound, spec, unit));
  return {
    id, label, spoken: side === undefined ? label : w("field.sided", { side: w(`side.${side}`), label }), text,
    unit: w(units[unit]), range: of.note || (hint === undefined ? range : catalogueHint(hint)),
    fault: fault === undefined ? "" : faultText(fault, spec, unit, bound), signed: (bound?.min ?? 0) < 0,
    step: of.stepper === true ? stepOf(pressureUnit) : 0,
  };
}

function catalogueHint(key: Key): string {
  return w(key as "hint.bike");
}

function faultText(fault: Fault, spec: FieldSpec, unit: UnitName, bound: Bound | undefined): string {
  const name = w(units[unit]);
  switch (fault.why) {
    case "bounds": return fault.bound === undefined ? "" : w("fault.bounds", rangeOf(fault.bound, spec, unit));
    case "number": return w("fault.number", { example: exampleOf(spec, unit, bound) });
    case "unit": return w("fault.unit", { unit: name });
    case "separator": return w("fault.separator");
    case "part": return w("fault.part");
    case "scales": return fault.bound === undefined ? "" : w("fault.scales", rangeOf(fault.bound, spec, unit));
    case "measure": return w("fault.measure");
    case "missing": return w("fault.missing");
    case "empty": return w("fault.empty");
  }
}

// exampleOf is a number of the right size: what is usual, kept inside the bounds.
function exampleOf(spec: FieldSpec, unit: UnitName, bound: Bound | undefined): string {
  if (spec.dimension === "pressure") return fixed(inUnit(215e3, "pressure", unit), unit === "kpa" ? 0 : 1);
  return bound === undefined ? "20" : plain(Math.round(limit(bound.min + (bound.max - bound.min) / 4, spec, unit)));
}
