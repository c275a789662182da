// What two phones said differently, as questions: per record a card, per field a question, per value an answer.

import { type Json, member, sameValue } from "../../log/op/json.ts";
import type { Candidate, FieldState, RecordState } from "../../log/op/merge.ts";
import { deletedField } from "../../log/op/op.ts";
import { w } from "../../words/index.ts";
import { fieldWords } from "../value/kind_words.ts";
import { type By, describeRecord, type Teller, whoWords } from "../value/record_words.ts";
import { valueWords } from "../value/value_words.ts";
import { whenWords } from "../value/when.ts";

export interface Answer {
  readonly value: Json;
  readonly label: string; // "41.5 mm"
  readonly by: string; // "Ana, 10:02 today"
  readonly mark: string; // "shown now" for what stands there
}

export interface Question {
  readonly key: string;
  readonly field: string;
  readonly ask: string;
  readonly facts: readonly string[]; // what has to be known to answer
  readonly answers: readonly Answer[];
}

export interface ClashCard {
  readonly rec: string;
  readonly title: string;
  readonly state: RecordState; // as it was shown: an answer is given to this
  readonly questions: readonly Question[];
}

export function clashCards(states: readonly RecordState[], teller: Teller): readonly ClashCard[] {
  return states.map((state) => ({ rec: state.rec, title: describeRecord(state, teller), state, questions: questionsOf(state, teller) }));
}

// keyOf tells questions apart, also when the same one comes again.
function keyOf(state: RecordState, field: string): string {
  return `${state.rec}/${field}`;
}

// While it is open whether the record stays at all, its fields are not worth asking about.
function questionsOf(state: RecordState, teller: Teller): readonly Question[] {
  if (state.clashes.includes(deletedField)) return [deletionQuestion(state, teller)];
  return state.clashes.flatMap((field) => {
    const found = member(state.fields, field);
    return found === undefined ? [] : [valueQuestion(state, field, found, teller)];
  });
}

function valueQuestion(state: RecordState, field: string, { shown, others }: FieldState, teller: Teller): Question {
  const candidates = [shown, ...others];
  const told = (each: Candidate, exactly: boolean): string =>
    valueWords({ rec: state.rec, kind: state.kind, field, value: each.value, device: each.device }, teller, exactly);
  const short = candidates.map((each) => told(each, false));
  const alike = new Set(short).size < short.length;
  const labels = alike ? ranked(candidates, apart(candidates.map((each) => told(each, true)))) : short;
  return {
    key: keyOf(state, field), field, ask: w("clash.which", { field: fieldWords(state.kind, field) }), facts: [],
    answers: candidates.map((each, i) => ({ value: each.value, label: labels[i] ?? "", by: byWords(each, teller), mark: each === shown ? w("clash.shown") : "" })),
  };
}

const enough = 160; // characters of a long value
const before = 20; // characters shown before the first difference

// apart shows long texts from where they begin to differ.
function apart(texts: readonly string[]): readonly string[] {
  const first = texts[0] ?? "";
  let same = 0;
  while (same < first.length && texts.every((text) => text[same] === first[same])) same++;
  const from = same < enough - before ? 0 : same - before;
  return texts.map((text) => `${from > 0 ? "…" : ""}${text.slice(from, from + enough)}${text.length > from + enough ? "…" : ""}`);
}

// ranked tells numbers apart that are told in words only, as what a person weighs: the smallest is the first by size.
function ranked(candidates: readonly Candidate[], labels: readonly string[]): readonly string[] {
  if (new Set(labels).size === labels.length) return labels;
  const sizes = candidates.map((each) => Number(each.value));
  const order = [...sizes].sort((a, b) => a - b);
  return labels.map((label, i) => w("clash.ranked", { label, n: order.indexOf(sizes[i] ?? 0) + 1, of: sizes.length }));
}

function byWords(by: By & { readonly at: number }, teller: Teller): string {
  return w("clash.by", { who: whoWords(by, teller), when: whenWords(by.at, teller.now) });
}

// A delete and an edit that missed each other, or a delete and a restoring.
function deletionQuestion(state: RecordState, teller: Teller): Question {
  const { deletion, deleted } = state;
  const candidates = deletion === undefined ? [] : [deletion.shown, ...deletion.others];
  const facts = candidates.map((each) => (each.value === true ? w("clash.deleted", { by: byWords(each, teller) }) : w("clash.restored", { by: byWords(each, teller) })));
  return {
    key: keyOf(state, deletedField), field: deletedField, ask: w("clash.keep"), facts: [...facts, ...missedEdits(state, teller)],
    answers: [
      { value: false, label: deleted ? w("clash.restore") : w("clash.stay"), by: "", mark: deleted ? "" : w("clash.hereNow") },
      { value: true, label: w("clash.delete"), by: "", mark: deleted ? w("clash.deletedNow") : "" },
    ],
  };
}

// missedEdits are the values that whoever deleted the record did not know of.
function missedEdits(state: RecordState, teller: Teller): readonly string[] {
  const { rec, kind } = state;
  return Object.entries(state.fields).flatMap(([field, { shown, others }]) =>
    [shown, ...others].filter((each) => each.ops.some((op) => state.unseen.includes(op))).map((each) => w("clash.edited", {
      by: byWords(each, teller), field: fieldWords(kind, field), value: valueWords({ rec, kind, field, value: each.value, device: each.device }, teller),
    })));
}

// Settled is a question that was answered, here or elsewhere, since the page was opened.
export interface Settled {
  readonly words: string; // "Measured width: 41.5 mm"
  readonly by: string;
  readonly instead: readonly Answer[]; // what can still be said in place of it
}

// settled tells how a question ended.
export function settled(question: Question, state: RecordState | undefined, teller: Teller): Settled {
  const { field } = question;
  if (state === undefined || state.erased) return { words: w("clash.erased"), by: "", instead: [] };
  const isDeletion = field === deletedField;
  const now = isDeletion ? state.deletion : member(state.fields, field);
  if (now === undefined || (state.deleted && !isDeletion)) return { words: w("clash.isDeleted"), by: "", instead: [] };
  const { value, device } = now.shown;
  const words = isDeletion ? w(state.deleted ? "clash.isDeleted" : "clash.isKept")
    : w("clash.is", { field: fieldWords(state.kind, field), value: labelled(question, value) ?? valueWords({ rec: state.rec, kind: state.kind, field, value, device }, teller) });
  return { words, by: byWords(now.shown, teller), instead: question.answers.filter((each) => !sameValue(each.value, value)) };
}

// What was pressed is called as it was called on the button.
function labelled(question: Question, value: Json): string | undefined {
  return question.answers.find((each) => sameValue(each.value, value))?.label;
}
