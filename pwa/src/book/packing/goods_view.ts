// The goods of a trip with what the calculator says of each, and a form of what is typed about them.

import { packFields } from "../../contract/pack_fields.ts";
import { parse } from "../value/quantity.ts";
import { dayWords } from "../value/when.ts";
import { sentences, w } from "../../words/index.ts";
import { plain } from "../../words/number.ts";
import type { GoodLine } from "./pack_view.ts";
import { whyWords } from "./step_words.ts";
import { type Good, sizeOf, type SizeName } from "./trip.ts";

export interface ToldGood {
  readonly good: Good;
  readonly line: GoodLine;
  readonly who: string; // a name; "" where nobody was said
}

// toldGoods pairs each of the goods with its verdict; the calculator keeps their order.
export function toldGoods(goods: readonly Good[], lines: readonly GoodLine[], people: readonly { readonly rec: string; readonly name: string }[]): readonly ToldGood[] {
  return goods.flatMap((good, n): ToldGood[] => {
    const line = lines[n];
    return line === undefined || line.id !== good.id ? [] : [{ good, line, who: people.find(({ rec }) => rec === good.who)?.name ?? "" }];
  });
}

// goodWords name a line: how many, what, how large, whose.
export function goodWords({ good, who }: ToldGood): string {
  const size = sizeOf(good.id);
  const measure = size === "" ? undefined : good[size];
  const name = w(`good.${good.id}`);
  const what = size === "" || measure === undefined ? w("goods.line", { count: good.count, name }) : w("goods.sized", { count: good.count, name, size: plain(measure), unit: w(`goodUnit.${size}`) });
  return who === "" ? what : w("goods.whose", { what, who });
}

// verdictWords say where it may travel, why, and of which day the rule is.
export function verdictWords({ line }: ToldGood, read: string, now: number): string {
  const day = dayWords(read, now);
  const dated = line.dated === "" ? "" : w("good.dated", { dated: /^\d{4}-\d\d-\d\d$/.test(line.dated) ? dayWords(line.dated, now) : line.dated, read: day });
  return sentences([w("good.where", { cabin: w(`may.${line.cabin}`), hold: w(`may.${line.hold}`) }), whyWords(line), line.parcel ? w("good.parcel") : "", dated]);
}

// toDecide counts what is asked of somebody before it can travel.
export function toDecide(told: readonly ToldGood[]): number {
  return told.filter(({ line }) => line.asks !== "").length;
}

const counted = packFields["goods.*.count"];

// readCount reads how many; readSize how large each is: undefined while nobody knows.
export function readCount(text: string): { readonly value: number } | { readonly fault: string } {
  const value = Number(text.trim());
  if (Number.isInteger(value) && value >= counted.min && value <= counted.max) return { value };
  return { fault: w("fault.bounds", { low: counted.min, high: counted.max, unit: "" }) };
}

export function readSize(text: string, size: SizeName): { readonly value: number | undefined } | { readonly fault: string } {
  const bare = text.trim().replace(/\s*(g|wh|ml)$/i, "");
  if (bare === "") return { value: undefined };
  const { min, max } = packFields[`goods.*.${size}`];
  const parsed = parse(bare, "plain", "ml");
  if ("fault" in parsed) return { fault: w("fault.number", { example: "20" }) };
  return parsed.si >= min && parsed.si <= max ? { value: parsed.si } : { fault: w("fault.bounds", { low: min, high: max, unit: w(`goodUnit.${size}`) }) };
}
