// The spokes of a wheel as they were heard: which sounded how, what the calculator is asked of them, and how they stood last time.

import type { Answers, Requests } from "../../contract/contract.ts";
import { lacingFields as fields } from "../../contract/lacing_fields.ts";
import { isObject } from "../pressure/answer.ts";
import { parse } from "../value/quantity.ts";
import { isList, type Json } from "../../log/op/json.ts";
import { type RecordState, valueOf } from "../../log/op/merge.ts";
import { w } from "../../words/index.ts";
import { plain } from "../../words/number.ts";

export const flanges = ["left", "right"] as const;
export type Flange = (typeof flanges)[number];

// Heard is one spoke: its side, its number from the valve on, and its pitch; null for one that is slack and gives no note.
export interface Heard {
  readonly side: Flange;
  readonly n: number;
  readonly hz: number | null;
}

export type Spot = Pick<Heard, "side" | "n">;

// SpokesDraft is what is typed and heard, kept until it is saved.
export interface SpokesDraft {
  readonly texts: Readonly<Record<string, string>>;
  readonly heard: readonly Heard[];
  readonly at: Spot;
}

export const noSpokes: SpokesDraft = { texts: {}, heard: [], at: { side: "left", n: 1 } };

export function readSpokesDraft(stored: unknown): SpokesDraft {
  if (!isObject(stored)) return noSpokes;
  const texts = isObject(stored["texts"]) ? Object.fromEntries(Object.entries(stored["texts"]).filter((pair): pair is [string, string] => typeof pair[1] === "string")) : {};
  const heard = readHeard(stored["heard"]);
  const at = spotOf(stored["at"]);
  return { texts, heard, at: at ?? noSpokes.at };
}

// readHeard reads spokes as they were kept; what is no spoke is left out.
export function readHeard(stored: unknown): readonly Heard[] {
  if (!isList(stored as Json)) return [];
  return (stored as readonly unknown[]).flatMap((each): Heard[] => {
    const spot = spotOf(each);
    const hz = isObject(each) ? each["hz"] : undefined;
    return spot === undefined || (hz !== null && typeof hz !== "number") ? [] : [{ ...spot, hz }];
  });
}

function spotOf(stored: unknown): Spot | undefined {
  if (!isObject(stored)) return undefined;
  const [side, n] = [flanges.find((each) => each === stored["side"]), stored["n"]];
  return side === undefined || typeof n !== "number" || !Number.isInteger(n) || n < 1 || n > 48 ? undefined : { side, n };
}

// Asked is one question about the wheel's build: the field of the record that knows it, its unit and its bounds.
export interface AskedOfWheel {
  readonly id: "count" | "left" | "right" | "mm" | "most";
  readonly field: string;
  readonly unit: "" | "mm" | "N";
  readonly min: number;
  readonly max: number;
}

const length = fields["left.length_mm"];
const diameter = fields["left.diameter_mm"];

export const askedOfWheel: readonly AskedOfWheel[] = [
  { id: "count", field: "spokes", unit: "", min: 8, max: 48 },
  { id: "left", field: "free_left_mm", unit: "mm", min: length.min, max: length.max },
  { id: "right", field: "free_right_mm", unit: "mm", min: length.min, max: length.max },
  { id: "mm", field: "spoke_mm", unit: "mm", min: diameter.min, max: diameter.max },
  { id: "most", field: "spoke_most_n", unit: "N", min: fields.most_n.min, max: fields.most_n.max },
];

// Build is what is known of a wheel's spokes. Without lengths and diameter the spokes are compared all the same.
export interface Build {
  readonly values: Readonly<Partial<Record<AskedOfWheel["id"], number>>>;
  readonly faults: Readonly<Partial<Record<AskedOfWheel["id"], string>>>;
  readonly steel: boolean; // as far as is known; the newtons are those of steel
}

// buildOf takes what is typed, else what the wheel's record knows.
export function buildOf(texts: SpokesDraft["texts"], wheel: RecordState | undefined): Build {
  const values: Partial<Record<AskedOfWheel["id"], number>> = {};
  const faults: Partial<Record<AskedOfWheel["id"], string>> = {};
  for (const asked of askedOfWheel) {
    const known = valueOf(wheel, asked.field);
    const text = texts[asked.id]?.trim();
    if (text === undefined) {
      if (typeof known === "number") values[asked.id] = known;
    } else if (text !== "") {
      const read = readNumber(text, asked);
      if (typeof read === "number") values[asked.id] = read;
      else faults[asked.id] = read.fault;
    }
  }
  const material = valueOf(wheel, "spoke_material") ?? "";
  return { values, faults, steel: material === "" || material === "steel" || material === "stainless" };
}

