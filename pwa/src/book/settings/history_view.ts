// What was done to a record, newest first: who, when, on which phone, and each field's value with the one before it.

import type { HistoryEntry } from "../../log/book_log.ts";
import { type Json, member, sameValue } from "../../log/op/json.ts";
import { type RecordState, valueOf } from "../../log/op/merge.ts";
import { deletedField, eraseKind } from "../../log/op/op.ts";
import { w } from "../../words/index.ts";
import { fieldWords } from "../value/kind_words.ts";
import { kinds } from "../value/kinds.ts";
import { phoneWords, type Teller, whoWords } from "../value/record_words.ts";
import { isVeiled, type Told, valueWords } from "../value/value_words.ts";
import { whenWords } from "../value/when.ts";

export interface Shift {
  readonly field: string;
  readonly label: string;
  readonly value: string;
  readonly before: string; // "" where there was none
  readonly again: { readonly value: Json; readonly words: string } | undefined; // an earlier value that may be put back
}

export interface HistoryLine {
  readonly key: string;
  readonly what: string; // "Changed", "Deleted"
  readonly when: string;
  readonly by: string; // "Ana, on this phone"
  readonly shifts: readonly Shift[];
}

export function historyLines(entries: readonly HistoryEntry[], state: RecordState, teller: Teller): readonly HistoryLine[] {
  const before = new Map<string, Told>(); // by field, as it stood before the entry in hand
  const offered = new Map<string, Json[]>();
  const told = [...entries].reverse().map((entry, i) => {
    const raw = Object.entries(entry.set).filter(([field]) => field !== deletedField && entry.kind !== eraseKind).map(([field, value]) => {
      const now: Told = { rec: state.rec, kind: state.kind, field, value, device: entry.device };
      const old = before.get(field);
      before.set(field, now);
      return { now, old };
    });
    return { entry, raw, first: i === 0 };
  });
  return told.reverse().map(({ entry, raw, first }) => ({
    key: entry.op, what: whatWords(entry, first), when: whenWords(entry.at, teller.now),
    by: byWords(entry, teller),
    shifts: entry.erased === true ? [] : raw.map(({ now, old }) => shift(now, old, state, teller, offered)),
  }));
}

function byWords({ author, device }: HistoryEntry, teller: Teller): string {
  const phone = phoneWords(device, teller);
  return teller.find(author) === undefined ? w("history.byPhone", { phone }) : w("history.by", { who: whoWords({ author, device }, teller), phone });
}

function whatWords({ kind, set, erased }: HistoryEntry, first: boolean): string {
  if (kind === eraseKind) return w("history.erase");
  if (erased === true) return w("history.erased");
  const deleted = member(set, deletedField);
  if (deleted !== undefined) return w(deleted === true ? "history.deleted" : "history.restored");
  return w(first ? "history.made" : "history.changed");
}

function shift(now: Told, old: Told | undefined, state: RecordState, teller: Teller, offered: Map<string, Json[]>): Shift {
  const { field, value } = now;
  const words = valueWords(now, teller);
  const again = mayComeBack(now, state, teller, offered) ? { value, words } : undefined;
  return { field, label: fieldWords(state.kind, field), value: words, before: old === undefined ? "" : valueWords(old, teller), again };
}

// A description can be put back to what it was; an entry is what was written then. Each value is offered once.
function mayComeBack(now: Told, state: RecordState, teller: Teller, offered: Map<string, Json[]>): boolean {
  if (member(kinds, state.kind)?.is !== "description" || state.erased || state.deleted || isVeiled(now, teller)) return false;
  const known = offered.get(now.field) ?? [valueOf(state, now.field) ?? null];
  if (known.some((each) => sameValue(each, now.value))) return false;
  offered.set(now.field, [...known, now.value]);
  return true;
}
