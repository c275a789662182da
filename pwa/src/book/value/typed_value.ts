// What is typed into a record's field, as the value that the field keeps, and back.

import type { Json } from "../../log/op/json.ts";
import { w } from "../../words/index.ts";
import { plain } from "../../words/number.ts";
import { fieldOf, type KindField } from "./kinds.ts";
import { type Dimension, inUnit, parse, type PressureUnit, typedKpa } from "./quantity.ts";

// Measured tells how a number of kinds.json is typed: as which quantity, and how many of its units are one in SI.
interface Measured {
  readonly dimension: Dimension;
  readonly perSI: number;
  readonly name: string; // for a bare number
}

const measured: Readonly<Record<string, Measured>> = {
  mm: { dimension: "length", perSI: 1e3, name: "mm" },
  cm: { dimension: "length", perSI: 1e2, name: "cm" },
  kg: { dimension: "mass", perSI: 1, name: "kg" },
  ml: { dimension: "plain", perSI: 1, name: "ml" },
};

const bare: Measured = { dimension: "plain", perSI: 1, name: "ml" };
const whole = ["speeds", "max_cog", "spokes", "tape_layers"];

export type TypedValue = { readonly value: Json } | { readonly fault: string };

// unitWords is the unit that stands beside the field; "" for none.
export function unitWords(spec: KindField | undefined, unit: PressureUnit): string {
  switch (spec?.unit) {
    case "kPa": return w(`unit.${unit}`);
    case "mm": return w("unit.mm");
    case "cm": return w("recUnit.cm");
    case "kg": return w("unit.kg");
    case "ml": return w("unit.ml");
    case "N": return w("recUnit.n");
    default: return "";
  }
}

// typedText is a value as a person would type it; "" where nothing is known.
export function typedText(kind: string, field: string, value: Json | undefined, unit: PressureUnit): string {
  if (typeof value === "number") return fieldOf(kind, field)?.unit === "kPa" ? typedKpa(value, unit) : plain(value);
  return typeof value === "string" ? value : "";
}

// readTyped reads a text. An empty one takes the value away: it is not known.
export function readTyped(kind: string, field: string, text: string, unit: PressureUnit): TypedValue {
  const spec = fieldOf(kind, field);
  const trimmed = text.trim();
  if (trimmed === "") return { value: null };
  if (spec?.type === "number") return readNumber(spec, field, trimmed, unit);
  if (spec?.type === "day") return /^\d{4}-\d\d-\d\d$/.test(trimmed) ? { value: trimmed } : { fault: w("fault.day") };
  const most = spec?.max ?? Infinity;
  return [...trimmed].length > most ? { fault: w("fault.long", { n: most }) } : { value: trimmed };
}

function readNumber(spec: KindField, field: string, text: string, unit: PressureUnit): TypedValue {
  const how = spec.unit === "kPa" ? { dimension: "pressure" as const, perSI: 1e-3, name: unit } : measured[spec.unit ?? ""] ?? bare;
  const parsed = parse(text, how.dimension, how.name);
  if ("fault" in parsed) return { fault: faultWords(parsed.fault, spec, unit) };
  const value = Number((parsed.si * how.perSI).toPrecision(12));
  const { min = -Infinity, max = Infinity } = spec;
  if (value < min || value > max) return { fault: w("fault.bounds", rangeIn(spec, unit)) };
  if (whole.includes(field) && !Number.isInteger(value)) return { fault: w("fault.whole") };
  return { value };
}

function faultWords(fault: "empty" | "number" | "unit" | "separator", spec: KindField, unit: PressureUnit): string {
  const { min = 0, max = 100 } = spec;
  if (fault === "separator") return w("fault.separator");
  if (fault === "unit") return w("fault.unit", { unit: unitWords(spec, unit) || w("fault.noUnit") });
  return w("fault.number", { example: inWords(Math.round(min + (max - min) / 4), spec, unit, Math.round) });
}

// rangeWords says the bounds before they are broken; "" for a field without any.
export function rangeWords(kind: string, field: string, unit: PressureUnit): string {
  const spec = fieldOf(kind, field);
  if (spec?.type !== "number" || spec.min === undefined || spec.max === undefined) return "";
  return w("field.range", rangeIn(spec, unit));
}

// Bounds are rounded inwards, so that what is promised is also accepted.
function rangeIn(spec: KindField, unit: PressureUnit): { low: string; high: string; unit: string } {
  const { min = 0, max = 0 } = spec;
  return { low: inWords(min, spec, unit, Math.ceil), high: inWords(max, spec, unit, Math.floor), unit: unitWords(spec, unit) };
}

function inWords(value: number, spec: KindField, unit: PressureUnit, round: (x: number) => number): string {
  const shown = spec.unit === "kPa" ? inUnit(value * 1e3, "pressure", unit) : value;
  return plain(round(Number((shown * 100).toFixed(4))) / 100);
}
