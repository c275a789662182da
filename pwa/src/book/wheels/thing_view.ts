// One thing of the book as a form: its fields in groups, each with what is known, what may be typed, and "don't know".

import { type RecordState, valueOf } from "../../log/op/merge.ts";
import { w } from "../../words/index.ts";
import { byName } from "../../words/order.ts";
import { fieldWords, optionWords } from "../value/kind_words.ts";
import { fieldOf } from "../value/kinds.ts";
import type { PressureUnit } from "../value/quantity.ts";
import type { Teller } from "../value/record_words.ts";
import { rangeWords, typedText, unitWords } from "../value/typed_value.ts";
import { isVeiled, weightWords } from "../value/value_words.ts";

export interface Option {
  readonly value: string;
  readonly label: string;
}

// Asked is one question of the form; id is "<kind>.<field>".
export type Asked =
  | { readonly as: "typed"; readonly id: string; readonly label: string; readonly text: string; readonly unit: string; readonly range: string | null; readonly fault: string; readonly signed: boolean }
  | { readonly as: "day" | "note"; readonly id: string; readonly label: string; readonly text: string; readonly fault: string }
  | { readonly as: "choice" | "picker"; readonly id: string; readonly label: string; readonly options: readonly Option[]; readonly value: string };

// Typing is what was typed and not saved, by id, and why.
export interface Typing {
  readonly texts: ReadonlyMap<string, string>;
  readonly faults: ReadonlyMap<string, string>;
}

const most = 4; // options that stand side by side; more are a list

// askedOf makes the question for one field. The state is what the book knows of the thing; undefined for a new one.
export function askedOf(kind: string, field: string, state: RecordState | undefined, typing: Typing, teller: Teller, things: readonly RecordState[]): Asked {
  const id = `${kind}.${field}`;
  const spec = fieldOf(kind, field);
  const label = fieldWords(kind, field);
  const value = valueOf(state, field);
  const typed = typing.texts.get(id);
  const fault = typing.faults.get(id) ?? "";
  if (spec?.type === "choice" || spec?.type === "ref") {
    const options = spec.type === "ref" ? refOptions(field, spec.kinds ?? [], state, teller, things) : choiceOptions(field, spec.options ?? []);
    return { as: spec.type === "choice" && options.length <= most ? "choice" : "picker", id, label, options, value: typed ?? (typeof value === "string" ? value : "") };
  }
  const veiled = state !== undefined && isVeiled({ rec: state.rec, kind, field, device: state.fields[field]?.shown.device ?? "" }, teller);
  const text = typed ?? (veiled ? "" : typedText(kind, field, value, teller.unit));
  if (spec?.type === "day") return { as: "day", id, label, text, fault };
  if (field === "note") return { as: "note", id, label, text, fault };
  const range = veiled && typeof value === "number" ? w("hint.veiled", { weight: weightWords(value) }) : rangeOf(kind, field, teller.unit);
  return { as: "typed", id, label, text, unit: unitWords(spec, teller.unit), range, fault, signed: spec?.type !== "number" || (spec.min ?? 0) < 0 };
}

function rangeOf(kind: string, field: string, unit: PressureUnit): string | null {
  const range = rangeWords(kind, field, unit);
  return range === "" ? null : w("things.range", { range });
}

function choiceOptions(field: string, options: readonly string[]): readonly Option[] {
  const known = options.filter((value) => value !== "unknown").map((value) => ({ value, label: optionWords(field, value) }));
  return [...known, { value: "", label: w("things.unknown") }];
}

// refOptions lists what may be chosen: with the place of each, so that it is seen from where a wheel would be taken.
function refOptions(field: string, kinds: readonly string[], state: RecordState | undefined, teller: Teller, things: readonly RecordState[]): readonly Option[] {
  const now = valueOf(state, field);
  const fits = things.filter((each) => kinds.includes(each.kind) && (each.rec === now || (valueOf(each, "retired") !== true && sideFits(each, field))));
  const options = fits.map((each) => ({ value: each.rec, label: labelOf(each, teller) })).sort((a, b) => byName(a.label, b.label));
  const gone = typeof now === "string" && now !== "" && !options.some(({ value }) => value === now) ? [{ value: now, label: teller.nameOf(now) }] : [];
  return [{ value: "", label: field === "front" || field === "rear" || field === "tyre" ? w("things.none") : w("things.unknown") }, ...gone, ...options];
}

function sideFits(thing: RecordState, field: string): boolean {
  const side = valueOf(thing, "side");
  return thing.kind !== "wheel" || typeof side !== "string" || side === "" || side === field;
}

function labelOf(thing: RecordState, teller: Teller): string {
  const [name, place] = [teller.nameOf(thing.rec), teller.placeOf(thing.rec)];
  return place === "" || name.includes(place) || thing.kind === "person" ? name : w("things.at", { name, place });
}
