// One's own things, with what they weigh: the running total against the airline's own limits. They are ticked like steps.

import { isObject } from "../../book/pressure/answer.ts";
import { textOf } from "../../book/checks/walk_save.ts";
import { itemsOf, type Item, goodsOf, totalsOf, withItems } from "../../book/packing/trip.ts";
import { readTyped } from "../../book/value/typed_value.ts";
import { newRec } from "../../log/book_log.ts";
import { type RecordState, valueOf } from "../../log/op/merge.ts";
import { plain } from "../../words/number.ts";
import { el } from "../../ui/el.ts";
import { Field, typed } from "../../ui/field.ts";
import { fold } from "../../ui/fold.ts";
import { keyed } from "../../ui/keyed.ts";
import { define, listen, Part, setAttr, setHidden, setText } from "../../ui/part.ts";
import type { Ctx } from "../../ui/screen.ts";
import { w } from "../../words/index.ts";
import { attempt } from "../shared/follow.ts";
import { type Direction, keyOf } from "../../book/packing/pack_view.ts";
import type { Packed } from "./packed.ts";
import { stepTicked } from "./steps.ts";

const atFirst = 60;
const longest = 80; // characters of a name

type Say = (words: string, undo?: () => Promise<unknown>, failed?: boolean) => void;

export class Items {
  readonly node: HTMLElement;
  readonly #ctx: Ctx;
  readonly #packed: () => Packed | undefined;
  readonly #say: Say;
  readonly #list = el("ul", { class: "unmarked to-tick" });
  readonly #more = el("button", { type: "button", class: "button quiet flush" });
  readonly #total = el("p");
  readonly #templates = el("div", { class: "row" });
  readonly #keep = el("button", { type: "button", class: "button", on: { click: () => void this.#keepTemplate() } }, w("trip.template"));
  readonly #over = el("p", { class: "notice care" });
  readonly #name = new Field();
  readonly #kg = new Field();
  readonly #cm = new Field();
  #texts = { name: "", kg: "", cm: "" };
  #faults = { name: "", kg: "", cm: "" };
  #most = atFirst;
  #direction: Direction = "out";

