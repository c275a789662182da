// What was done goes into the book, as one: the tyre on the wheel, what is new, the sealant; with what comes after it.

import { directions, readDone } from "../../../book/fit/done_form.ts";
import { fitChanges } from "../../../book/fit/done_save.ts";
import { draftName, type FitDraft } from "../../../book/fit/fit_draft.ts";
import { dayOf } from "../../../book/wheels/measure_days.ts";
import { mountedOf } from "../../../book/wheels/measure.ts";
import { undoneChanges } from "../../../book/wheels/swap.ts";
import { optionWords, fieldWords } from "../../../book/value/kind_words.ts";
import { shortNameOf } from "../../../book/value/record_words.ts";
import { growDays } from "../../../contract/contract.ts";
import { newRec } from "../../../log/book_log.ts";
import { type RecordState, valueOf } from "../../../log/op/merge.ts";
import { Choice, chosen } from "../../../ui/choice.ts";
import { el } from "../../../ui/el.ts";
import { DayEntry } from "../../../ui/entry.ts";
import { Field, typed } from "../../../ui/field.ts";
import { Outcome } from "../../../ui/outcome.ts";
import { openPage } from "../../../ui/page.ts";
import { listen, setHidden, setText } from "../../../ui/part.ts";
import type { Ctx } from "../../../ui/screen.ts";
import { w } from "../../../words/index.ts";
import { plain } from "../../../words/number.ts";
import { attempt, follow } from "../../shared/follow.ts";
import { type FitBook, readFit } from "./fit_book.ts";
import { Gate } from "./pair.ts";

export function doneOf(host: HTMLElement, ctx: Ctx, rec: string): void {
  new DonePage(host, ctx, rec);
}

