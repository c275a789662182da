// The form for one measurement of one record: #/wheels/measure/<record>/<what>. What is typed is kept at once; saving
// writes the entry and the field of the record that it renews, as one.

import { type What, mountedOf, whatsOf } from "../../book/wheels/measure.ts";
import { type Form, readForm, type Typed, typedFrom, unitOf } from "../../book/wheels/measure_form.ts";
import { placeWords, valueText, whatWords } from "../../book/wheels/measure_words.ts";
import { savingOf } from "../../book/wheels/measure_save.ts";
import { describeRecord } from "../../book/value/record_words.ts";
import { newRec } from "../../log/book_log.ts";
import type { Json } from "../../log/op/json.ts";
import { type RecordState, valueOf } from "../../log/op/merge.ts";
import { chosen } from "../../ui/choice.ts";
import { el } from "../../ui/el.ts";
import { typed } from "../../ui/field.ts";
import { Outcome } from "../../ui/outcome.ts";
import { openPage } from "../../ui/page.ts";
import { listen, setHidden, setText } from "../../ui/part.ts";
import type { Ctx } from "../../ui/screen.ts";
import { listed, sentences, w } from "../../words/index.ts";
import { plain } from "../../words/number.ts";
import { attempt, follow, tellerFor } from "../shared/follow.ts";
import { ReadyHere } from "../shared/ready_here.ts";
import { topicOf } from "./guide_topics.ts";
import { takesAway } from "./measure_drop.ts";
import { MeasureFields } from "./measure_fields.ts";
import { type MeasureBook, readMeasures } from "./measured.ts";
import { MeasuredPart } from "./measured_part.ts";

export function measure(host: HTMLElement, ctx: Ctx): void {
  const [, rec = "", what = ""] = ctx.path;
  new MeasurePage(host, ctx, rec, what);
}

class MeasurePage {
  readonly #ctx: Ctx;
  readonly #rec: string;
  readonly #asked: string;
  readonly #of = el("p", { class: "quiet" });
  readonly #gone = el("p", { class: "notice care", hidden: true }, w("measure.none"));
  readonly #how = el("p");
  readonly #guide = el("a", { class: "button quiet flush" }, w("measure.toGuide"));
  readonly #fields = new MeasureFields();
  readonly #says = el("p");
  readonly #outcome = new Outcome();
  readonly #now = new MeasuredPart();
  readonly #card = el("section", { class: "card stack", hidden: true }, el("h2", {}, w("measured.title")), this.#now);
  readonly #ready: ReadyHere; // a rotor past its mark is told here as everywhere
  readonly #form: HTMLElement;
  readonly #page: HTMLElement;
  readonly #again: () => Promise<void>;
  #typed: Typed = {};
  #saving = false; // a second tap saves nothing more
  #pressed = false; // what is missing is said once somebody wanted to save
  #loaded: Promise<void> | undefined;
  #book: MeasureBook = { state: undefined, entries: [], wheels: [], bikes: [], groups: [] };
  #gauges: readonly { value: string; label: string }[] = [];

