// One line of goods: what it is, how many and how large each, whose, and what the rules say.

import { goodWords, readCount, readSize, type ToldGood, verdictWords } from "../../book/packing/goods_view.ts";
import { sizeOf } from "../../book/packing/trip.ts";
import { el } from "../../ui/el.ts";
import { Field } from "../../ui/field.ts";
import { actName, define, Part, setAttr, setHidden, setText } from "../../ui/part.ts";
import { Picker } from "../../ui/picker.ts";
import { w } from "../../words/index.ts";
import { plain } from "../../words/number.ts";

export interface GoodView {
  readonly told: ToldGood;
  readonly texts: Readonly<Record<string, string>>; // typed and not in the book yet
  readonly people: readonly { readonly rec: string; readonly name: string }[];
  readonly read: string;
}

export const goodAway = actName<string>("rs-good-away");

export class GoodPart extends Part<GoodView> {
  readonly #name = el("strong");
  readonly #away = el("button", { type: "button", class: "button", on: { click: () => this.act(goodAway, this.view?.told.good.key ?? "") } }, "✕");
  readonly #count = new Field();
  readonly #size = new Field();
  readonly #who = new Picker();
  readonly #says = el("p", { class: "small" });

  protected override build(): void {
    this.setAttribute("role", "listitem");
    this.append(el("div", { class: "stack good" }, el("div", { class: "row spread" }, this.#name, this.#away), this.#says,
      el("div", { class: "fields" }, this.#count, this.#size, this.#who)));
  }

  protected override show({ told, texts, people, read }: GoodView): void {
    const { good, line } = told;
    const name = w(`good.${good.id}`);
    setText(this.#name, goodWords(told));
    setAttr(this.#away, "aria-label", w("trip.goodAway", { name }));
    setText(this.#says, verdictWords(told, read, Date.now()));
    this.#says.className = line.asks === "" ? "small" : "small notice care";
    this.#field(this.#count, "count", w("trip.goodCount"), texts[`${good.key} count`] ?? String(good.count), "");
    const size = sizeOf(good.id);
    setHidden(this.#size, size === "");
    if (size !== "") this.#field(this.#size, "size", w(`goodSize.${size}`), texts[`${good.key} size`] ?? (good[size] === undefined ? "" : plain(good[size])), w(`goodUnit.${size}`));
    setHidden(this.#who, people.length < 2);
    const options = [{ value: "", label: w("trip.goodAnybody") }, ...people.map(({ rec, name: label }) => ({ value: rec, label }))];
    this.#who.view = { name: `good.who.${good.key}`, label: w("trip.goodWho"), spoken: w("goods.whose", { what: name, who: w("trip.goodWho") }), options, value: good.who ?? "" };
  }

  #field(field: Field, id: "count" | "size", label: string, text: string, unit: string): void {
    const { good } = this.view?.told ?? {};
    if (good === undefined) return;
    const size = sizeOf(good.id);
    const read = id === "count" ? readCount(text) : size === "" ? { value: undefined } : readSize(text, size);
    const spoken = w("goods.whose", { what: w(`good.${good.id}`), who: label });
    field.view = { id: `good.${good.key} ${id}`, label, spoken, text, unit, range: null, fault: "fault" in read ? read.fault : "", signed: false, step: 0 };
  }
}

define("rs-good", GoodPart);