class DonePage {
  readonly #ctx: Ctx;
  readonly #rec: string;
  readonly #page = el("div", { class: "stack looking" });
  readonly #gate = new Gate();
  readonly #tyre = el("p", {}, el("strong"));
  readonly #day = new DayEntry();
  readonly #direction = new Choice();
  readonly #valve = new Choice();
  readonly #tape = new Choice();
  readonly #layers = new Field();
  readonly #tapeMm = new Field();
  readonly #sealant = new Field();
  readonly #outcome = new Outcome();
  readonly #form: HTMLElement;
  readonly #measure = el("a", { class: "button primary" }, w("fit.measureNow"));
  readonly #due = el("a", { class: "button" }, w("fit.toDue"));
  readonly #then = el("section", { class: "card stack", hidden: true }, el("p", {}, this.#measure), el("p", { class: "small" }, w("fit.measureAgain", { n: growDays })),
    el("p", { class: "row" }, el("a", { class: "button", href: "#/pressure" }, w("fit.toPressure")), this.#due));
  readonly #again: () => Promise<void>;
  #book: FitBook | undefined;
  #texts: Readonly<Record<string, string>> | undefined;
  #saving = false;
  #saved = false; // the form makes room for what comes after

  constructor(host: HTMLElement, ctx: Ctx, rec: string) {
    this.#ctx = ctx;
    this.#rec = rec;
    openPage(ctx, w("fit.done"), { href: `#/wheels/fit/${rec}`, words: w("fit.back") });
    const save = el("button", { type: "button", class: "button primary big", on: { click: () => void this.#save() } }, w("fit.save"));
    this.#form = el("section", { class: "card stack", hidden: true }, this.#tyre, this.#gate, this.#day, this.#direction, this.#valve, this.#tape, el("div", { class: "fields" }, this.#layers, this.#tapeMm), el("div", { class: "fields" }, this.#sealant), el("p", {}, save));
    this.#page.append(this.#form, this.#outcome, this.#then);
    host.append(this.#page);
    listen(host, typed, ({ id, text }) => this.#type(id, text), ctx.closed);
    listen(host, chosen, ({ name, value }) => this.#type(name, value), ctx.closed);
    this.#again = follow(ctx, () => this.#look(), (words) => (this.#outcome.view = { words, failed: true }));
  }

  async #look(): Promise<void> {
    const at = await readFit(this.#ctx, this.#rec);
    if (this.#ctx.closed.aborted) return;
    this.#page.classList.remove("looking");
    this.#book = at;
    this.#texts ??= at.draft.texts;
    this.#show();
  }

  #type(id: string, text: string): void {
    this.#texts = { ...this.#texts, [id]: text };
    this.#keep();
    this.#show();
  }

  #keep(): void {
    const draft = this.#book?.draft;
    if (draft !== undefined) void this.#ctx.drafts.save(draftName(this.#rec), { ...draft, texts: this.#texts ?? {} });
  }

  #show(): void {
    const at = this.#book;
    const texts = this.#texts ?? {};
    setHidden(this.#form, this.#saved || at?.wheel === undefined || at.tyre === undefined);
    setHidden(this.#then, !this.#saved);
    if (at?.wheel === undefined) return this.#say(w("fit.gone"), true);
    if (at.tyre === undefined) return this.#say(w("fit.noTyre"), true);
    this.#ctx.heading(`${w("fit.done")} · ${shortNameOf(at.wheel, at.teller)}`);
    setText(this.#tyre.firstElementChild ?? this.#tyre, w("fit.doneTyre", { name: shortNameOf(at.tyre, at.teller) }));
    this.#gate.view = at.gate;
    setHidden(this.#gate, at.gate.open);
    const { faults } = readDone(texts, dayOf(Date.now()), this.#ctx.settings.units);
    const choice = (part: Choice, name: string, legend: string, options: readonly { readonly value: string; readonly label: string }[], usual: string): void => {
      part.view = { name, legend, options, value: texts[name] ?? usual };
    };
    const kept = (["kept", "new"] as const).map((value) => ({ value, label: w(`fit.part.${value}`) }));
    this.#day.view = { id: "day", label: w("fit.doneDay"), text: texts["day"] ?? dayOf(Date.now()), fault: faults["day"] ?? "" };
    choice(this.#direction, "direction", fieldWords("tyre", "direction"), [...directions.map((value) => ({ value, label: optionWords("direction", value) })), { value: "", label: w("things.unknown") }], "");
    choice(this.#valve, "valve", w("fit.doneValve"), kept, "kept");
    choice(this.#tape, "tape", w("fit.doneTape"), kept, "kept");
    this.#fields(at, texts, faults);
  }

  #fields({ seat, wheel }: FitBook, texts: Readonly<Record<string, string>>, faults: Readonly<Record<string, string>>): void {
    const field = (part: Field, id: string, label: string, unit: string, range: string | null): void => {
      part.view = { id, label, spoken: label, text: texts[id] ?? "", unit, range, fault: faults[id] ?? "", signed: false, step: 0 };
    };
    field(this.#layers, "layers", fieldWords("wheel", "tape_layers"), "", null);
    field(this.#tapeMm, "tapeMm", fieldWords("wheel", "tape_mm"), w("unit.mm"), null);
    for (const part of [this.#layers, this.#tapeMm]) setHidden(part, texts["tape"] !== "new");
    const amount = seat?.sealant_ml ?? null;
    field(this.#sealant, "sealant", w("fit.sealantPut"), w("unit.ml"), amount === null ? null : w("fit.sealantHint", { low: plain(amount[0]), high: plain(amount[1]) }));
    setHidden(this.#sealant, valueOf(wheel, "setup") === "tube");
  }

  async #save(): Promise<void> {
    const at = this.#book;
    if (at?.wheel === undefined || at.tyre === undefined || this.#saving) return;
    const { done, faults } = readDone(this.#texts ?? {}, dayOf(Date.now()), this.#ctx.settings.units);
    if (done === undefined) return this.#say(Object.values(faults)[0] ?? "", true);
    this.#saving = true;
    const { wheel, tyre, wheels, tyres, bikes, teller } = at;
    const mounted = mountedOf(wheel.rec, "wheel", wheels, bikes);
    const changes = fitChanges(done, { wheel, tyre, wheels, tyres, mounted, name: shortNameOf(tyre, teller) }, newRec);
    let made: readonly RecordState[] = [];
    const failed = await attempt(this.#ctx, async () => {
      made = await this.#ctx.book.save(changes, { name: draftName(this.#rec), value: {} });
    });
    this.#saving = false;
    if (failed !== "") return this.#say(failed, true);
    const before = { ...at.draft, texts: this.#texts ?? {} };
    this.#texts = {};
    this.#saved = true;
    await this.#again();
    const measured = typeof valueOf(made.find(({ rec }) => rec === tyre.rec), "measured_mm") === "number";
    this.#outcome.view = { words: measured ? w("fit.savedKept") : w("fit.saved"), undo: () => void this.#undo(changes, made, before) };
    this.#measure.href = `#/wheels/measure/${tyre.rec}/width`;
    setHidden(this.#due, mounted.bike === undefined);
    this.#due.href = `#/checks/due/${mounted.bike ?? ""}`;
  }

  // undo puts back what was there, takes the entries away, and gives back what was typed.
  async #undo(changes: Parameters<typeof undoneChanges>[0], made: readonly RecordState[], before: FitDraft): Promise<void> {
    const { book, drafts } = this.#ctx;
    const described = changes.filter(({ shown }) => shown !== undefined);
    const failed = await attempt(this.#ctx, async () => {
      await book.save(undoneChanges(described, made.slice(0, described.length)));
      await book.remove(...made.slice(described.length));
      await drafts.save(draftName(this.#rec), before);
    });
    this.#texts = before.texts;
    this.#saved = failed !== "";
    await this.#again();
    this.#say(failed || w("fit.undone"), failed !== "");
  }

  #say(words: string, failed: boolean): void {
    this.#outcome.view = { words, failed };
  }
}

