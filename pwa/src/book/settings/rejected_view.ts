// What a server did not take, or this phone not from it: what it was, and why.

import type { RejectedOp } from "../../log/book_log.ts";
import { deletedField, eraseKind, type Op } from "../../log/op/op.ts";
import { type Key, w } from "../../words/index.ts";
import { fieldWords, kindWords } from "../value/kind_words.ts";
import { describeRecord, type Teller, whoWords } from "../value/record_words.ts";
import { valueWords } from "../value/value_words.ts";
import { whenWords } from "../value/when.ts";

export interface RejectedView {
  readonly key: string;
  readonly id: string;
  readonly title: string; // "Tyre · Ochre 40s"
  readonly by: string; // "Ana, 10:02 today"
  readonly values: readonly { readonly label: string; readonly value: string }[];
  readonly reason: string;
  readonly code: string;
  readonly details: string; // to be copied, for whoever can mend it
}

export function rejectedViews(ops: readonly RejectedOp[], teller: Teller): readonly RejectedView[] {
  return ops.map((each) => ({
    key: `${each.id} ${each.log}`, id: each.id, ...(each.op === undefined ? unreadable() : whatOf(each.op, teller)),
    reason: each.message === "" ? reasonOf(each.code) : each.message, code: each.code,
    details: JSON.stringify({ id: each.id, log: each.log, code: each.code, message: each.message, op: each.op }, null, 2),
  }));
}

type What = Pick<RejectedView, "title" | "by" | "values">;

function unreadable(): What {
  return { title: w("refused.unreadable"), by: "", values: [] };
}

function whatOf(op: Op, teller: Teller): What {
  const { rec, kind, set, device } = op;
  const known = teller.find(rec);
  const by = w("clash.by", { who: whoWords({ author: op.author ?? "", device: device ?? "" }, teller), when: whenWords(op.at, teller.now) });
  const values = Object.entries(set).filter(() => kind !== eraseKind && op.erased !== true).map(([field, value]) => ({
    label: fieldWords(kind, field),
    value: valueWords({ rec, kind, field, value, ...(device !== undefined && { device }) }, teller),
  }));
  const isDelete = set[deletedField] === true;
  return { title: known === undefined ? kindWords(kind) : describeRecord(known, teller), by, values: isDelete ? [] : values, ...(isDelete && { by: w("clash.deleted", { by }) }) };
}

// A server gives its reason in its own words; this phone's are in the catalogue.
const reasons: Readonly<Record<string, Key>> = {
  op_malformed: "refused.op_malformed", op_too_large: "refused.op_too_large", at_out_of_range: "refused.at_out_of_range", other_content: "refused.other_content",
};

export function reasonOf(code: string): string {
  const key = reasons[code];
  return key === undefined ? w("refused.unsaid") : w(key as "refused.unsaid");
}
