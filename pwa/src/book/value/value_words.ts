// A field's value in words: numbers in the person's units, references by name, choices and flags from the catalogue.
// Whatever does not fit its field, or that only a newer app knows, is shown as it stands.

import { isList, type Json } from "../../log/op/json.ts";
import type { RecordState } from "../../log/op/merge.ts";
import { type Key, listed, w } from "../../words/index.ts";
import { fixed, plain } from "../../words/number.ts";
import { optionWords } from "./kind_words.ts";
import { fieldOf, type KindField } from "./kinds.ts";
import { inUnit, type PressureUnit, showKpa } from "./quantity.ts";
import { dayWords, whenWords } from "./when.ts";

// Teller is what the words depend on besides the value.
export interface Teller {
  readonly unit: PressureUnit;
  readonly now: number;
  readonly me: string; // the person who holds this phone, "" when nobody said
  readonly device: string; // this phone
  find(rec: string): RecordState | undefined;
  nameOf(rec: string): string; // without its kind
  placeOf(rec: string): string; // where a part belongs, "" where that is not known
}

export interface Told {
  readonly rec: string;
  readonly kind: string;
  readonly field: string;
  readonly value: Json;
  readonly device?: string; // the phone that set the value
}

const cut = 160; // characters of a text that are enough to know it by

// valueWords tells a value. Exactly says all of it, where two values would look the same otherwise.
export function valueWords(told: Told, teller: Teller, exactly = false): string {
  const words = fullWords(told, teller, exactly);
  return exactly || words.length <= cut ? words : `${words.slice(0, cut)}…`;
}

function fullWords(told: Told, teller: Teller, exactly: boolean): string {
  const { kind, field, value } = told;
  if (value === null || value === "") return w("recValue.none");
  if (field === "deleted" && typeof value === "boolean") return w(value ? "recValue.yes" : "recValue.no");
  if (isVeiled(told, teller)) return typeof value === "number" ? weightWords(value) : w("recValue.kept");
  return asSpecified(value, field, fieldOf(kind, field), teller, exactly) ?? asItStands(value);
}

function asItStands(value: Json): string {
  return typeof value === "string" ? value : typeof value === "number" ? plain(value) : JSON.stringify(value);
}

// asSpecified is undefined for a value that is not of the field's type.
function asSpecified(value: Json, field: string, spec: KindField | undefined, teller: Teller, exactly: boolean): string | undefined {
  switch (spec?.type) {
    case "number": return typeof value === "number" ? numberWords(value, field, spec.unit ?? "", teller.unit, exactly) : undefined;
    case "time": return typeof value === "number" ? whenWords(value, teller.now) : undefined;
    case "flag": return typeof value === "boolean" ? w(value ? "recValue.yes" : "recValue.no") : undefined;
    case "choice": return typeof value === "string" ? optionWords(field, value) : undefined;
    case "day": return typeof value === "string" ? dayWords(value, teller.now) : undefined;
    case "blob": return typeof value === "string" ? w("recValue.photo") : undefined;
    case "ref": return typeof value === "string" ? refWords(value, teller, exactly) : undefined;
    case "list": return isList(value) && spec.of?.type === "ref" ? listed(value.map((each) => asSpecified(each, field, spec.of, teller, exactly) ?? asItStands(each))) : undefined;
    default: return undefined;
  }
}

function refWords(rec: string, teller: Teller, exactly: boolean): string {
  const name = teller.nameOf(rec);
  return exactly ? w("recValue.marked", { name, mark: rec.slice(0, 4) }) : name;
}

// The units of kinds.json that stand behind a number as they are.
const units: Readonly<Record<string, Key>> = {
  kg: "unit.kg", mm: "unit.mm", ml: "unit.ml", km: "unit.km", m: "unit.m", C: "unit.c",
  cm: "recUnit.cm", h: "recUnit.h", d: "recUnit.d", px: "recUnit.px", N: "recUnit.n",
};

const shares = ["front_share", "shift"]; // kept as fractions, read in percent

export function knowsUnit(unit: string): boolean {
  return unit === "" || unit === "kPa" || unit === "deg" || Object.hasOwn(units, unit);
}

function numberWords(value: number, field: string, unit: string, pressure: PressureUnit, exactly: boolean): string {
  const unitKey = units[unit];
  if (unit === "kPa") {
    const n = exactly ? fixed(inUnit(value * 1e3, "pressure", pressure), 4) : showKpa(value, pressure);
    return w("recValue.with", { n, unit: w(`unit.${pressure}`) });
  }
  if (unit === "deg") return w("recValue.degrees", { n: value });
  if (field === "clock") return w("recValue.clock", { n: value });
  if (field === "firmness") return firmnessWords(value);
  if (shares.includes(field)) return w("recValue.percent", { n: plain(Number((value * 100).toFixed(2))) });
  return unitKey === undefined ? plain(value) : w("recValue.with", { n: plain(value), unit: w(unitKey as "unit.mm") });
}

function firmnessWords(steps: number): string {
  const n = Math.abs(steps);
  return steps === 0 ? w("firm.none") : steps < 0 ? w("firm.softer", { n }) : w("firm.firmer", { n });
}

// isVeiled: what a person weighs is told in full only on their own phone and on the one where it was typed.
export function isVeiled({ rec, kind, field, device }: Pick<Told, "rec" | "kind" | "field" | "device">, teller: Pick<Teller, "me" | "device">): boolean {
  if (kind !== "person" || field !== "mass_kg") return false;
  const own = teller.me !== "" && rec === teller.me;
  return !own && (teller.device === "" || device !== teller.device);
}

const middleFrom = 65; // kg as they ride; our choice
const heavyFrom = 85;

export function weightWords(kg: number): string {
  return w(`recMass.${kg < middleFrom ? "light" : kg < heavyFrom ? "middle" : "heavy"}`);
}