  constructor(host: HTMLElement, ctx: Ctx, found: () => Packed | undefined, say: Say) {
    this.#ctx = ctx;
    this.#packed = found;
    this.#say = say;
    this.node = el("section", { class: "card stack" }, el("h2", {}, w("trip.items")), this.#list, this.#more, this.#templates, this.#total, this.#over,
      fold(w("trip.item"), el("div", { class: "fields" }, this.#name, this.#kg, this.#cm),
        el("p", {}, el("button", { type: "button", class: "button", on: { click: () => void this.#add() } }, w("trip.itemAdd")), " ", this.#keep)));
    this.#more.addEventListener("click", () => {
      this.#most += 200;
      const now = found();
      if (now !== undefined) this.show(itemsOf(now.trip), now, this.#direction);
    });
    listen(host, typed, ({ id, text }) => {
      if (!id.startsWith("item.")) return;
      this.#texts = { ...this.#texts, [id.slice(5)]: text };
      this.#faults = { name: "", kg: "", cm: "" };
      void ctx.drafts.save(`item/${ctx.path[0] ?? ""}`, this.#texts);
      this.#form();
    }, ctx.closed);
    void ctx.drafts.load(`item/${ctx.path[0] ?? ""}`).then((stored) => {
      if (typeof stored === "object" && stored !== null) this.#texts = { ...this.#texts, ...(stored as object) };
      this.#form();
    });
    this.#form();
  }

  #form(): void {
    const field = (part: Field, id: "name" | "kg" | "cm", label: string, unit: string): void => {
      part.view = { id: `item.${id}`, label, spoken: label, text: this.#texts[id], unit, range: null, fault: this.#faults[id], signed: id === "name", step: 0 };
    };
    field(this.#name, "name", w("trip.itemName"), "");
    field(this.#kg, "kg", w("trip.itemKg"), w("unit.kg"));
    field(this.#cm, "cm", w("trip.itemCm"), w("recUnit.cm"));
  }

  show(items: readonly Item[], found: Packed, direction: Direction): void {
    this.#direction = direction;
    keyed(this.#list, items.slice(0, this.#most), ({ id }) => id, () => new ItemPart(), (part, item) => {
      part.view = { item, ticked: found.ticks.get(keyOf(direction, "", `item.${item.id}`))?.ticked === true, away: () => void this.#away(item) };
    });
    setHidden(this.#more, items.length <= this.#most);
    setText(this.#more, w("things.more", { n: items.length - this.#most }));
    const { kg, cm, overKg, overCm } = totalsOf(found.trip);
    setText(this.#total, items.length === 0 ? "" : w("trip.total", { kg: plain(kg), cm: plain(cm) }));
    const limit = (field: string): number => Number(valueOf(found.trip, field) ?? 0);
    setText(this.#over, [overKg ? w("trip.overKg", { n: plain(limit("limit_kg")) }) : "", overCm ? w("trip.overCm", { n: plain(limit("limit_cm")) }) : ""].filter((each) => each !== "").join(" "));
    setHidden(this.#over, !overKg && !overCm);
    setHidden(this.#keep, items.length === 0);
    void this.#offer(items.length === 0);
  }

  // offer lists the templates while there is nothing of one's own yet.
  async #offer(empty: boolean): Promise<void> {
    const templates = empty ? await this.#ctx.book.all("template") : [];
    keyed(this.#templates, templates, ({ rec }) => rec, () => el("button", { type: "button", class: "button" }), (button, template) => {
      setText(button, w("trip.fromTemplate", { name: textOf(template, "name") }));
      button.onclick = () => void this.#save(thingsIn(template));
    });
    setHidden(this.#templates, templates.length === 0);
  }

  async #keepTemplate(): Promise<void> {
    const found = this.#packed();
    if (found === undefined) return;
    const { book } = this.#ctx;
    let made: readonly RecordState[] = [];
    const failed = await attempt(this.#ctx, async () => {
      made = await book.save([{ rec: newRec(), kind: "template", set: { name: textOf(found.trip, "name") || w("recKind.trip"), steps: withItems(itemsOf(found.trip), []) } }]);
    });
    this.#say(failed || w("trip.templateKept"), failed === "" ? () => book.remove(...made) : undefined, failed !== "");
  }

  async #add(): Promise<void> {
    const found = this.#packed();
    if (found === undefined) return;
    const unit = this.#ctx.settings.units;
    const [kg, cm] = [readTyped("trip", "limit_kg", this.#texts.kg, unit), readTyped("trip", "limit_cm", this.#texts.cm, unit)];
    const name = this.#texts.name.trim();
    this.#faults = {
      name: name === "" ? w("fault.missing") : [...name].length > longest ? w("fault.long", { n: longest }) : "",
      kg: "fault" in kg ? kg.fault : "", cm: "fault" in cm ? cm.fault : "",
    };
    this.#form();
    if ("fault" in kg || "fault" in cm || this.#faults.name !== "") return;
    const item: Item = { id: newRec(), name, ...(typeof kg.value === "number" && { kg: kg.value }), ...(typeof cm.value === "number" && { cm: cm.value }) };
    if (await this.#save([...itemsOf(found.trip), item])) {
      this.#texts = { name: "", kg: "", cm: "" };
      void this.#ctx.drafts.save(`item/${found.trip.rec}`, this.#texts);
      this.#form();
      this.#name.focus();
    }
  }

  async #away(item: Item): Promise<void> {
    const found = this.#packed();
    if (found === undefined) return;
    const before = itemsOf(found.trip);
    if (await this.#save(before.filter(({ id }) => id !== item.id))) this.#say(w("trip.deleted"), () => this.#save(before));
  }

  async #save(items: readonly Item[]): Promise<boolean> {
    const trip = await this.#ctx.book.get(this.#packed()?.trip.rec ?? "");
    if (trip === undefined) return false;
    const failed = await attempt(this.#ctx, () => this.#ctx.book.save([{ rec: trip.rec, kind: "trip", set: { items: withItems(items, goodsOf(trip)) }, shown: trip }]));
    if (failed !== "") this.#say(failed, undefined, true);
    return failed === "";
  }
}

// thingsIn are a template's things, as new ones.
function thingsIn(template: RecordState): readonly Item[] {
  const steps = valueOf(template, "steps");
  const kept: readonly unknown[] = Array.isArray(steps) ? steps : [];
  return kept.filter(isObject).flatMap((each): Item[] => (typeof each["name"] !== "string" ? [] : [{
    id: newRec(), name: each["name"], ...(typeof each["kg"] === "number" && { kg: each["kg"] }), ...(typeof each["cm"] === "number" && { cm: each["cm"] }),
  }]));
}

interface ItemView {
  readonly item: Item;
  readonly ticked: boolean;
  readonly away: () => void;
}

class ItemPart extends Part<ItemView> {
  readonly #box = el("input", { type: "checkbox" });
  readonly #name = el("span", { dir: "auto" });
  readonly #facts = el("span", { class: "quiet small" });
  readonly #away = el("button", { type: "button", class: "button", on: { click: () => this.view?.away() } }, "✕");

  protected override build(): void {
    this.setAttribute("role", "listitem");
    this.#box.addEventListener("change", () => this.act(stepTicked, { bike: "", step: `item.${this.view?.item.id ?? ""}`, ticked: this.#box.checked }));
    this.append(el("div", { class: "row spread" }, el("label", { class: "step" }, this.#box, el("span", {}, this.#name, " ", this.#facts)), this.#away));
  }

  protected override show({ item, ticked }: ItemView): void {
    this.#box.checked = ticked;
    setText(this.#name, item.name);
    const facts = [item.kg === undefined ? "" : `${plain(item.kg)} ${w("unit.kg")}`, item.cm === undefined ? "" : `${plain(item.cm)} ${w("recUnit.cm")}`];
    setText(this.#facts, facts.filter((each) => each !== "").join(" · "));
    setAttr(this.#away, "aria-label", w("trip.itemAway", { name: item.name }));
  }
}

define("rs-pack-item", ItemPart);
