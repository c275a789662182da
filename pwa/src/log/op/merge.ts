// A record's ops are an op set: a grow-only set that is joined by union, so whoever holds the same ops shows the same, in
// whatever order and however often they came. Each field is a multi-value register, which differs from the textbooks' in
// three ways. What an op supersedes it names itself, in its bases: that is what a person saw, not what the phone knew, so
// there are no version vectors. Equal values are one candidate. And one of several is the winner, the greatest (at, id), as
// in a last-writer-wins register; its siblings are kept and shown until an op supersedes them all.
// The server has the same rules in Go; the cases in store/oplog/testdata and random ops (pwa/journey/agree_test.go) hold
// both to the same answers.

import { canonical, type Json, member } from "./json.ts";
import { deletedField, eraseKind, erases, type Op } from "./op.ts";

// Candidate is one value that a field may have: it was set, and no op that anybody has seen supersedes it.
export interface Candidate {
  readonly value: Json;
  readonly op: string; // the op with the greatest (at, id) that set it
  readonly at: number;
  readonly author: string;
  readonly device: string;
  readonly ops: readonly string[]; // all ops that set this value and are not superseded, sorted
}

// FieldState: there are siblings when phones that did not know of each other set different values: a conflict. The members'
// names stand in the databases of phones, and stay.
export interface FieldState {
  readonly shown: Candidate; // the winner
  readonly others: readonly Candidate[]; // its siblings, newest first
}

export interface RecordState {
  readonly rec: string;
  readonly kind: string;
  readonly erased: boolean; // its values are gone for good
  readonly deleted: boolean; // hidden: a tombstone is the winner
  readonly fields: Readonly<Record<string, FieldState>>; // without "deleted"
  readonly deletion?: FieldState; // the field "deleted", once it was set
  readonly newest: number; // the greatest time among its ops; in lists 0 where that lies ahead of any right clock
  readonly clashes: readonly string[]; // conflicts: fields with siblings; "deleted" when a delete and an edit missed each other
  readonly unseen: readonly string[]; // ops that the tombstones had not seen
}

// merge works out a record's state from all its ops.
export function merge(rec: string, ops: readonly Op[]): RecordState {
  const sorted = ordered(ops);
  const last = sorted.at(-1);
  const frame = { rec, kind: kindOf(sorted), newest: last?.at ?? 0 };
  if (sorted.some(erases)) return { ...frame, erased: true, deleted: false, fields: {}, clashes: [], unseen: [] };
  const { [deletedField]: deletion, ...fields } = Object.fromEntries(candidates(sorted));
  return { ...frame, erased: false, fields, ...(deletion && { deletion }), ...hiding(sorted, fields, deletion) };
}

// frameOf tells what a record is, without its values.
export function frameOf(ops: readonly Op[]): Pick<RecordState, "kind" | "erased"> {
  return { kind: kindOf(ordered(ops)), erased: ops.some(erases) };
}

// valueOf is the value that a field shows.
export function valueOf(state: RecordState | undefined, field: string): Json | undefined {
  return state && member(state.fields, field)?.shown.value;
}

// heads lists all ops of a field that no other op supersedes.
export function heads(field: FieldState | undefined): readonly string[] {
  return field === undefined ? [] : [field.shown, ...field.others].flatMap((candidate) => candidate.ops);
}

// ordered gives every op once, by (at, id).
function ordered(ops: readonly Op[]): readonly Op[] {
  const once = [...new Map(ops.map((op) => [op.id, op])).values()];
  return once.sort((a, b) => a.at - b.at || (a.id < b.id ? -1 : 1));
}

// kindOf gives the kind of a record, whose ops are given by time.
function kindOf(sorted: readonly Op[]): string {
  const own = sorted.findLast((op) => op.kind !== eraseKind)?.kind;
  if (own !== undefined) return own;
  const named = sorted.map((op) => member(op.set, "kind")).find((kind) => typeof kind === "string");
  return named ?? "";
}

// candidates gives each field's values. An op is superseded when another op that sets the field too names it in its bases.
function candidates(sorted: readonly Op[]): Map<string, FieldState> {
  const setting = new Map<string, Op[]>(); // the ops that set a field, newest first
  for (const op of sorted.toReversed()) {
    for (const name of Object.keys(op.set)) {
      const others = setting.get(name);
      if (others === undefined) setting.set(name, [op]);
      else others.push(op);
    }
  }
  return new Map([...setting].map(([name, ops]) => [name, fieldState(name, ops)]));
}

function fieldState(name: string, ops: readonly Op[]): FieldState {
  const superseded = new Set<string>();
  for (const op of ops) {
    for (const base of member(op.bases, name) ?? []) {
      if (base !== op.id) superseded.add(base);
    }
  }
  const left = ops.filter((op) => !superseded.has(op.id));
  // Ops that supersede each other in a circle: none may vanish.
  const [shown, ...others] = grouped(name, left.length > 0 ? left : ops);
  return { shown: shown as Candidate, others };
}

// grouped makes one candidate of all ops with equal values.
function grouped(name: string, ops: readonly Op[]): Candidate[] {
  const groups = new Map<string, Op[]>();
  for (const op of ops) {
    const value = canonical(op.set[name] as Json);
    const equals = groups.get(value);
    if (equals === undefined) groups.set(value, [op]);
    else equals.push(op);
  }
  return [...groups.values()].map((equals) => {
    const newest = equals[0] as Op;
    return {
      value: newest.set[name] as Json, op: newest.id, at: newest.at, author: newest.author ?? "", device: newest.device ?? "",
      ops: equals.map((op) => op.id).sort(),
    };
  });
}

type Hiding = Pick<RecordState, "deleted" | "clashes" | "unseen">;

// hiding works out whether the record is hidden, and every conflict. A tombstone is an op that sets "deleted" to true; it
// names the ops that it has seen, as an observed-remove set does, and what it had not seen is a conflict rather than a
// survivor. A hidden record's fields are in conflict only when somebody edited it without knowing of the delete: otherwise
// whoever deleted it knew.
function hiding(ops: readonly Op[], fields: RecordState["fields"], deletion: FieldState | undefined): Hiding {
  const deleted = deletion?.shown.value === true;
  const unseen = deleted ? notSeen(ops, fields, deletion) : [];
  const clashes = !deleted || unseen.length > 0 ? Object.keys(fields).filter((name) => fields[name]?.others.length !== 0) : [];
  if (unseen.length > 0 || (deletion?.others.length ?? 0) > 0) clashes.push(deletedField);
  return { deleted, clashes: clashes.sort(), unseen };
}

function notSeen(ops: readonly Op[], fields: RecordState["fields"], deletion: FieldState): string[] {
  const tombstones = new Set(heads(deletion));
  const seen = new Set<string>();
  for (const op of ops) {
    if (member(op.set, deletedField) === true && tombstones.has(op.id)) op.seen?.forEach((id) => seen.add(id));
  }
  const left = Object.values(fields).flatMap(heads).filter((id) => !seen.has(id));
  return [...new Set(left)].sort();
}
