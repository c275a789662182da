// The things of the book in lines: what each is called, where it belongs, what is known of it; and the search over them.

import { type RecordState, valueOf } from "../../log/op/merge.ts";
import { facts, listed, w } from "../../words/index.ts";
import { plain } from "../../words/number.ts";
import { byName } from "../../words/order.ts";
import { ageOf } from "../value/age.ts";
import { kindWords } from "../value/kind_words.ts";
import type { Teller } from "../value/record_words.ts";
import { isIndoors } from "../checks/indoors.ts";
import { isThing, type ThingKind, thingKinds } from "./thing_fields.ts";
import { valueText } from "./measure_words.ts";
import { valueWords } from "../value/value_words.ts";

export interface ThingLine {
  readonly rec: string;
  readonly kind: ThingKind;
  readonly name: string;
  readonly facts: string; // "front of Ochre · 45 mm tyre · 160 mm rotor"
  readonly used: boolean; // on a bike, or on a wheel
  readonly retired: boolean;
  readonly sought: string; // what the search looks through
}

// thingLines lists all things by kind and name.
export function thingLines(states: readonly RecordState[], teller: Teller): readonly ThingLine[] {
  const lines = states.flatMap((state) => (isThing(state.kind) ? [lineOf(state, state.kind, teller)] : []));
  const place = (kind: ThingKind): number => thingKinds.indexOf(kind);
  return lines.sort((a, b) => place(a.kind) - place(b.kind) || byName(a.name, b.name) || (a.rec < b.rec ? -1 : 1));
}

function lineOf(state: RecordState, kind: ThingKind, teller: Teller): ThingLine {
  const named = valueOf(state, "name");
  const where = teller.placeOf(state.rec);
  const name = typeof named === "string" && named !== "" ? named : teller.nameOf(state.rec);
  const told = once(() => facts([name.includes(where) ? "" : where, ...factsOf(state, kind, teller)]));
  const sought = once(() => plainly(`${kindWords(kind)} ${name} ${where} ${told()} ${textOf(state, "spacing")} ${textOf(state, "note")}`));
  return {
    rec: state.rec, kind, name, used: where !== "", retired: valueOf(state, "retired") === true,
    get facts() { return told(); }, get sought() { return sought(); },
  };
}

// once works a text out when it is first asked for: of hundreds of lines only some are on the screen.
function once(make: () => string): () => string {
  let made: string | undefined;
  return () => (made ??= make());
}

function factsOf(state: RecordState, kind: ThingKind, teller: Teller): readonly string[] {
  const told = (field: string): string => {
    const value = valueOf(state, field);
    return value === undefined || value === null || value === "" ? "" : valueWords({ rec: state.rec, kind, field, value, device: state.fields[field]?.shown.device ?? "" }, teller);
  };
  const as = (field: string, words: (value: string) => string): string => (told(field) === "" ? "" : words(told(field)));
  const indoors = isIndoors(state) ? w("things.markedIndoors") : "";
  switch (kind) {
    case "bike": return [as("number", (n) => w("things.number", { n })), told("rider"), ...bikeTyres(state, teller), told("brake"), indoors];
    case "wheel": return [...tyreOf(state, teller).filter((words) => words !== textOf(state, "name")), as("inner_mm", (n) => w("things.inner", { n })), as("rotor_mm", (n) => w("things.rotor", { n })), told("setup"), indoors];
    case "tyre": return tyreFacts(state, teller.now).slice(1);
    case "person": return [as("number", (n) => w("things.number", { n })), told("mass_kg")];
    case "gauge": return [gaugeError(state, teller)];
    case "pump": return [as("stroke_ml", (n) => w("things.stroke", { n }))];
  }
}

function gaugeError(state: RecordState, { unit }: Teller): string {
  const kpa = valueOf(state, "error_kpa");
  return typeof kpa === "number" ? valueText("kpa", kpa, unit) : "";
}

function tyreOf(wheel: RecordState | undefined, teller: Teller): readonly string[] {
  return wheel === undefined ? [] : tyreFacts(teller.find(textOf(wheel, "tyre")), teller.now).filter((words) => words !== "");
}

// bikeTyres tells what is on the bike: once where both are alike.
function bikeTyres(bike: RecordState, teller: Teller): readonly string[] {
  const [front = "", rear = ""] = (["front", "rear"] as const).map((side) => tyreOf(teller.find(textOf(bike, side)), teller).slice(-2)).map(listed);
  return front === rear || rear === "" ? [front] : [front, w("things.rearTyre", { facts: rear })];
}

// tyreFacts tells a tyre's name, its printed width, and the measured one where somebody has measured.
function tyreFacts(tyre: RecordState | undefined, now: number): readonly string[] {
  if (tyre === undefined || tyre.erased || tyre.deleted) return [];
  const [label, measured, at] = [valueOf(tyre, "label_mm"), valueOf(tyre, "measured_mm"), valueOf(tyre, "measured_at")];
  return [
    textOf(tyre, "name"),
    typeof label === "number" ? w("things.tyre", { n: plain(label) }) : "",
    typeof measured !== "number" ? "" : typeof at !== "number" ? w("things.measured", { n: plain(measured) })
      : w("things.measuredAt", { n: plain(measured), age: ageOf(now - at) }),
  ];
}

function textOf(state: RecordState, field: string): string {
  const value = valueOf(state, field);
  return typeof value === "string" ? value : "";
}

// plainly takes off capitals and accents, so that "rüdi" is found by "RUDI".
function plainly(text: string): string {
  return text.normalize("NFD").replace(/\p{M}/gu, "").toLowerCase();
}

// foundIn gives the lines that hold every word of the query; a word may stand anywhere, a number only as a whole number's
// beginning ("4" finds 45, not 24).
export function foundIn(lines: readonly ThingLine[], query: string): readonly ThingLine[] {
  const words = plainly(query).split(/\s+/).filter((word) => word !== "");
  return lines.filter(({ sought }) => words.every((word) => holds(sought, word)));
}

function holds(sought: string, word: string): boolean {
  if (!/^\d/.test(word)) return sought.includes(word);
  const number = word.replace(",", ".");
  for (let at = sought.indexOf(number); at >= 0; at = sought.indexOf(number, at + 1)) {
    if (!/[\d.,]/.test(sought.charAt(at - 1))) return true;
  }
  return false;
}
