// What is typed on the Pressure screen belongs to records of the book: the rider's weight to a person, a tyre's width to
// that tyre. Each bond ties one thing on the screen to one field of one record.

import type { Json } from "../../log/op/json.ts";
import { type Side, sides } from "../pressure/answer.ts";
import type { PressureDraft } from "../pressure/draft.ts";
import { allFields } from "../pressure/fields.ts";
import { typedKpa } from "../value/quantity.ts";
import { plain } from "../../words/number.ts";

export type Role = "person" | "bike" | "gauge" | "pump" | `${Side}.wheel` | `${Side}.tyre`;

export const roles: readonly Role[] = ["person", "bike", "front.wheel", "front.tyre", "rear.wheel", "rear.tyre", "gauge", "pump"];

// kindOf is the kind of record that plays a role.
export function kindOf(role: Role): string {
  return role.slice(role.indexOf(".") + 1);
}

export interface Bond {
  readonly key: string; // role/field
  readonly role: Role;
  readonly field: string;
  readonly from: "text" | "pick" | "name" | "weigh" | "firmness";
  readonly id: string; // of a text or a pick in the draft
  readonly needed: boolean; // an empty text means "not typed yet", never "taken back"
  readonly rest: Json; // what an absent field means
}

type Row = readonly [field: string, from: Bond["from"], id: string, options?: { needed?: boolean; rest?: Json }];

const wholeBike: Readonly<Partial<Record<Role, readonly Row[]>>> = {
  person: [["mass_kg", "text", "rider", { needed: true }]],
  bike: [
    ["name", "name", ""], ["mass_kg", "text", "bike"], ["weigh", "weigh", "", { rest: "share" }], ["front_share", "text", "share"],
    ["front_load_kg", "text", "load.front", { needed: true }], ["rear_load_kg", "text", "load.rear", { needed: true }],
    ["firmness", "firmness", "", { rest: 0 }],
  ],
  gauge: [["error_kpa", "text", "gaugeError"]],
  pump: [["stroke_ml", "text", "pump"]],
};

const ofTyre: readonly Row[] = [
  ["label_mm", "text", "label", { needed: true }], ["measured_mm", "text", "measured"], ["sidewall", "pick", "sidewall"],
  ["max_kpa", "text", "tyreMax"], ["min_kpa", "text", "tyreMin"], ["hookless_ok", "pick", "hookless"],
];

const ofWheel: readonly Row[] = [
  ["setup", "pick", "setup"], ["inner_mm", "text", "inner"], ["profile", "pick", "profile"], ["bead_seat_mm", "text", "bead"],
  ["max_kpa", "text", "rimMax"], ["table_min_label_mm", "text", "tableMin"], ["table_max_label_mm", "text", "tableMax"],
  ["table_max_kpa", "text", "tableKpa"],
];

function made(role: Role, [field, from, id, options]: Row, side = ""): Bond {
  return { key: `${role}/${field}`, role, field, from, id: `${side}${id}`, needed: options?.needed ?? false, rest: options?.rest ?? null };
}

export const bonds: readonly Bond[] = [
  ...(["person", "bike", "gauge", "pump"] as const).flatMap((role) => (wholeBike[role] ?? []).map((row) => made(role, row))),
  ...sides.flatMap((side) => [
    ...ofTyre.map((row) => made(`${side}.tyre`, row, `${side}.`)),
    ...ofWheel.map((row) => made(`${side}.wheel`, row, `${side}.`)),
  ]),
];

// idIn is where the draft holds a bond's text: a rear that is the same as the front has none of its own.
export function idIn(bond: Bond, draft: PressureDraft): string {
  return draft.rearSame ? bond.id.replace(/^rear\./, "front.") : bond.id;
}

// textOf is what stands on the screen.
export function textOf(bond: Bond, draft: PressureDraft): string {
  switch (bond.from) {
    case "text": return draft.texts[idIn(bond, draft)] ?? "";
    case "pick": return draft.picks[idIn(bond, draft)] ?? "";
    case "name": return draft.bike;
    case "weigh": return draft.weigh;
    case "firmness": return String(draft.firmness);
  }
}

// withText puts a record's value on the screen.
export function withText(bond: Bond, draft: PressureDraft, text: string): PressureDraft {
  const id = idIn(bond, draft);
  switch (bond.from) {
    case "text": return { ...draft, texts: { ...draft.texts, [id]: text } };
    case "pick": return { ...draft, picks: { ...draft.picks, [id]: text } };
    case "name": return { ...draft, bike: text };
    case "weigh": return { ...draft, weigh: text === "scale" ? "scale" : "share" };
    case "firmness": return { ...draft, firmness: Number(text) };
  }
}

// written is a record's value as a person would type it, in the unit that bare pressures are typed in. What is not
// understood (a newer app may have written it) is shown as nothing and left alone.
export function written(bond: Bond, value: Json, draft: PressureDraft): string {
  const meant = value ?? bond.rest;
  if (bond.from !== "text") return bond.from === "firmness" ? String(steps(meant)) : typeof meant === "string" ? meant : "";
  if (typeof meant !== "number") return "";
  const spec = allFields.find((each) => each.id === bond.id);
  if (spec?.dimension === "pressure") return typedKpa(meant, draft.unit);
  return plain(meant * (spec?.parts ?? 1));
}

function steps(value: Json): number {
  return typeof value === "number" && Number.isInteger(value) && Math.abs(value) <= 2 ? value : 0;
}
