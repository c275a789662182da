// What may fly, of the things that rules speak of: how many are carried, where they may go, and why.

import type { GoodLine } from "../../book/packing/pack_view.ts";
import { type Good, goodsOf, itemsOf, wayOf, withItems } from "../../book/packing/trip.ts";
import { el } from "../../ui/el.ts";
import { Field, typed } from "../../ui/field.ts";
import { fold } from "../../ui/fold.ts";
import { keyed } from "../../ui/keyed.ts";
import { listen, setHidden, setText } from "../../ui/part.ts";
import type { Ctx } from "../../ui/screen.ts";
import { w } from "../../words/index.ts";
import { attempt } from "../shared/follow.ts";
import type { Packed } from "./packed.ts";

// carried are the goods that are asked for, as the calculator names them.
const carried = [
  { key: "cartridge", good: { id: "cartridge", grams: 16 } }, { key: "cartridge_large", good: { id: "cartridge", grams: 38 } }, { key: "sealant", good: { id: "sealant", ml: 100 } },
  { key: "power_bank", good: { id: "power_bank", wh: 74 } }, { key: "spare_battery", good: { id: "spare_battery", wh: 10 } }, { key: "solvent", good: { id: "solvent" } },
] as const;
type Key = (typeof carried)[number]["key"];

const most = 99;

type Say = (words: string, undo?: () => Promise<unknown>, failed?: boolean) => void;

export class Goods {
  readonly node: HTMLElement;
  readonly #ctx: Ctx;
  readonly #packed: () => Packed | undefined;
  readonly #say: Say;
  readonly #fields = el("div", { class: "fields" });
  readonly #lines = el("ul", { class: "unmarked stack" });
  readonly #texts = new Map<string, string>();
  #timer: ReturnType<typeof setTimeout> | undefined;

  constructor(host: HTMLElement, ctx: Ctx, found: () => Packed | undefined, say: Say) {
    this.#ctx = ctx;
    this.#packed = found;
    this.#say = say;
    const rec = ctx.path[0] ?? "";
    this.node = fold(w("trip.goods"), el("p", { class: "small quiet" }, w("trip.goodsHow")), this.#fields, this.#lines,
      el("p", {}, el("a", { class: "button", href: `#/packing/${rec}/desk` }, w("trip.desk"))));
    listen(host, typed, ({ id, text }) => {
      if (id.startsWith("good.")) this.#type(id.slice(5), text);
    }, ctx.closed);
  }

  #type(key: string, text: string): void {
    this.#texts.set(key, text);
    const found = this.#packed();
    if (found !== undefined) this.show(found);
    clearTimeout(this.#timer);
    this.#timer = setTimeout(() => void this.#save(), 600);
  }

  async #save(): Promise<void> {
    const found = this.#packed();
    if (found === undefined || carried.some(({ key }) => faultOf(this.#texts.get(key) ?? "") !== "")) return;
    const goods = carried.flatMap(({ key, good }): Good[] => {
      const count = Number(this.#texts.get(key) ?? countIn(found, key));
      return count > 0 ? [{ ...good, count }] : [];
    });
    const { trip } = found;
    const failed = await attempt(this.#ctx, () => this.#ctx.book.save([{ rec: trip.rec, kind: "trip", set: { items: withItems(itemsOf(trip), goods) }, shown: trip }]));
    if (failed !== "") this.#say(failed, undefined, true);
    else this.#texts.clear();
  }

  show(found: Packed): void {
    setHidden(this.node, !wayOf(found.trip).startsWith("air"));
    keyed(this.#fields, carried, ({ key }) => key, () => new Field(), (field, { key }) => {
      const text = this.#texts.get(key) ?? (countIn(found, key) === 0 ? "" : String(countIn(found, key)));
      const label = w("trip.goodCount", { good: w(`good.${key}`) });
      field.view = { id: `good.${key}`, label, spoken: label, text, unit: "", range: null, fault: faultOf(text), signed: false, step: 0 };
    });
    const lines = goodLines(found);
    keyed(this.#lines, lines, ({ key }) => key, () => el("li", {}, el("strong"), " ", el("span"), el("p", { class: "small" })), (node, { name: words, line }) => {
      const [name, where, why] = node.children;
      if (name === undefined || where === undefined || why === undefined) return;
      setText(name, words);
      setText(where, w("good.where", { cabin: mayWords(line.cabin), hold: mayWords(line.hold) }));
      setText(why, `${line.why} ${w("good.dated", { dated: line.dated })}`);
    });
    setHidden(this.#lines, lines.length === 0);
  }
}

function faultOf(text: string): string {
  const count = Number(text.trim() || "0");
  return Number.isInteger(count) && count >= 0 && count <= most ? "" : w("fault.bounds", { low: 0, high: most, unit: "" });
}

function matches(good: Good, key: Key): boolean {
  const wanted = carried.find((each) => each.key === key)?.good;
  return wanted !== undefined && good.id === wanted.id && (!("grams" in wanted) || good["grams"] === wanted.grams);
}

function countIn({ trip }: Packed, key: Key): number {
  return goodsOf(trip).find((good) => matches(good, key))?.count ?? 0;
}

export interface ToldGood {
  readonly key: string;
  readonly name: string;
  readonly count: number;
  readonly line: GoodLine;
}

// goodLines are what the calculator says of each of the goods, in their order; the same for every bike.
export function goodLines({ trip, bikes }: Packed): readonly ToldGood[] {
  const lines = bikes.find(({ pack }) => pack !== undefined)?.pack?.goods ?? [];
  return goodsOf(trip).flatMap((good, n): ToldGood[] => {
    const line = lines[n];
    const key = carried.find((each) => matches(good, each.key))?.key;
    return line === undefined ? [] : [{ key: `${n}`, name: key === undefined ? good.id : w(`good.${key}`), count: good.count, line }];
  });
}

export function nameOf(id: string): string {
  const key = carried.find((each) => each.good.id === id)?.key;
  return key === undefined ? id : w(`good.${key}`);
}

export function mayWords(may: string): string {
  return may === "yes" || may === "no" || may === "ask" ? w(`may.${may}`) : may;
}
