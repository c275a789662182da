// What the calculations rest on, in groups to read.

import type { Name } from "../../contract/contract.ts";
import type { Mark, Source } from "../../contract/sources.ts";
import { listed, w } from "../../words/index.ts";
import { precise } from "../../words/number.ts";

export const marks = ["published", "practice", "memory", "ours"] as const satisfies readonly Mark[];

export interface SourceLine {
  readonly words: string;
  readonly formula: string;
  readonly values: readonly { readonly words: string; readonly text: string }[];
  readonly from: string;
  readonly mark: Mark;
  readonly usedBy: string;
}

export interface SourceGroup {
  readonly title: string;
  readonly lines: readonly SourceLine[];
}

export interface SourcesView {
  readonly groups: readonly SourceGroup[];
  readonly counts: readonly { readonly mark: Mark; readonly n: number }[];
  readonly total: number;
}

// sourcesView puts the sources in their groups.
export function sourcesView(sources: readonly Source[]): SourcesView {
  const titles = [...new Set(sources.map(({ group }) => group))];
  const groups = titles.map((title) => ({ title, lines: sources.filter(({ group }) => group === title).map(lineOf) }));
  return { groups, total: sources.length, counts: marks.map((mark) => ({ mark, n: sources.filter((each) => each.mark === mark).length })) };
}

function lineOf({ words, formula, values, from, mark, usedBy }: Source): SourceLine {
  return { words, formula, values: values.map((each) => ({ words: each.words, text: amount(each.value, each.unit) })), from, mark, usedBy: listed(usedBy.map(nameOf)) };
}

// amount writes a value with all its digits: 0.0018 must not become 0.002 here.
function amount(value: number, unit: string): string {
  return unit === "" ? precise(value) : w("recValue.with", { n: precise(value), unit });
}

function nameOf(calculation: Name): string {
  return w(`sources.for.${calculation}`);
}