function readNumber(text: string, { id, unit, min, max }: AskedOfWheel): number | { readonly fault: string } {
  const parsed = unit === "mm" ? parse(text, "length", "mm") : parse(text, "plain", "ml");
  if ("fault" in parsed) return { fault: w("fault.number", { example: plain(id === "count" ? 28 : Math.round(min + (max - min) / 2)) }) };
  const value = Number((parsed.si * (unit === "mm" ? 1e3 : 1)).toPrecision(12));
  if (value < min || value > max) return { fault: rangeWords({ unit, min, max }) };
  return id === "count" && value % 2 !== 0 ? { fault: w("spokes.even") } : value;
}

// rangeWords says the bounds of a field.
export function rangeWords({ unit, min, max }: Pick<AskedOfWheel, "unit" | "min" | "max">): string {
  return w("field.range", { low: plain(min), high: plain(max), unit: unit === "" ? "" : unit === "mm" ? w("unit.mm") : w("recUnit.n") });
}

// readHz reads a typed pitch.
export function readHz(text: string): number | { readonly fault: string } {
  const { min, max } = fields["spokes.*.hz"];
  const parsed = parse(text.trim().replace(/\s*hz$/i, ""), "plain", "ml");
  if ("fault" in parsed) return { fault: w("fault.number", { example: "352.7" }) };
  return parsed.si < min || parsed.si > max ? { fault: hzRange() } : parsed.si;
}

// hzRange says which pitches are taken.
export function hzRange(): string {
  const { min, max } = fields["spokes.*.hz"];
  return w("field.range", { low: plain(min), high: plain(max), unit: w("spokes.hertz") });
}

// shape is what the calculator takes for a side whose spokes nobody measured: it shifts the newtons, which are then not shown, and not
// how the spokes stand to each other.
const shape = { length_mm: 280, diameter_mm: 2 };

export type Lacing = Answers["lacing"];

// lacingQuestion asks how evenly the spokes stand; undefined while none was heard.
export function lacingQuestion(heard: readonly Heard[], { values }: Build): Requests["lacing"] | undefined {
  if (heard.length === 0) return undefined;
  const side = (length_mm: number | undefined): Requests["lacing"]["left"] => ({ length_mm: length_mm ?? shape.length_mm, diameter_mm: values.mm ?? shape.diameter_mm });
  return {
    spokes: heard.map(({ side: at, hz }) => ({ side: at, hz })), left: side(values.left ?? values.right), right: side(values.right ?? values.left),
    ...(values.most !== undefined && { most_n: values.most }),
  };
}

// knowsNewtons: lengths and diameter are known, so the tension of a steel spoke can be named.
export function knowsNewtons({ values, steel }: Build): boolean {
  return steel && values.mm !== undefined && (values.left !== undefined || values.right !== undefined);
}

// perSide is how many spokes a side has.
export function perSide({ values }: Build): number {
  return Math.floor((values.count ?? 0) / 2);
}

// after is the next spoke that was not heard: on along the side, then the other side; the last one stays.
export function after(spot: Spot, heard: readonly Heard[], each: number): Spot {
  const order = flanges.flatMap((side) => Array.from({ length: each }, (_, i): Spot => ({ side, n: i + 1 })));
  const from = order.findIndex((one) => same(one, spot));
  const ahead = [...order.slice(from + 1), ...order.slice(0, from + 1)];
  return ahead.find((one) => !heard.some((known) => same(known, one))) ?? spot;
}

export function same(a: Spot, b: Spot): boolean {
  return a.side === b.side && a.n === b.n;
}

// withHeard puts a spoke's note in the place of an earlier one.
export function withHeard(heard: readonly Heard[], one: Heard): readonly Heard[] {
  return [...heard.filter((each) => !same(each, one)), one].sort((a, b) => flanges.indexOf(a.side) - flanges.indexOf(b.side) || a.n - b.n);
}

// lastSpokes is the newest measurement of a wheel's spokes that stands.
export function lastSpokes(entries: readonly RecordState[], wheel: string): { readonly entry: RecordState; readonly heard: readonly Heard[] } | undefined {
  const found = entries
    .filter((entry) => entry.kind === "measure" && !entry.deleted && !entry.erased && valueOf(entry, "of") === wheel && valueOf(entry, "what") === "spoke_tension")
    .sort((a, b) => String(valueOf(b, "day") ?? "").localeCompare(String(valueOf(a, "day") ?? "")) || b.newest - a.newest)[0];
  return found === undefined ? undefined : { entry: found, heard: readHeard(valueOf(found, "spokes")) };
}

// Change is by which share tension went up or down since last time: it goes with the square of the pitch, so no length is needed.
export function changeOf(one: Heard, before: readonly Heard[]): number | undefined {
  const then = before.find((each) => same(each, one));
  return then?.hz == null || one.hz === null ? undefined : (one.hz / then.hz) ** 2 - 1;
}

// sideChange is the mean change of a side's spokes that were heard both times.
export function sideChange(side: Flange, heard: readonly Heard[], before: readonly Heard[]): number | undefined {
  const changes = heard.filter((one) => one.side === side).flatMap((one) => changeOf(one, before) ?? []);
  return changes.length === 0 ? undefined : changes.reduce((sum, by) => sum + by, 0) / changes.length;
}