  constructor(host: HTMLElement, ctx: Ctx, rec: string, what: string) {
    this.#ctx = ctx;
    this.#rec = rec;
    this.#asked = what;
    openPage(ctx, w("place.wheels"), { href: `#/wheels/${rec}`, words: w("measure.record") });
    const save = el("button", { type: "button", class: "button primary", on: { click: () => void this.#save() } }, w("measure.save"));
    this.#form = el("section", { class: "card stack", hidden: true }, this.#of, this.#how, el("p", {}, this.#guide), this.#fields, this.#says, save, this.#outcome);
    this.#ready = new ReadyHere(ctx);
    ctx.head.append(this.#ready.line);
    this.#page = el("div", { class: "stack looking" }, this.#gone, this.#ready.card, this.#form, this.#card);
    host.append(this.#page);
    listen(host, typed, ({ id, text }) => this.#type(id, text), ctx.closed);
    listen(host, chosen, ({ name, value }) => this.#type(name, value), ctx.closed);
    this.#again = follow(ctx, () => this.#look(), (words) => (this.#outcome.view = { words, failed: true }));
    takesAway(ctx, this.#card, this.#outcome, rec, this.#again);
  }

  get #draft(): string {
    return `measure/${this.#rec}/${this.#asked}`;
  }

  get #what(): What | undefined {
    return whatsOf(this.#book.state?.kind ?? "").find((each) => each === this.#asked);
  }

  async #look(): Promise<void> {
    await (this.#loaded ??= this.#load());
    this.#book = await readMeasures(this.#ctx, this.#rec);
    const { state } = this.#book;
    const teller = await tellerFor(this.#ctx, state === undefined ? [] : [state]);
    const gauges = await this.#ctx.book.all("gauge");
    if (this.#ctx.closed.aborted) return;
    this.#gauges = gauges.filter(({ rec }) => rec !== this.#rec).map((each) => ({ value: each.rec, label: describeRecord(each, teller) }));
    this.#page.classList.remove("looking");
    this.#ready.at(state?.kind === "wheel" || state?.kind === "bike" ? state.rec : "");
    if (state !== undefined) setText(this.#of, w("measure.of", { name: describeRecord(state, teller) }));
    this.#show();
  }

  async #load(): Promise<void> {
    this.#typed = { ...typedFrom(await this.#ctx.drafts.load(this.#draft)), ...this.#typed };
  }

  #type(id: string, text: string): void {
    this.#typed = { ...this.#typed, [id]: text, unit: unitOf(this.#typed, this.#ctx.settings.units) };
    void this.#ctx.drafts.save(this.#draft, this.#typed);
    const before = this.#says.textContent;
    this.#show();
    const says = this.#says.textContent;
    if (says !== before && says !== "") this.#ctx.say(says);
  }

  #read(what: What): Form {
    const { state } = this.#book;
    const min = valueOf(state, "rotor_min_mm");
    const known = { unit: unitOf(this.#typed, this.#ctx.settings.units), now: Date.now(), fitted: valueOf(state, "fitted"), min: typeof min === "number" ? plain(min) : "" };
    return readForm(what, this.#typed, known);
  }

  #show(): void {
    const what = this.#what;
    setHidden(this.#gone, what !== undefined);
    setHidden(this.#form, what === undefined);
    setHidden(this.#card, what === undefined);
    if (what === undefined) return;
    const form = this.#told(this.#read(what));
    const group = this.#book.groups.find((each) => each.what === what);
    this.#ctx.heading(w("measure.title", { what: whatWords(what) }));
    setText(this.#how, w(`measureHow.${what}`));
    const topic = topicOf(what);
    setHidden(this.#guide, topic === undefined);
    this.#guide.href = `#/wheels/guide/${topic ?? ""}/${this.#rec}`;
    this.#fields.view = { what, form, unit: unitOf(this.#typed, this.#ctx.settings.units), gauges: this.#gauges };
    setText(this.#says, form.says);
    setHidden(this.#says, form.says === "");
    if (group !== undefined) this.#now.view = { group, link: false };
  }

  // told says below the field what is missing.
  #told(form: Form): Form {
    const { missing, faults } = form;
    return !this.#pressed || missing === "" || missing in faults ? form : { ...form, faults: { ...faults, [missing]: w("fault.missing") } };
  }

  async #save(): Promise<void> {
    const [what, state] = [this.#what, this.#book.state];
    if (what === undefined || state === undefined || this.#saving) return;
    const form = this.#read(what);
    if (form.missing !== "") return this.#miss(form.missing);
    this.#saving = true;
    await this.#write(what, form, state);
    this.#saving = false;
  }

  async #write(what: What, form: Form, state: RecordState): Promise<void> {
    const { entries, wheels, bikes } = this.#book;
    const place = { state, entries, mounted: mountedOf(state.rec, state.kind, wheels, bikes), gauge: form.texts["gauge"] ?? "", now: Date.now() };
    const saving = savingOf(what, form, place, newRec);
    let after: readonly RecordState[] = [];
    const failed = await attempt(this.#ctx, async () => {
      after = await this.#ctx.book.save(saving.changes, { name: this.#draft, value: {} });
    });
    if (failed !== "") return this.#say(failed, true);
    const kept = this.#typed;
    this.#keep({});
    await this.#again();
    this.#outcome.view = { words: savedWords(what, form, saving.older, this.#ctx.settings.units), undo: () => void this.#undo(after, saving.before, kept) };
  }

  #miss(id: string): void {
    this.#pressed = true;
    this.#show();
    const field = id === "day" ? w("measure.day") : id === "place" ? w("measure.place") : w(`measureSlot.${id as "mine"}`);
    this.#say(w("measure.missing", { field }), true);
    this.#fields.go(id);
  }

  // undo puts the earlier values back, takes the entries away, and gives back what was typed.
  async #undo(after: readonly RecordState[], before: Readonly<Record<string, Json>>, kept: Typed): Promise<void> {
    const { book } = this.#ctx;
    const [entries, renewed] = [after.filter(({ kind }) => kind === "measure"), after.find(({ kind }) => kind !== "measure")];
    const failed = await attempt(this.#ctx, async () => {
      if (renewed !== undefined) await book.save([{ rec: renewed.rec, kind: renewed.kind, set: before, shown: renewed }]);
      await book.remove(...entries);
    });
    if (failed === "" && Object.keys(this.#typed).length === 0) this.#keep(kept);
    await this.#again();
    this.#say(failed || w("measure.undone"), failed !== "");
  }

  #keep(texts: Typed): void {
    this.#pressed = false;
    this.#typed = texts;
    void this.#ctx.drafts.save(this.#draft, texts);
  }

  #say(words: string, failed: boolean): void {
    this.#outcome.view = { words, failed };
  }
}

function savedWords(what: What, { results }: Form, older: boolean, unit: Ctx["settings"]["units"]): string {
  const values = results.map(({ field, value, side, place }) => {
    const label = side === undefined ? placeWords(place ?? "") : w(`side.${side}`);
    return label === "" ? valueText(field, value, unit) : w("field.sided", { side: label, label: valueText(field, value, unit) });
  });
  const saved = w("measure.saved", { values: listed(values) });
  if (older) return sentences([saved, w("measure.older")]);
  return what === "rotor_runout" || what === "rim_runout" || what === "as_built" ? saved : sentences([saved, w(`measureUsed.${what}`)]);
}
