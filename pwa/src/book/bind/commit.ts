// From the draft to the book: what a person changed on the screen becomes changes of records. The draft remembers, for
// each field, the value of the record that stands behind its text; an edit is a text that differs from that one.

import type { Change } from "../../log/book_log.ts";
import { type Json, sameValue } from "../../log/op/json.ts";
import { type Candidate, type FieldState, type RecordState, valueOf } from "../../log/op/merge.ts";
import { type Bond, bonds, idIn, kindOf, type Role, roles, textOf } from "./bonds.ts";
import { sides } from "../pressure/answer.ts";
import type { PressureDraft } from "../pressure/draft.ts";
import type { Reading } from "../pressure/request.ts";

export type States = Readonly<Partial<Record<Role, RecordState>>>;

export interface Commit {
  readonly draft: PressureDraft; // with what now stands behind its texts
  readonly changes: readonly Change[]; // none: nothing was edited
}

// commit works out the changes. Fields that cannot be read wait; their texts stay in the draft.
export function commit(draft: PressureDraft, reading: Reading, states: States, now: number, newRec: () => string): Commit {
  const sets = new Map<Role, Record<string, Json>>();
  const shown = new Map<Role, Record<string, Json>>(); // what stood there before, by field
  const based = { ...draft.based };
  for (const bond of bonds) {
    const text = textOf(bond, draft);
    const before = based[bond.key];
    if (text === before?.text) continue;
    const value = valueIn(bond, draft, reading);
    if (value === undefined) continue;
    based[bond.key] = { text, value };
    const known = states[bond.role];
    // The record may say so already: saved before a crash, or by somebody else.
    if (sameValue(value, before?.value ?? bond.rest) || (known !== undefined && sameValue(value, valueOf(known, bond.field) ?? bond.rest))) continue;
    entry(sets, bond.role)[bond.field] = value;
    entry(shown, bond.role)[bond.field] = before?.value ?? null;
    if (bond.field === "measured_mm") entry(sets, bond.role)["measured_at"] = now;
  }
  const links = linked(draft.links, sets, newRec);
  joined(links, draft.links, sets);
  const changes = roles.filter((role) => sets.has(role)).map((role): Change => {
    const rec = links[role] ?? "";
    const state = states[role];
    const seen = state === undefined || state.rec !== rec ? {} : { shown: asShown(state, shown.get(role) ?? {}) };
    return { rec, kind: kindOf(role), set: sets.get(role) ?? {}, ...seen };
  });
  return { draft: { ...draft, links, based }, changes };
}

function entry(of: Map<Role, Record<string, Json>>, role: Role): Record<string, Json> {
  let record = of.get(role);
  if (record === undefined) of.set(role, (record = {}));
  return record;
}

// valueIn is the value that a text stands for: null for "not known", undefined when it cannot be read (yet).
export function valueIn(bond: Bond, draft: PressureDraft, reading: Reading): Json | undefined {
  const text = textOf(bond, draft);
  if (bond.from === "firmness") return draft.firmness;
  if (bond.from !== "text") return text === "" ? null : text;
  if (text.trim() === "") return bond.needed ? undefined : null;
  return reading.values.get(idIn(bond, draft));
}

// linked draws ids for the records that are needed and not there yet. A bike has its wheels and they their tyres.
function linked(known: PressureDraft["links"], sets: ReadonlyMap<Role, unknown>, newRec: () => string): Record<string, string> {
  const links: Record<string, string> = { ...known };
  const needed: Role[] = [...sets.keys()];
  if (sets.size > 0) needed.push("bike");
  for (const side of sides) {
    if (sets.has(`${side}.tyre`) || sets.has(`${side}.wheel`)) needed.push(`${side}.wheel`, `${side}.tyre`);
  }
  for (const role of needed) links[role] ||= newRec();
  return links;
}

const joints: readonly (readonly [Role, string, Role])[] = [
  ["bike", "rider", "person"], ["bike", "gauge", "gauge"], ["bike", "pump", "pump"],
  ...sides.flatMap((side): (readonly [Role, string, Role])[] => [["bike", side, `${side}.wheel`], [`${side}.wheel`, "tyre", `${side}.tyre`]]),
];

// joined lets records point to those that were just made.
function joined(links: Readonly<Record<string, string>>, before: PressureDraft["links"], sets: Map<Role, Record<string, Json>>): void {
  for (const [from, field, to] of joints) {
    const rec = links[to];
    if (rec !== undefined && rec !== before[to]) entry(sets, from)[field] = rec;
  }
}

// asShown is the record as the person saw it when they edited: of each field the candidate with that value. When it is
// gone, because somebody replaced it meanwhile, the edit replaces nothing, and the two values will clash as they should.
function asShown(state: RecordState, values: Readonly<Record<string, Json>>): RecordState {
  const fields: Record<string, FieldState> = {};
  for (const [name, value] of Object.entries(values)) {
    const field = Object.hasOwn(state.fields, name) ? state.fields[name] : undefined;
    const seen = field === undefined ? undefined : [field.shown, ...field.others].find((each: Candidate) => sameValue(each.value, value));
    if (seen !== undefined) fields[name] = { shown: seen, others: [] };
  }
  return { ...state, fields: { ...withoutEdited(state, values), ...fields } };
}

function withoutEdited(state: RecordState, values: Readonly<Record<string, Json>>): Record<string, FieldState> {
  return Object.fromEntries(Object.entries(state.fields).filter(([name]) => !Object.hasOwn(values, name)));
}

