// What may fly, of the things that rules speak of: what is carried, how many, how large, whose; where it may go, and why.

import { readCount, readSize, toDecide, toldGoods } from "../../book/packing/goods_view.ts";
import { type Good, goodKinds, goodsOf, itemsOf, sizeOf, withItems } from "../../book/packing/trip.ts";
import { newRec } from "../../log/book_log.ts";
import { chosen } from "../../ui/choice.ts";
import { el } from "../../ui/el.ts";
import { typed } from "../../ui/field.ts";
import { keyed } from "../../ui/keyed.ts";
import { listen, setHidden, setText } from "../../ui/part.ts";
import { Picker } from "../../ui/picker.ts";
import type { Ctx } from "../../ui/screen.ts";
import { w } from "../../words/index.ts";
import { attempt } from "../shared/follow.ts";
import { goodAway, GoodPart } from "./good_part.ts";
import type { Packed } from "./packed.ts";

type Say = (words: string, undo?: () => Promise<unknown>, failed?: boolean) => void;

const rest = 500; // ms after the last key, before the book has it; the phone has it at once

export class Goods {
  readonly node: HTMLElement;
  readonly #ctx: Ctx;
  readonly #packed: () => Packed | undefined;
  readonly #say: Say;
  readonly #count = el("span", { class: "quiet" });
  readonly #none = el("p", { class: "quiet" }, w("trip.goodsNone"));
  readonly #list = el("ul", { class: "unmarked stack" });
  readonly #kind = new Picker();
  #texts: Record<string, string> = {};
  #timer: ReturnType<typeof setTimeout> | undefined;

  constructor(host: HTMLElement, ctx: Ctx, found: () => Packed | undefined, say: Say) {
    this.#ctx = ctx;
    this.#packed = found;
    this.#say = say;
    const rec = ctx.path[0] ?? "";
    const options = [{ value: "", label: w("trip.goodChoose") }, ...goodKinds.map((value) => ({ value, label: w(`good.${value}`) }))];
    this.#kind.view = { name: "good", label: w("trip.goodKind"), spoken: w("trip.goodKind"), options, value: "" };
    this.node = el("section", { class: "card stack" }, el("h2", {}, w("trip.goods"), " ", this.#count), el("p", { class: "small quiet" }, w("trip.goodsHow")),
      this.#none, this.#list, this.#kind, el("p", {}, el("a", { class: "button", href: `#/packing/${rec}/desk` }, w("trip.desk"))));
    listen(host, typed, ({ id, text }) => {
      if (id.startsWith("good.")) this.#type(id.slice(5), text);
    }, ctx.closed);
    listen(host, chosen, ({ name, value }) => {
      if (name === "good" && value !== "") void this.#add(value);
      if (name.startsWith("good.who.")) void this.#change(name.slice(9), (good) => (value === "" ? without(good, "who") : { ...good, who: value }));
    }, ctx.closed);
    listen(host, goodAway, (key) => void this.#away(key), ctx.closed);
    void ctx.drafts.load(this.#draft).then((stored) => {
      if (typeof stored !== "object" || stored === null) return;
      for (const [id, text] of Object.entries(stored)) if (typeof text === "string") this.#texts[id] ??= text;
      this.#again();
    });
  }

  get #draft(): string {
    return `goods/${this.#ctx.path[0] ?? ""}`;
  }

  #again(): void {
    const found = this.#packed();
    if (found !== undefined) this.show(found);
  }

  #type(id: string, text: string): void {
    this.#texts[id] = text;
    void this.#ctx.drafts.save(this.#draft, this.#texts);
    this.#again();
    clearTimeout(this.#timer);
    this.#timer = setTimeout(() => void this.#keep(), rest);
  }

  show(found: Packed): void {
    const goods = goodsOf(found.trip);
    const told = toldGoods(goods, found.goods, found.people);
    const open = toDecide(told);
    setText(this.#count, open === 0 ? "" : w("trip.goodsDecide", { n: open }));
    setHidden(this.#none, goods.length > 0);
    keyed(this.#list, told, ({ good }) => good.key, () => new GoodPart(), (part, each) => (part.view = { told: each, texts: this.#texts, people: found.people, read: found.read }));
  }

  // keep writes what was typed and can be read; what cannot stays typed, with the reason under it.
  async #keep(): Promise<void> {
    const before = { ...this.#texts };
    if (!(await this.#save((goods) => goods.map((good) => typedInto(good, before))))) return;
    for (const [id, text] of Object.entries(before)) if (this.#texts[id] === text && isRead(id, text)) delete this.#texts[id];
    void this.#ctx.drafts.save(this.#draft, this.#texts);
  }

  async #add(kind: string): Promise<void> {
    const id = goodKinds.find((each) => each === kind);
    this.#kind.view = { ...(this.#kind.view ?? { name: "good", label: "", spoken: "", options: [] }), value: "" };
    if (id !== undefined) await this.#save((goods) => [...goods, { key: newRec(), id, count: 1 }]);
  }

  async #change(key: string, change: (good: Good) => Good): Promise<void> {
    await this.#save((goods) => goods.map((good) => (good.key === key ? change(good) : good)));
  }

  async #away(key: string): Promise<void> {
    const found = this.#packed();
    if (found === undefined) return;
    const before = goodsOf(found.trip);
    if (await this.#save((goods) => goods.filter((good) => good.key !== key))) this.#say(w("trip.deleted"), () => this.#save(() => before));
  }

  async #save(change: (goods: readonly Good[]) => readonly Good[]): Promise<boolean> {
    const trip = await this.#ctx.book.get(this.#packed()?.trip.rec ?? "");
    if (trip === undefined) return false;
    const failed = await attempt(this.#ctx, () => this.#ctx.book.save([{ rec: trip.rec, kind: "trip", set: { items: withItems(itemsOf(trip), change(goodsOf(trip))) }, shown: trip }]));
    if (failed !== "") this.#say(failed, undefined, true);
    return failed === "";
  }
}

function without(good: Good, member: "who"): Good {
  const { [member]: _, ...rest } = good;
  return rest;
}

// typedInto is a good with what was typed about it: "<key> count" and "<key> size".
function typedInto(good: Good, texts: Readonly<Record<string, string>>): Good {
  const [count, size, name] = [texts[`${good.key} count`], texts[`${good.key} size`], sizeOf(good.id)];
  const [many, large] = [count === undefined ? undefined : readCount(count), size === undefined || name === "" ? undefined : readSize(size, name)];
  const next = { ...good, ...(many !== undefined && "value" in many && { count: many.value }) };
  if (large === undefined || name === "" || !("value" in large)) return next;
  const { [name]: _, ...rest } = next;
  return large.value === undefined ? (rest as Good) : ({ ...rest, [name]: large.value } as Good);
}

function isRead(id: string, text: string): boolean {
  return id.endsWith(" count") ? "value" in readCount(text) : "value" in readSize(text, "ml");
}
