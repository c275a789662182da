// Reads what a person types ("32 psi", "2,1 bar", "2.1") and writes quantities back in the unit they use. The rules are
// those of calc/unit; one table of cases in its testdata holds both to the same answers.

import { fixed, plain } from "../../words/number.ts";

export type Dimension = "pressure" | "mass" | "length" | "temperature" | "altitude" | "speed" | "distance" | "plain";
export type ParseFault = "empty" | "number" | "unit" | "separator";
export type Parsed = { readonly si: number } | { readonly fault: ParseFault };

interface Unit {
  readonly names: readonly string[];
  readonly scale: number; // SI = (typed + offset) * scale
  readonly offset?: number;
}

const kgPerPound = 0.45359237;
const pascalPerPsi = (kgPerPound * 9.80665) / 0.0254 ** 2;

const units: Readonly<Record<Dimension, readonly Unit[]>> = {
  pressure: [
    { names: ["bar"], scale: 1e5 },
    { names: ["psi", "lb/in2", "lbs"], scale: pascalPerPsi },
    { names: ["kpa"], scale: 1e3 },
  ],
  mass: [{ names: ["kg"], scale: 1 }, { names: ["g"], scale: 1e-3 }, { names: ["lb", "lbs"], scale: kgPerPound }],
  length: [{ names: ["mm"], scale: 1e-3 }, { names: ["cm"], scale: 1e-2 }, { names: ["in", '"'], scale: 0.0254 }],
  temperature: [
    { names: ["c", "°c", "°"], scale: 1, offset: 273.15 },
    { names: ["f", "°f"], scale: 5 / 9, offset: 459.67 },
  ],
  altitude: [{ names: ["m"], scale: 1 }, { names: ["ft"], scale: 0.3048 }],
  speed: [{ names: ["km/h", "kmh", "kph"], scale: 1 / 3.6 }, { names: ["mph"], scale: 1609.344 / 3600 }],
  distance: [{ names: ["km"], scale: 1e3 }, { names: ["mi"], scale: 1609.344 }, { names: ["m"], scale: 1 }],
  plain: [{ names: ["ml", "%", "m3"], scale: 1 }],
};

const maxDigits = 15;

// parse reads a typed quantity into SI; a text without a unit is in the fallback.
export function parse(text: string, dimension: Dimension, fallback: string): Parsed {
  const [, number = "", name = ""] = /^([0-9.,+\-−]*)(.*)$/s.exec(text.trim()) ?? [];
  if (number === "" && name === "") return { fault: "empty" };
  const value = parseNumber(number);
  if (typeof value === "string") return { fault: value };
  const unit = unitNamed(dimension, name.trim() || fallback);
  return unit === undefined ? { fault: "unit" } : { si: toSI(value, unit) };
}

export type Read = { readonly value: number } | { readonly fault: ParseFault };

const finest = 1e6; // parts of a unit that a conversion keeps: 2.05 bar is 205 kPa, not the double beside it

// readIn reads a typed quantity in the unit that it is wanted in: one conversion, none where it was typed in that unit.
export function readIn(text: string, dimension: Dimension, fallback: string, to: string): Read {
  const parsed = parse(text, dimension, fallback);
  return "fault" in parsed ? parsed : { value: Math.round(inUnit(parsed.si, dimension, to) * finest) / finest };
}

function parseNumber(text: string): number | ParseFault {
  const body = text.replace("−", "-").replace(/^-|^\+/, "");
  if ((body.match(/[.,]/g) ?? []).length > 1) return "separator";
  const digits = body.replace(/[.,]/, "");
  if (!/^\d+$/.test(digits) || digits.length > maxDigits) return "number";
  const value = Number(body.replace(",", "."));
  return /^[-−]/.test(text) ? -value : value;
}

function unitNamed(dimension: Dimension, name: string): Unit | undefined {
  return units[dimension].find((unit) => unit.names.includes(name.toLowerCase()));
}

function toSI(value: number, unit: Unit): number {
  return (value + (unit.offset ?? 0)) * unit.scale;
}

// inUnit reads an SI value in a unit of its dimension.
export function inUnit(si: number, dimension: Dimension, name: string): number {
  const unit = unitNamed(dimension, name);
  return unit === undefined ? si : si / unit.scale - (unit.offset ?? 0);
}

// convert carries a number from one unit of a dimension to another.
export function convert(value: number, dimension: Dimension, from: string, to: string): number {
  const unit = unitNamed(dimension, from);
  return unit === undefined || from === to ? value : inUnit(toSI(value, unit), dimension, to);
}

export const pressureUnits = ["bar", "psi", "kpa"] as const;
export type PressureUnit = (typeof pressureUnits)[number];

const decimals: Readonly<Record<PressureUnit, number>> = { bar: 2, psi: 1, kpa: 0 };
const perStep: Readonly<Record<PressureUnit, number>> = { bar: 100, psi: 2, kpa: 1 }; // steps in one of the unit: 0.01 bar, 0.5 psi, 1 kPa

export type Rounding = "near" | "down" | "up";

// stepsIn counts a pressure in the smallest steps that the unit is told in: the one rule of decimals.
function stepsIn(kpa: number, unit: PressureUnit, rounding: Rounding): number {
  const steps = inUnit(kpa * 1e3, "pressure", unit) * perStep[unit];
  const slack = 1e-6; // 500.0000001 is 500
  return rounding === "down" ? Math.floor(steps + slack) : rounding === "up" ? Math.ceil(steps - slack) : Math.round(steps);
}

// steppedKpa is the pressure that is told: what showKpa writes, in kPa.
export function steppedKpa(kpa: number, unit: PressureUnit, rounding: Rounding = "near"): number {
  const scale = units.pressure.find((each) => each.names.includes(unit))?.scale ?? 1;
  return Math.round((stepsIn(kpa, unit, rounding) / perStep[unit]) * scale * 1e3) / 1e6; // whole pascals and their thousandths
}

// showKpa is a pressure in the person's unit, rounded so that what is read is never past a limit it must keep.
export function showKpa(kpa: number, unit: PressureUnit, rounding: Rounding = "near"): string {
  return fixed(stepsIn(kpa, unit, rounding) / perStep[unit], decimals[unit]);
}

// coarseKpa writes a pressure for a range, where the last digit would say more than is known.
export function coarseKpa(kpa: number, unit: PressureUnit): string {
  return fixed(inUnit(kpa * 1e3, "pressure", unit), unit === "bar" ? 1 : 0);
}

// stepOf is one step of a pressure stepper, in the unit: half a usual gauge's division.
export function stepOf(unit: PressureUnit): number {
  return { bar: 0.05, psi: 1, kpa: 5 }[unit];
}

export function stepKpa(unit: PressureUnit): number {
  const one = units.pressure.find((each) => each.names.includes(unit));
  return (stepOf(unit) * (one?.scale ?? 0)) / 1000;
}

// typedKpa is a pressure as a person would type it.
export function typedKpa(kpa: number, unit: PressureUnit): string {
  return plain(Number(inUnit(kpa * 1e3, "pressure", unit).toFixed(unit === "bar" ? 2 : 1)));
}
