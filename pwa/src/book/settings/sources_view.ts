// What the calculations rest on, as they tell it themselves, in groups to read.

import { listed, w } from "../../words/index.ts";
import { precise } from "../../words/number.ts";
import { isObject } from "../pressure/answer.ts";

export const marks = ["published", "practice", "memory", "ours"] as const;
export type Mark = (typeof marks)[number];

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

// sourcesView takes the sources out of the description of all calculations. What several rest on is told once.
export function sourcesView(described: readonly unknown[]): SourcesView {
  const groups = new Map<string, Map<string, { readonly line: Omit<SourceLine, "usedBy">; readonly usedBy: string[] }>>();
  for (const calculation of described.filter(isObject)) {
    for (const source of objects(calculation["sources"])) {
      const [group, words] = [text(source["group"]), text(source["words"])];
      const lines = groups.get(group) ?? new Map();
      groups.set(group, lines);
      const known = lines.get(words);
      if (known === undefined) lines.set(words, { line: lineOf(source), usedBy: [nameOf(text(calculation["name"]))] });
      else known.usedBy.push(nameOf(text(calculation["name"])));
    }
  }
  const out = [...groups].map(([title, lines]) => ({ title, lines: [...lines.values()].map(({ line, usedBy }) => ({ ...line, usedBy: listed(usedBy) })) }));
  const all = out.flatMap((group) => group.lines);
  return { groups: out, total: all.length, counts: marks.map((mark) => ({ mark, n: all.filter((line) => line.mark === mark).length })) };
}

function lineOf(source: Record<string, unknown>): Omit<SourceLine, "usedBy"> {
  const values = objects(source["values"]).map((each) => ({ words: text(each["words"]), text: amount(each["value"], text(each["unit"])) }));
  // A mark that only a newer calculator knows is not taken for more than it may be.
  const mark = marks.find((each) => each === source["mark"]) ?? "memory";
  return { words: text(source["words"]), formula: text(source["formula"]), values, from: text(source["source"]), mark };
}

// amount writes a value with all its digits: 0.0018 must not become 0.002 here.
function amount(value: unknown, unit: string): string {
  if (typeof value !== "number") return "";
  return unit === "" ? precise(value) : w("recValue.with", { n: precise(value), unit });
}

function nameOf(calculation: string): string {
  const known = (["pressure", "air", "leak"] as const).find((name) => name === calculation);
  return known === undefined ? calculation : w(`sources.for.${known}`);
}

function objects(value: unknown): readonly Record<string, unknown>[] {
  return Array.isArray(value) ? value.filter(isObject) : [];
}

function text(value: unknown): string {
  return typeof value === "string" ? value : "";
}
