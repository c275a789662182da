// From the book to the draft: what others, or another tab, changed appears on the screen, unless it was edited here.

import type { Json } from "../../log/op/json.ts";
import { member, sameValue } from "../../log/op/json.ts";
import { type RecordState, valueOf } from "../../log/op/merge.ts";
import { sides } from "../pressure/answer.ts";
import { type Bond, bonds, idIn, type Role, textOf, withText, written } from "./bonds.ts";
import type { States } from "./commit.ts";
import type { PressureDraft } from "../pressure/draft.ts";
import { isVeiled } from "../value/value_words.ts";

// take brings the draft up to the records, but for the field that is being typed in. The same draft comes back when
// nothing changed.
export function take(draft: PressureDraft, states: States, who: Who = nobody, typing = ""): PressureDraft {
  const changed = bonds.filter((bond) => isChanged(bond, draft, states, who, typing));
  // Wheels that are asked as one are told apart first: what changed on one must not pass for an edit of the other.
  let taken = draft.rearSame && changed.some(isOfWheel) ? ownRear(draft) : draft;
  for (const bond of changed) {
    const state = states[bond.role];
    if (state === undefined) continue;
    taken = state.erased ? forgotten(bond, taken) : takeOne(bond, taken, valueOf(state, bond.field) ?? null, isVeiledFor(who, bond, state));
  }
  return taken === draft ? draft : rejoined(taken);
}

function isOfWheel(bond: Bond): boolean {
  return bond.role.includes(".");
}

// isChanged tells whether a record says something else than the draft knows of, where nobody edits it here.
function isChanged(bond: Bond, draft: PressureDraft, states: States, who: Who, typing: string): boolean {
  const state = states[bond.role];
  if (state === undefined || state.rec !== draft.links[bond.role]) return false;
  if (typing !== "" && (idIn(bond, draft) === typing || (draft.rearSame && isOfWheel(bond) && typing.startsWith("front.")))) return false;
  if (state.erased) return true;
  const before = draft.based[bond.key];
  if (before === undefined) return true;
  const same = sameValue(before.value, valueOf(state, bond.field) ?? null) && (before.veiled ?? false) === isVeiledFor(who, bond, state);
  return !same && textOf(bond, draft) === before.text;
}

// rejoined asks for both wheels as one again once they are the same: their changes may have come one after the other.
function rejoined(draft: PressureDraft): PressureDraft {
  if (draft.rearSame) return draft;
  const apart = bonds.some((bond) => bond.role.startsWith("rear.") && textOf(bond, draft) !== textOf(bond, { ...draft, rearSame: true }));
  return apart ? draft : { ...draft, rearSame: true };
}

// forgotten takes an erased record's value off the screen; what is typed next belongs to a new record.
function forgotten(bond: Bond, draft: PressureDraft): PressureDraft {
  const { [bond.role]: _, ...links } = draft.links;
  const { [bond.key]: __, ...based } = draft.based;
  return { ...withText(bond, draft, written(bond, null, draft)), links, based };
}

// Who uses this phone, and which phone it is.
export interface Who {
  readonly me: string;
  readonly device: string;
}

const nobody: Who = { me: "", device: "" };

function isVeiledFor(who: Who, bond: Bond, state: RecordState): boolean {
  const device = member(state.fields, bond.field)?.shown.device ?? "";
  return who !== nobody && isVeiled({ rec: state.rec, kind: state.kind, field: bond.field, device }, who);
}

function takeOne(bond: Bond, draft: PressureDraft, value: Json, veiled: boolean): PressureDraft {
  const text = veiled ? "" : written(bond, value, draft);
  const next = withText(bond, draft, text);
  return { ...next, based: { ...next.based, [bond.key]: { text, value, ...(veiled && { veiled }) } } };
}

// ownRear gives the rear wheel texts of its own, copied from the front.
export function ownRear(draft: PressureDraft): PressureDraft {
  const copy = (of: Readonly<Record<string, string>>): Record<string, string> => {
    const out = Object.fromEntries(Object.entries(of).filter(([id]) => !id.startsWith("rear.")));
    for (const [id, value] of Object.entries(of)) {
      if (id.startsWith("front.")) out[id.replace(/^front\./, "rear.")] = value;
    }
    return out;
  };
  return { ...draft, rearSame: false, texts: copy(draft.texts), picks: copy(draft.picks) };
}

// links follows a bike to its rider, wheels, tyres, gauge and pump.
export function linksOf(bike: RecordState, find: (rec: string) => RecordState | undefined): PressureDraft["links"] {
  const links: Record<string, string> = { bike: bike.rec };
  const follow = (role: Role, from: RecordState | undefined, field: string): RecordState | undefined => {
    const rec = valueOf(from, field);
    const state = typeof rec === "string" && rec !== "" ? find(rec) : undefined;
    if (state !== undefined && !state.erased) links[role] = state.rec;
    return state;
  };
  follow("person", bike, "rider");
  follow("gauge", bike, "gauge");
  follow("pump", bike, "pump");
  for (const side of sides) follow(`${side}.tyre`, follow(`${side}.wheel`, bike, side), "tyre");
  return links;
}
