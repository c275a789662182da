// Who uses this phone, and what it is called: both stand beside whatever is entered here.

import "./me.css";
import { describeRecord, type Teller } from "../../book/value/record_words.ts";
import { newRec } from "../../log/book_log.ts";
import { type RecordState, valueOf } from "../../log/op/merge.ts";
import { chosen } from "../../ui/choice.ts";
import { el } from "../../ui/el.ts";
import { listen, setText } from "../../ui/part.ts";
import { Picker } from "../../ui/picker.ts";
import type { Ctx } from "../../ui/screen.ts";
import { w } from "../../words/index.ts";
import { byName } from "../../words/order.ts";
import { attempt, follow, tellerFor } from "../shared/follow.ts";

const longest = 60; // characters of a name

export class MeCard {
  readonly node: HTMLElement;
  readonly #ctx: Ctx;
  readonly #who = el("div");
  readonly #name = entry("me-name");
  readonly #phone = entry("me-phone");
  readonly #said = el("p", { role: "status" });
  readonly #again: () => Promise<void>;
  #options = ""; // the ones on the page, to know when they have changed
  #me: RecordState | undefined; // as its name stands in the field
  #device: RecordState | undefined;

  constructor(ctx: Ctx) {
    this.#ctx = ctx;
    const hint = el("p", { class: "quiet small", id: "me-hint" }, w("me.hint"));
    this.#name.setAttribute("aria-describedby", hint.id);
    this.node = el("section", { class: "card stack me" },
      el("h2", {}, w("me.title")), this.#who,
      el("div", { class: "fields" },
        el("div", { class: "named" }, el("label", { for: this.#name.id }, w("me.name")), this.#name, hint),
        el("div", { class: "named" }, el("label", { for: this.#phone.id }, w("me.phone")), this.#phone)),
      this.#said);
    this.#showWho([{ value: "", label: w("me.nobody") }], "");
    this.#name.addEventListener("change", () => void this.#rename());
    this.#phone.addEventListener("change", () => void this.#renamePhone());
    listen(this.#who, chosen, ({ value }) => void this.#try(() => ctx.book.setMe(value)), ctx.closed);
    this.#again = follow(ctx, () => this.#look(), (words) => setText(this.#said, words));
  }

  async #look(): Promise<void> {
    const { book, closed } = this.#ctx;
    const teller = await tellerFor(this.#ctx, [], new Set([book.me, book.device].filter((rec) => rec !== "")));
    if (closed.aborted) return;
    const [me, device] = [teller.find(book.me), teller.find(book.device)];
    const people = await book.all("person");
    this.#showWho(optionsOf(me === undefined || people.includes(me) ? people : [...people, me], teller), book.me);
    if (fill(this.#name, me, "name")) this.#me = me;
    if (fill(this.#phone, device, "label")) this.#device = device;
  }

  // A native list shows what it was made with: another set of people is another list.
  #showWho(options: readonly { value: string; label: string }[], value: string): void {
    const written = JSON.stringify(options);
    const view = { name: "me", label: w("me.who"), spoken: w("me.who"), options, value };
    const old = this.#who.firstChild;
    if (written === this.#options && old instanceof Picker) {
      old.view = view;
      return;
    }
    const had = this.#who.contains(document.activeElement);
    const picker = new Picker();
    picker.view = view;
    this.#who.replaceChildren(picker);
    this.#options = written;
    if (had) picker.querySelector("select")?.focus();
  }

  // rename names the person who uses this phone; when nobody does yet, there is a new one.
  async #rename(): Promise<void> {
    const { book } = this.#ctx;
    const name = this.#name.value.trim();
    const me = this.#me;
    if (me !== undefined) {
      return this.#try(async () => {
        [this.#me] = await book.save([{ rec: me.rec, kind: me.kind, set: { name }, shown: me }]);
      });
    }
    if (name === "") return;
    const rec = newRec();
    await this.#try(async () => {
      [this.#me] = await book.save([{ rec, kind: "person", set: { name } }]);
      await book.setMe(rec);
    });
  }

  async #renamePhone(): Promise<void> {
    const { book } = this.#ctx;
    const device = this.#device;
    const set = { label: this.#phone.value.trim() };
    await this.#try(async () => {
      [this.#device] = await book.save([{ rec: book.device, kind: "device", set, ...(device !== undefined && { shown: device }) }]);
    });
  }

  async #try(work: () => Promise<unknown>): Promise<void> {
    const failed = await attempt(this.#ctx, work);
    await this.#again();
    setText(this.#said, failed === "" ? w("me.saved") : failed);
  }
}

function entry(id: string): HTMLInputElement {
  return el("input", { class: "entry", id, type: "text", maxlength: longest, autocomplete: "off", spellcheck: "false", enterkeyhint: "done" });
}

// fill shows a name, unless one is being typed: then what came meanwhile is not seen, and not replaced by the edit.
function fill(input: HTMLInputElement, state: RecordState | undefined, field: string): boolean {
  if (document.activeElement === input) return false;
  const value = valueOf(state, field);
  const text = typeof value === "string" ? value : "";
  if (input.value !== text) input.value = text;
  return true;
}

function optionsOf(people: readonly RecordState[], teller: Teller): { value: string; label: string }[] {
  const named = people.map((state) => ({ value: state.rec, label: valueOf(state, "name") ? teller.nameOf(state.rec) : describeRecord(state, teller) }));
  return [{ value: "", label: w("me.nobody") }, ...named.sort((a, b) => byName(a.label, b.label))];
}
