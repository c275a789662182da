// One cell of a list that comes in: its value, or what is wrong with it.

import type { Json } from "../../../log/op/json.ts";
import { either, w } from "../../../words/index.ts";
import { unguard } from "./csv.ts";
import type { KindField } from "../../value/kinds.ts";
import { type Column, rangeWords } from "./lists.ts";
import { type Names, short } from "./lists_names.ts";

export type Cell = { readonly value: Json } | { readonly fault: string };

export const notKnown = "-"; // clears a value: an empty cell leaves it

// readCell reads a cell that is not empty.
export function readCell(cell: string, { spec }: Column, names: Names): Cell {
  const text = unguard(cell);
  if (text.includes("\0")) return { fault: w("listFault.zero") };
  // A text may be a dash with room around it; one that is only a dash goes out with an apostrophe before it.
  if ((spec.type === "text" ? cell : cell.trim()) === notKnown) return { value: null };
  switch (spec.type) {
    case "text": return readText(text, spec);
    case "number": return readNumber(text.trim(), spec);
    case "flag": return readFlag(text.trim());
    case "choice": return readChoice(text.trim(), spec);
    case "day": return readDay(text.trim());
    case "time": return readTime(text.trim());
    case "ref": return readRef(text, spec, names);
    default: return { fault: w("listFault.text", { text: short(text) }) };
  }
}

function readText(text: string, { max = 0 }: KindField): Cell {
  const letters = text.length <= max ? text.length : [...text].length;
  return letters <= max ? { value: text } : { fault: w("listFault.long", { n: letters, max }) };
}

const number = /^[+-]?(\d{1,15}([.,]\d{0,20})?|[.,]\d{1,20})(e[+-]?\d{1,3})?$/i;

function readNumber(text: string, spec: KindField): Cell {
  const plain = text.replace("−", "-");
  if (!number.test(plain)) return { fault: w("listFault.number", { text: short(text) }) };
  const value = Number(plain.replace(",", "."));
  if (value > (spec.max ?? Infinity)) return { fault: w("listFault.much", { text: short(text), range: rangeWords(spec) }) };
  if (value < (spec.min ?? -Infinity)) return { fault: w("listFault.little", { text: short(text), range: rangeWords(spec) }) };
  return { value: value === 0 ? 0 : value };
}

const flags: ReadonlyMap<string, boolean> = new Map([["yes", true], ["no", false], ["true", true], ["false", false], ["1", true], ["0", false]]);

function readFlag(text: string): Cell {
  const value = flags.get(text.toLowerCase());
  return value === undefined ? { fault: w("listFault.flag", { text: short(text) }) } : { value };
}

function readChoice(text: string, { options = [] }: KindField): Cell {
  const value = options.find((option) => option === text.toLowerCase());
  return value === undefined ? { fault: w("listFault.choice", { text: short(text), options: either(options) }) } : { value };
}

function readDay(text: string): Cell {
  return /^\d{4}-\d\d-\d\d$/.test(text) && isDate(text) ? { value: text } : { fault: w("listFault.day", { text: short(text) }) };
}

const moment = /^\d{4}-\d\d-\d\d(T\d\d:\d\d(:\d\d(\.\d{1,3})?)?Z)?$/;

function readTime(text: string): Cell {
  const at = moment.test(text) && isDate(text.slice(0, 10)) ? Date.parse(text) : NaN;
  return Number.isNaN(at) ? { fault: w("listFault.time", { text: short(text) }) } : { value: at };
}

// isDate: a browser may take the 31st of June for the 1st of July.
function isDate(day: string): boolean {
  const at = Date.parse(day);
  return !Number.isNaN(at) && new Date(at).toISOString().startsWith(day);
}

function readRef(text: string, { kinds = [] }: KindField, names: Names): Cell {
  const found = names.read(text, kinds[0] ?? "");
  return "rec" in found ? { value: found.rec } : found;
}
