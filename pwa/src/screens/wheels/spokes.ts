// Listening to a wheel's spokes: #/wheels/spokes/<wheel>. What is typed and heard is kept at once; saving writes the entry.

import "./spokes.css";
import { sureNote } from "../../contract/contract.ts";
import { mountedOf } from "../../book/wheels/measure.ts";
import {
  after, askedOfWheel, type Build, buildOf, flanges, type Heard, hzRange, lacingQuestion, type Lacing, lastSpokes, noSpokes, perSide, rangeWords, readHz, readSpokesDraft, type SpokesDraft,
  type Spot, withHeard,
} from "../../book/wheels/spokes.ts";
import { spokesChanges } from "../../book/wheels/spokes_save.ts";
import { type SpokeShown, type SpokesShown, spokesShown, spokeWords } from "../../book/wheels/spokes_view.ts";
import { typedText } from "../../book/value/typed_value.ts";
import { describeRecord } from "../../book/value/record_words.ts";
import { newRec } from "../../log/book_log.ts";
import { type RecordState, valueOf } from "../../log/op/merge.ts";
import { el } from "../../ui/el.ts";
import { Field, typed } from "../../ui/field.ts";
import { fold } from "../../ui/fold.ts";
import { keyed } from "../../ui/keyed.ts";
import { Outcome } from "../../ui/outcome.ts";
import { openPage } from "../../ui/page.ts";
import { listen, setAttr, setHidden, setText } from "../../ui/part.ts";
import type { Ctx } from "../../ui/screen.ts";
import { w } from "../../words/index.ts";
import { fixed } from "../../words/number.ts";
import { attempt, follow, tellerFor } from "../shared/follow.ts";
import { Ear } from "./spokes_ear.ts";
import { SpokesPicture } from "./spokes_picture.ts";

export function spokes(host: HTMLElement, ctx: Ctx): void {
  const [, rec = ""] = ctx.path;
  new SpokesPage(host, ctx, rec);
}

class SpokesPage {
  readonly #ctx: Ctx;
  readonly #rec: string;
  readonly #of = el("p", { class: "quiet" });
  readonly #none = el("p", { class: "notice care", hidden: true }, w("spokes.none"));
  readonly #fields = new Map(askedOfWheel.map(({ id }) => [id, new Field()] as const));
  readonly #buildCard = fold(w("spokes.build"), el("p", { class: "small" }, w("spokes.buildHow")), ...this.#fields.values());
  readonly #first = el("p", { class: "notice care" }, w("spokes.countFirst"));
  readonly #spot = el("p", { class: "spot" });
  readonly #all = el("p", { class: "notice" });
  readonly #note = el("p", { class: "note", role: "status" });
  readonly #meter = el("meter", { min: 0, max: 1, "aria-label": w("spokes.level") });
  readonly #listen = press("button primary big", w("spokes.listen"), () => void this.#toggle());
  readonly #hz = new Field();
  readonly #hear = el("div", { class: "hearing" });
  readonly #picture = new SpokesPicture();
  readonly #sides = el("ul", { class: "unmarked stack" });
  readonly #worst = el("div", { class: "stack" });
  readonly #aid = el("section", { class: "notice stack" });
  readonly #since = el("ul", { class: "unmarked stack small" });
  readonly #list = el("ul", { class: "unmarked stack" });
  readonly #outcome = new Outcome();
  readonly #page: HTMLElement;
  readonly #again: () => Promise<void>;
  #draft: SpokesDraft = noSpokes;
  #hzText = "";
  #hzFault = "";
  #wheel: RecordState | undefined;
  #entries: readonly RecordState[] = [];
  #lacing: { readonly of: readonly Heard[]; readonly answer: Lacing } | undefined;
  #ear: Ear | undefined;
  #loaded: Promise<void> | undefined;
  #saving = false;
  #opened = false;

