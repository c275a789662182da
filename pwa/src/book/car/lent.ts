// Which spares are out, wheels and whole bikes, and with whom: an entry says out, another says in and names it. Two cars that lend the same spare while
// apart leave two entries; both stay, and both cars see it.

import type { RecordState } from "../../log/op/merge.ts";
import { textIn } from "./known.ts";

export interface Loan {
  readonly out: string; // the entry
  readonly spare: string; // the spare wheel's record, or the spare bike's
  readonly whole: boolean; // a bike
  readonly number: string; // the rider's, "" where it was not known
  readonly bike: string; // the rider's own
  readonly at: number;
  readonly place: string;
}

// loansOf are the spares that are out now, the latest first.
export function loansOf(outs: readonly RecordState[], ins: readonly RecordState[]): readonly Loan[] {
  const back = new Set(ins.map((entry) => textIn(entry, "out")));
  return outs.filter(({ rec }) => !back.has(rec)).map((entry) => ({
    out: entry.rec, spare: textIn(entry, "spare_bike") || textIn(entry, "spare"), whole: textIn(entry, "spare_bike") !== "", number: textIn(entry, "number"), bike: textIn(entry, "bike"), at: entry.newest, place: textIn(entry, "note"),
  })).sort((a, b) => b.at - a.at || (a.out < b.out ? -1 : 1));
}

// lentTwice are the spares that more than one entry says are out.
export function lentTwice(loans: readonly Loan[]): readonly (readonly Loan[])[] {
  const by = new Map<string, Loan[]>();
  for (const loan of loans) by.set(loan.spare, [...(by.get(loan.spare) ?? []), loan]);
  return [...by.values()].filter((each) => each.length > 1);
}
