// One set-up as a file for a friend: a bike with its wheels and tyres. The rider is left out: what somebody weighs is
// not passed on by the way.

import type { Change } from "../../log/book_log.ts";
import { isObject, type Json } from "../../log/op/json.ts";
import { type RecordState, valueOf } from "../../log/op/merge.ts";
import { kindOf, type Role, roles } from "../bind/bonds.ts";
import type { PressureDraft } from "./draft.ts";

const version = 1;
const carried: readonly Role[] = roles.filter((role) => role !== "person");
const personal = ["rider", "measured_at"]; // fields that stay here

// setupText writes the file.
export function setupText(links: PressureDraft["links"], find: (rec: string) => RecordState | undefined): string {
  const parts = carried.flatMap((role) => {
    const state = find(links[role] ?? "");
    if (state === undefined) return [];
    const set = Object.fromEntries(Object.keys(state.fields).filter((field) => !personal.includes(field)).map((field) => [field, valueOf(state, field) ?? null]));
    return [{ role, rec: state.rec, set }];
  });
  return JSON.stringify({ rimside_setup: version, parts });
}

// setupChanges reads the file into new records; undefined when it is no such file.
export function setupChanges(text: string, newRec: () => string): { readonly bike: string; readonly changes: readonly Change[] } | undefined {
  const file = parsed(text);
  if (!isObject(file) || file["rimside_setup"] !== version || !Array.isArray(file["parts"])) return undefined;
  const parts = file["parts"].filter(isObject).flatMap((part) => {
    const role = carried.find((each) => each === part["role"]);
    const { rec, set } = part;
    return role !== undefined && typeof rec === "string" && isObject(set) ? [{ role, rec, set }] : [];
  });
  const fresh = new Map(parts.map(({ rec }) => [rec, newRec()]));
  const bike = fresh.get(parts.find(({ role }) => role === "bike")?.rec ?? "");
  if (bike === undefined) return undefined;
  const changes = parts.map(({ role, rec, set }): Change => ({ rec: fresh.get(rec) ?? "", kind: kindOf(role), set: renamed(set, fresh) }));
  return { bike, changes };
}

// renamed lets records point to the new ones; what the file does not hold is not pointed to.
function renamed(set: { readonly [name: string]: Json }, fresh: ReadonlyMap<string, string>): Record<string, Json> {
  return Object.fromEntries(Object.entries(set).flatMap(([field, value]) => {
    if (typeof value !== "string" || !/^[0-9a-f]{32}$/.test(value)) return [[field, value] as const];
    const other = fresh.get(value);
    return other === undefined ? [] : [[field, other] as const];
  }));
}

function parsed(text: string): Json {
  try {
    return JSON.parse(text) as Json;
  } catch {
    return null;
  }
}