  constructor(host: HTMLElement, ctx: Ctx, rec: string) {
    this.#ctx = ctx;
    this.#rec = rec;
    openPage(ctx, w("spokes.title"), { href: `#/wheels/${rec}`, words: w("measure.record") });
    this.#hear.append(this.#all, this.#spot, el("p", {}, w("spokes.how")), el("p", { class: "small" }, w("spokes.ask")), this.#listen, this.#meter, this.#note,
      this.#hz, el("div", { class: "row" }, press("button", w("spokes.keep"), () => this.#keepTyped()), press("button", w("spokes.slack"), () => this.#heard(null))),
      el("div", { class: "row" }, press("button", w("spokes.again"), () => this.#back()), press("button", w("spokes.other"), () => this.#otherSide())));
    this.#page = el("div", { class: "stack looking" }, this.#none, this.#of, el("p", { class: "notice care" }, w("spokes.care")), el("div", { class: "columns" },
      el("div", { class: "stack" },
        this.#buildCard,
        el("section", { class: "card stack" }, el("h2", {}, w("spokes.listenTitle")), this.#first, this.#hear)),
      el("div", { class: "stack" },
        el("section", { class: "card stack" }, el("h2", {}, w("spokes.result")), this.#picture, this.#worst, this.#sides, this.#aid, this.#since,
          el("div", { class: "row" }, press("button primary", w("spokes.save"), () => void this.#save()), press("button", w("spokes.fresh"), () => this.#fresh())), this.#outcome,
          fold(w("spokes.each"), this.#list)),
        el("section", { class: "card stack small" }, el("p", {}, w("spokes.why")), el("p", {}, w("spokes.tested"))))));
    host.append(this.#page);
    listen(host, typed, ({ id, text }) => this.#type(id, text), ctx.closed);
    ctx.closed.addEventListener("abort", () => this.#close());
    this.#again = follow(ctx, () => this.#look(), (words) => (this.#outcome.view = { words, failed: true }));
  }

  get #build(): Build {
    return buildOf(this.#draft.texts, this.#wheel);
  }

  get #name(): string {
    return `spokes/${this.#rec}`;
  }

  async #look(): Promise<void> {
    await (this.#loaded ??= this.#ctx.drafts.load(this.#name).then((stored) => void (this.#draft = readSpokesDraft(stored))));
    const { book } = this.#ctx;
    await book.ready;
    const [state, entries] = await Promise.all([book.get(this.#rec), book.all("measure")]);
    const wheel = state?.kind === "wheel" && !state.deleted && !state.erased ? state : undefined;
    const teller = await tellerFor(this.#ctx, wheel === undefined ? [] : [wheel]);
    if (this.#ctx.closed.aborted) return;
    this.#page.classList.remove("looking");
    this.#wheel = wheel;
    this.#entries = entries;
    setHidden(this.#none, wheel !== undefined);
    for (const part of [...this.#page.children].slice(1)) setHidden(part as HTMLElement, wheel === undefined);
    if (wheel === undefined) return;
    if (!this.#opened) this.#buildCard.open = perSide(this.#build) === 0; // asked once, then out of the way
    this.#opened = true;
    setText(this.#of, w("spokes.of", { name: describeRecord(wheel, teller) }));
    await this.#reckon();
  }

  #type(id: string, text: string): void {
    if (id === "hz") {
      this.#hzText = text;
      this.#hzFault = "";
      return this.#show();
    }
    this.#keep({ ...this.#draft, texts: { ...this.#draft.texts, [id]: text } });
  }

  #keep(draft: SpokesDraft): void {
    this.#draft = draft;
    void this.#ctx.drafts.save(this.#name, draft);
    void this.#reckon();
  }

  // reckon asks how the spokes stand; the page shows at once what it has.
  async #reckon(): Promise<void> {
    this.#show();
    const { heard } = this.#draft;
    const question = lacingQuestion(heard, this.#build);
    if (question === undefined) {
      this.#lacing = undefined;
      return this.#show();
    }
    const said = await this.#ctx.calc.latest("lacing", question).catch(() => undefined);
    if (said?.answer === undefined || this.#draft.heard !== heard) return;
    this.#lacing = { of: heard, answer: said.answer };
    this.#show();
  }

  #show(): void {
    const build = this.#build;
    for (const asked of askedOfWheel) {
      const field = this.#fields.get(asked.id);
      const range = rangeWords(asked);
      const text = this.#draft.texts[asked.id] ?? typedText("wheel", asked.field, valueOf(this.#wheel, asked.field), this.#ctx.settings.units);
      const hint = asked.id === "left" || asked.id === "right" ? w("spokes.askFree", { range }) : asked.id === "most" ? w("spokes.askMost", { range }) : range;
      const label = w(`spokes.ask.${asked.id}`);
      if (field !== undefined) {
        field.view = { id: asked.id, label, spoken: label, text, unit: asked.unit === "" ? "" : asked.unit === "mm" ? w("unit.mm") : w("recUnit.n"), range: hint, fault: build.faults[asked.id] ?? "", signed: false, step: 0 };
      }
    }
    const each = perSide(build);
    setHidden(this.#first, each > 0);
    setHidden(this.#hear, each === 0);
    const { at, heard } = this.#draft;
    const all = heard.filter(({ n }) => n <= each).length === 2 * each;
    setText(this.#spot, w(`spokes.now.${at.side}`, { n: at.n, all: each }));
    setText(this.#all, w("spokes.all", { n: 2 * each }));
    setHidden(this.#all, !all || each === 0);
    this.#hz.view = { id: "hz", label: w("spokes.typed"), spoken: w("spokes.typed"), text: this.#hzText, unit: w("spokes.hertz"), range: hzRange(), fault: this.#hzFault, signed: false, step: 0 };
    setHidden(this.#meter, this.#ear === undefined);
    setText(this.#listen, this.#ear === undefined ? w("spokes.listen") : w("spokes.stop"));
    this.#result(build);
  }

  #result(build: Build): void {
    const { heard, at } = this.#draft;
    const before = lastSpokes(this.#entries, this.#rec);
    const lacing = this.#lacing?.of === heard ? this.#lacing.answer : undefined;
    const shown: SpokesShown = spokesShown({ heard, build, lacing, before, now: Date.now() });
    this.#picture.view = { shown, at: `${at.side} ${at.n}` };
    const worst = heard.length === 0 ? [{ severity: "note" as const, text: w("spokes.nothing") }] : shown.worst;
    keyed(this.#worst, worst, ({ text }) => text, () => el("p"), (node, { severity, text }) => {
      setAttr(node, "class", severity === "note" ? "" : `notice ${severity}`);
      setText(node, text);
    });
    lines(this.#sides, shown.sides);
    lines(this.#since, shown.since);
    this.#aid.replaceChildren(...(shown.aid.length === 0 ? [] : [el("h3", {}, w("spokes.aidTitle")), ...shown.aid.map((text) => el("p", {}, text))]));
    setHidden(this.#aid, shown.aid.length === 0);
    keyed(this.#list, shown.spokes.filter(({ line }) => line !== ""), ({ key }) => key, () => el("li", {}, el("button", { type: "button", class: "button flush" })), (node, spoke) => this.#line(node, spoke));
  }

  #line(node: HTMLElement, { side, n, line }: SpokeShown): void {
    const button = node.firstElementChild as HTMLButtonElement;
    setText(button, line);
    setAttr(button, "aria-label", w("spokes.linePick", { line }));
    button.onclick = () => this.#keep({ ...this.#draft, at: { side, n } });
  }

  async #toggle(): Promise<void> {
    if (this.#ear !== undefined) {
      this.#close();
      this.#say("");
      return this.#show();
    }
    try {
      const ear = await Ear.open({ level: (share) => (this.#meter.value = share), pluck: (samples, rate) => void this.#pluck(samples, rate) });
      if (this.#ctx.closed.aborted) return ear.close();
      this.#ear = ear;
      this.#say(w("spokes.listening"));
    } catch (error) {
      this.#say(error instanceof DOMException && error.name === "NotAllowedError" ? w("spokes.denied") : w("spokes.noMicrophone"));
    }
    this.#show();
  }

  #close(): void {
    this.#ear?.close();
    this.#ear = undefined;
  }

  // pluck asks the calculator for the note; one that is not sure is asked for again.
  async #pluck(samples: readonly number[], rate: number): Promise<void> {
    const { values } = this.#build;
    const length = values.left ?? values.right ?? 280;
    const said = await this.#ctx.calc.ask("spokes", { samples, rate, length_mm: length, diameter_mm: values.mm ?? 2 }).catch(() => undefined);
    if (this.#ear === undefined) return;
    const answer = said?.answer;
    if (answer === undefined || answer.hz === null) return this.#say(w("spokes.noNote"));
    if (answer.confidence < sureNote) return this.#say(w("spokes.unsure"));
    this.#heard(Math.round(answer.hz * 100) / 100);
  }

  #keepTyped(): void {
    const read = readHz(this.#hzText);
    if (typeof read === "object") {
      this.#hzFault = read.fault;
      this.#show();
      return this.#hz.focus();
    }
    this.#hzText = "";
    this.#heard(read);
  }

  #heard(hz: number | null): void {
    const { at, heard } = this.#draft;
    const next = withHeard(heard, { ...at, hz });
    this.#keep({ ...this.#draft, heard: next, at: after(at, next, perSide(this.#build)) });
    const spoke = spokeWords(at);
    this.#say(hz === null ? w("spokes.lineSlack", { spoke }) : w("spokes.heard", { spoke, hz: fixed(hz, 1) }));
  }

  // back goes to the spoke before.
  #back(): void {
    const { side, n } = this.#draft.at;
    this.#go({ side, n: n > 1 ? n - 1 : Math.max(1, perSide(this.#build)) });
  }

  #otherSide(): void {
    const side = flanges.find((each) => each !== this.#draft.at.side) ?? "left";
    this.#go({ side, n: 1 });
  }

  #go(at: Spot): void {
    this.#keep({ ...this.#draft, at });
  }

  #say(words: string): void {
    setText(this.#note, words);
  }

  #fresh(): void {
    const kept = this.#draft;
    this.#keep({ ...kept, heard: [], at: noSpokes.at });
    this.#outcome.view = { words: w("spokes.nothing"), undo: () => this.#keep(kept) };
  }

  async #save(): Promise<void> {
    const { heard } = this.#draft;
    const [wheel, build] = [this.#wheel, this.#build];
    if (wheel === undefined || this.#saving) return;
    if (heard.length === 0) return void (this.#outcome.view = { words: w("spokes.nothing"), failed: true });
    this.#saving = true;
    const [wheels, bikes] = await Promise.all([this.#ctx.book.all("wheel"), this.#ctx.book.all("bike")]);
    const changes = spokesChanges(heard, build, wheel, mountedOf(wheel.rec, "wheel", wheels, bikes), Date.now(), newRec);
    let saved: readonly RecordState[] = [];
    const failed = await attempt(this.#ctx, async () => {
      saved = await this.#ctx.book.save(changes, { name: this.#name, value: {} });
    });
    this.#saving = false;
    if (failed !== "") return void (this.#outcome.view = { words: failed, failed: true });
    const kept = this.#draft;
    this.#draft = noSpokes;
    this.#close();
    await this.#again();
    const slack = heard.some(({ hz }) => hz === null);
    this.#outcome.view = { words: w(slack ? "spokes.savedSlack" : "spokes.saved"), undo: () => void this.#undo(saved, kept) };
  }

  // undo takes the entries away again and gives back what was heard.
  async #undo(saved: readonly RecordState[], kept: SpokesDraft): Promise<void> {
    const failed = await attempt(this.#ctx, () => this.#ctx.book.remove(...saved.filter(({ kind }) => kind !== "wheel")));
    if (failed === "" && this.#draft.heard.length === 0) this.#keep(kept);
    await this.#again();
    this.#outcome.view = { words: failed || w("spokes.undone"), failed: failed !== "" };
  }
}

function press(kind: string, words: string, click: () => void): HTMLButtonElement {
  return el("button", { type: "button", class: kind, on: { click } }, words);
}

function lines(list: HTMLElement, texts: readonly string[]): void {
  keyed(list, texts, (text) => text, () => el("li"), setText);
  setHidden(list, texts.length === 0);
}
