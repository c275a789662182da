// Holds the draft, asks the calculator after every change, and shows the newest answer.

import { emptyDraft, maxSteps, type PressureDraft, readDraft } from "../../book/pressure/draft.ts";
import { groundByEdit, rearEdit } from "../../book/pressure/edits.ts";
import type { BothExpected } from "../../book/pressure/expected.ts";
import { groundLines } from "../../book/pressure/grounds.ts";
import { expectedView, readingsOf } from "../../book/pressure/expected_view.ts";
import { type Kept, unpack } from "../../book/pressure/kept.ts";
import { stepped as step } from "../../book/pressure/stepped.ts";
import { refusedWords } from "../../book/pressure/refused.ts";
import { restated } from "../../book/pressure/restate.ts";
import { read, type Reading } from "../../book/pressure/request.ts";
import { screenView } from "../../book/pressure/screen_view.ts";
import { learned } from "../../book/pressure/shift.ts";
import { tables } from "../../book/pressure/tables.ts";
import type { Result } from "../../contract/contract.ts";
import { chosen } from "../../ui/choice.ts";
import { Field, stepped, typed } from "../../ui/field.ts";
import { el } from "../../ui/el.ts";
import { listen, setHidden, setText } from "../../ui/part.ts";
import type { Ctx } from "../../ui/screen.ts";
import { w } from "../../words/index.ts";
import { Board, firmed, renamed, wetted } from "./board/board.ts";
import { FirstRun, started } from "./setup/first_run.ts";
import { GroundDesk } from "./ground/ground_desk.ts";
import { altitudeFound } from "./setup/altitude.ts";
import { BikeSwitch } from "./bikes/bike_switch.ts";
import { bikeCopied, bikeOpened, setupBrought, setupShared } from "./bikes/bikes.ts";
import { Entries } from "./entries.ts";
import { Expect } from "./ride/expect.ts";
import { invented } from "./invented.ts";
import type { Lent } from "./lent.ts";
import { Beside } from "./beside.ts";
import type { InputState } from "./setup/inputs.ts";
import { entryUndone, noteSaved, wasSame, wasSet } from "./ride/noted.ts";
import { type Holder, Records } from "./records.ts";

const draftName = "pressure";
const answerName = "pressure-answer";

export class Desk {
  readonly #ctx: Ctx;
  readonly #host: HTMLElement;
  readonly #headline = el("p", { class: "small" });
  readonly #stale = el("p", { class: "small quiet" });
  readonly #demo = el("p", { class: "small demo" }, w("head.demo"));
  #draft: PressureDraft = emptyDraft;
  readonly #tables = tables;
  #kept: Kept | undefined;
  #broken = "";
  #pressed = false; // the first-run button, so that missing answers are now pointed at
  #waiting = false; // a field was being typed in while others changed something
  #unit: Ctx["settings"]["units"];
  #part: Board | FirstRun | undefined;
  #found: Readonly<Record<string, string>> | undefined; // the readings before "I set it"
  readonly #expect: Expect;
  #expected: BothExpected = {};
  #fault = ""; // why a file was not taken
  readonly #bikes: BikeSwitch;
  readonly #ground: GroundDesk;
  #loaded = false;
  #ahead = 0; // counts looks ahead, so that the newest counts
  readonly #entries: Entries;
  readonly #beside: Beside;
  readonly #records: Records;

  constructor(host: HTMLElement, ctx: Ctx) {
    this.#ctx = ctx;
    this.#host = host;
    this.#unit = ctx.settings.units;
    this.#expect = new Expect(ctx.calc);
    this.#entries = new Entries(ctx.book, () => this.#show());
    this.#beside = new Beside(host, ctx, { lend: () => this.#lent(), settle: () => this.#records.now(), show: () => this.#show() });
    const desk = this;
    const holder: Holder = {
      name: draftName, read: () => this.#read(),
      get draft() { return desk.#draft; },
      set draft(draft) { desk.#draft = draft; },
    };
    this.#records = new Records(ctx.book, holder);
    this.#ground = new GroundDesk(this.#entries, { draft: () => this.#draft, change: (change) => this.#change(change), show: () => this.#show() });
    this.#bikes = new BikeSwitch(ctx, holder, this.#records, this.#entries);
    host.classList.add("opening"); // keeps the room until the draft is read, so that nothing below jumps
    this.#demo.hidden = true; // until the draft says otherwise
    ctx.head.append(this.#headline, this.#stale, this.#demo);
    this.#hear();
    void this.#load();
  }

  async #load(): Promise<void> {
    const { drafts } = this.#ctx;
    const [stored, answer] = await Promise.all([drafts.load(draftName), drafts.load(answerName)]);
    this.#kept = unpack(answer);
    await this.#open(stored);
    this.#show();
    await this.#lookAhead().catch(() => undefined);
    this.#loaded = true;
    this.#refresh();
  }

  // open makes the draft: as it was left, or of the bike edited last, or an empty form.
  async #open(stored: unknown): Promise<void> {
    // The unit may have been changed in Settings, or in another tab, since this was typed.
    this.#draft = restated(stored === undefined ? emptyDraft : readDraft(stored), this.#unit);
    if (stored !== undefined) this.#show(); // the last answer first; what else the book holds may take a moment
    try {
      await this.#entries.look();
      if (stored === undefined) await this.#firstDraft();
      await this.#records.look();
    } catch {
      // a phone that refuses its storage is told by the status line; the sums work all the same
    }
  }

  // firstDraft opens the bike that the book knows, with the invented weather and ground where the server plays an event.
  async #firstDraft(): Promise<void> {
    const demo = await invented();
    const today = demo === undefined ? this.#draft : { ...readDraft(demo["draft"]), demo: true, weatherAt: Date.now() };
    const bike = this.#entries.bike(String(demo?.["bike"])) ?? this.#entries.newest;
    if (bike === undefined) return;
    const opened = await this.#records.opened(bike, today);
    this.#draft = restated({ ...opened, texts: { ...opened.texts, ...today.texts } }, this.#unit);
    void this.#ctx.drafts.save(draftName, this.#draft); // it opens without the server too
  }

  // heard is called when records changed: here, in another tab, on another phone.
  async #heard(recs: ReadonlySet<string>): Promise<void> {
    if (this.#ctx.closed.aborted) return;
    await this.#entries.look();
    const fresh = !this.#draft.started && Object.keys(this.#draft.texts).length === 0;
    if (fresh) await this.#firstDraft(); // the book has just arrived, and nothing was typed yet
    const typing = this.#typing();
    this.#waiting = typing !== "";
    const { links } = this.#draft;
    if (this.#records.concerns(recs) && await this.#records.look(typing)) {
      if (Object.keys(links).some((role) => !(role in this.#draft.links))) this.#forget(links["bike"]);
      void this.#ctx.drafts.save(draftName, this.#draft);
    }
    this.#refresh();
  }

  // forget drops what was worked out from, or said of, a record that was erased. The draft that tells so is saved after.
  #forget(bike: string | undefined): void {
    this.#kept = undefined;
    void this.#ctx.drafts.save(answerName, undefined);
    this.#beside.forget(bike);
  }

  // typing is the field that a person is in, "" for none.
  #typing(): string {
    const field = this.#editing() ? document.activeElement?.closest("rs-field") : null;
    return field instanceof Field ? field.view?.id ?? "" : "";
  }

  #editing(): boolean {
    const active = document.activeElement;
    return document.hasFocus() && this.#host.contains(active) && (active instanceof HTMLInputElement || active instanceof HTMLTextAreaElement) && active.type !== "radio";
  }

  // left: a field was left, so what waited may appear and what was typed is made.
  #left(): void {
    if (this.#waiting) {
      this.#waiting = false;
      void this.#heard(new Set());
    }
    void this.#records.now();
  }

  #hear(): void {
    const { closed, drafts } = this.#ctx;
    const on = <D>(name: Parameters<typeof listen<D>>[1], hear: (detail: D) => void): void => void listen(this.#host, name, hear, closed);
    on(typed, ({ id, text }) => this.#type(id, text));
    on(stepped, ({ id, by }) => this.#stepBy(id, by));
    on(chosen, ({ name, value }) => this.#choose(name.replace(/^first\./, ""), value));
    on(firmed, (by) => this.#change({ firmness: Math.max(-maxSteps, Math.min(maxSteps, this.#draft.firmness + by)) }));
    on(wetted, (wet) => this.#change({ wet }));
    on(renamed, (bike) => this.#change({ bike }));
    on(started, () => this.#start());
    this.#ground.hear(this.#host, closed);
    on(altitudeFound, ({ id, metres }) => this.#type(id, String(metres)));
    on(bikeOpened, (rec) => void this.#openBike(rec));
    on(wasSet, () => void this.#setIt((draft, reading) => this.#entries.setIt(draft, reading, this.#kept?.answer)));
    on(wasSame, () => void this.#setIt((draft, reading) => this.#entries.sameAgain(draft, reading)));
    on(bikeCopied, () => void this.#copyBike());
    on(setupShared, () => void this.#bikes.share(this.#draft));
    on(setupBrought, (file) => void this.#bringSetup(file));
    on(noteSaved, (text) => void this.#note(text));
    on(entryUndone, () => void this.#undoEntries());
    closed.addEventListener("abort", drafts.follow(draftName, (value) => {
      this.#draft = restated(readDraft(value), this.#unit);
      void this.#records.look().then(() => this.#refresh(), () => this.#refresh());
    }, () => this.#editing()));
    closed.addEventListener("abort", drafts.follow(answerName, (value) => (this.#kept = value === undefined ? undefined : this.#kept)));
    closed.addEventListener("abort", this.#ctx.book.on((recs) => void this.#heard(recs).catch(() => undefined)));
    this.#host.addEventListener("focusout", () => this.#left(), { signal: closed });
    document.addEventListener("visibilitychange", () => void this.#records.now(), { signal: closed });
    closed.addEventListener("abort", () => {
      this.#entries.stop();
      void this.#records.now();
    });
    this.#ctx.onSettings(({ units }) => this.#switchUnit(units));
    this.#ctx.onCalc(() => this.#refresh());
    // Ages are told in minutes; a screen that lies open keeps them true.
    const clock = setInterval(() => this.#show(), 60_000);
    closed.addEventListener("abort", () => clearInterval(clock));
  }

  #change(change: Partial<PressureDraft>): void {
    this.#draft = { ...this.#draft, ...change };
    void this.#ctx.drafts.save(draftName, this.#draft);
    this.#records.soon();
    this.#refresh();
  }

  async #openBike(rec: string): Promise<void> {
    if (await this.#bikes.open(rec)) this.#opened();
  }

  async #copyBike(): Promise<void> {
    await this.#bikes.copy();
    this.#opened();
  }

  async #bringSetup(file: File): Promise<void> {
    const taken = await this.#bikes.bring(file);
    this.#fault = taken ? "" : w("bikes.notOne");
    this.#opened();
  }

  #opened(): void {
    this.#expected = {};
    scrollTo(0, 0);
    this.#refresh();
  }

  async #setIt(note: (draft: PressureDraft, reading: Reading) => Promise<boolean>): Promise<void> {
    await this.#records.now();
    if (!(await note(this.#draft, this.#read()))) return;
    // The readings were of before; undoing brings them back.
    const { "now.front": front = "", "now.rear": rear = "" } = this.#draft.texts;
    this.#found = { "now.front": front, "now.rear": rear };
    this.#change({ texts: { ...this.#draft.texts, "now.front": "", "now.rear": "" } });
  }

  async #undoEntries(): Promise<void> {
    await this.#entries.undo();
    if (this.#found !== undefined) this.#change({ texts: { ...this.#draft.texts, ...this.#found } });
    this.#found = undefined;
  }

  async #note(text: string): Promise<void> {
    await this.#records.now();
    if (!(await this.#entries.note(this.#draft, text))) return;
    this.#found = undefined;
    if (this.#part instanceof Board) this.#part.noteTaken();
    this.#show();
  }

  #type(id: string, text: string): void {
    const stretch = /^ground\.(.+)\.(km|kmh|gd0)$/.exec(id);
    if (stretch?.[1] !== undefined && stretch[2] !== undefined) return this.#ground.stretch(stretch[1], { [stretch[2]]: text });
    const weather = /^(set|ride|warmest)\./.test(id) ? { weatherAt: Date.now() } : {};
    this.#change({ texts: { ...this.#draft.texts, [id]: text }, ...weather });
  }

  // stepBy moves a reading by a gauge's step, from what is typed or else from what the wheel should read.
  #stepBy(id: string, by: number): void {
    const side = id === "now.front" ? "front" : "rear";
    const aim = this.#expected[side]?.gauge_kpa ?? this.#kept?.answer[side].gauge_kpa;
    const next = step(this.#draft.texts[id] ?? "", aim ?? undefined, by, this.#unit);
    if (next !== undefined) this.#type(id, next);
  }

  #choose(name: string, value: string): void {
    if (name === "weigh") return this.#change({ weigh: value === "scale" ? "scale" : "share" });
    if (name === "ground.by") return this.#change(groundByEdit(this.#draft, value === "share" ? "share" : "km"));
    if (name === "rear") return this.#change(rearEdit(this.#draft, value === "same"));
    const stretch = /^ground\.(.+)\.kind$/.exec(name);
    if (stretch?.[1] !== undefined) return this.#ground.stretch(stretch[1], { kind: value });
    this.#change({ picks: { ...this.#draft.picks, [name]: value } });
  }

  // start leaves the first-run screen once nothing needed is missing; until then it goes to what is.
  #start(): void {
    this.#pressed = true;
    const first = [...this.#read().faults.keys()][0];
    if (first === undefined) {
      this.#change({ started: true });
      void this.#records.now();
      scrollTo(0, 0);
    } else {
      this.#show();
      if (this.#part instanceof FirstRun) this.#part.toField(first);
    }
  }

  #switchUnit(unit: Ctx["settings"]["units"]): void {
    if (unit === this.#unit) return;
    this.#unit = unit;
    this.#change(restated(this.#draft, unit));
  }

  #read(): Reading {
    return learned(read(this.#draft, this.#unit, this.#tables, readingsOf(this.#expected)), this.#entries.notes, this.#draft.links["bike"]);
  }

  #lent(): Lent {
    const { sets, notes } = this.#entries;
    const bike = this.#entries.bike(this.#draft.links["bike"] ?? "");
    return { draft: this.#draft, reading: this.#read(), unit: this.#unit, tables: this.#tables, sets, notes, bike };
  }

  // lookAhead works out what the gauges should read; whatever that rests on may have changed.
  async #lookAhead(): Promise<void> {
    const { values, body } = this.#read();
    const here = body?.set;
    if (here === undefined || this.#ctx.closed.aborted) return;
    const turn = ++this.#ahead;
    const expected = await this.#expect.both(this.#draft, this.#entries.sets, values.get("gaugeError") ?? 0, here, Date.now());
    if (turn !== this.#ahead || JSON.stringify(expected) === JSON.stringify(this.#expected)) return;
    this.#expected = expected;
    this.#refresh();
  }

  #refresh(): void {
    this.#show();
    void this.#ask(this.#read());
    void this.#lookAhead().catch(() => undefined); // the state of the calculator tells
  }

  async #ask(reading: Reading): Promise<void> {
    if (reading.body === undefined || !this.#loaded) return; // the last answer stands until all is known that the next one needs
    const question = JSON.stringify(reading.body);
    if (question === this.#kept?.question && this.#broken === "") return;
    try {
      const result = await this.#ctx.calc.latest("pressure", reading.body);
      if (result === undefined || this.#ctx.closed.aborted || this.#read().body === undefined) return; // a newer question is on its way, or what was asked is gone
      this.#take(question, result);
    } catch {
      this.#broken = w("wheel.oldCalc");
    }
    this.#show();
  }

  #take(question: string, { answer, errors }: Result<"pressure">): void {
    if (answer !== undefined) {
      this.#kept = { question, answer };
      this.#broken = "";
      void this.#ctx.drafts.save(answerName, this.#kept);
      this.#ctx.say(screenView(this.#facts(this.#read())).spoken);
      return;
    }
    this.#broken = refusedWords(errors);
  }

  #facts(reading: Reading): Parameters<typeof screenView>[0] {
    return { draft: this.#draft, reading, kept: this.#kept, unit: this.#unit, broken: this.#broken, now: Date.now(), ages: this.#records.ages(Date.now()) };
  }

  #show(): void {
    if (this.#ctx.closed.aborted) return;
    const reading = this.#read();
    const state: InputState = { draft: this.#draft, reading, unit: this.#unit, tables: this.#tables, ages: this.#records.ages(Date.now()), quiet: !this.#draft.started && !this.#pressed };
    const screen = screenView(this.#facts(reading));
    const begun = this.#draft.started;
    setText(this.#headline, begun ? screen.headline : "");
    setText(this.#stale, begun ? screen.stale : "");
    setHidden(this.#stale, !begun || screen.stale === "");
    setHidden(this.#headline, !begun);
    setHidden(this.#demo, !this.#draft.demo);
    this.#ctx.heading(begun ? screen.heading : w("place.pressure"));
    const noted = { ...this.#entries.view(this.#draft, this.#unit, Date.now()), ...expectedView(this.#expected, reading, this.#unit, Date.now()) };
    const bikes = { bikes: this.#entries.bikes(this.#draft), first: !begun, fault: this.#fault };
    if (begun) this.#stage(Board).view = { screen, state, undo: this.#ground.said, bikes, kept: groundLines(this.#entries.grounds), noted, ...this.#beside.view() };
    else this.#stage(FirstRun).view = { ...state, bikes };
  }

  // stage puts one of the two parts on the page, unless it stands there already.
  #stage<P extends Board | FirstRun>(kind: new () => P): P {
    if (this.#part instanceof kind) return this.#part;
    const part = new kind();
    this.#part = part;
    this.#host.classList.remove("opening");
    this.#host.replaceChildren(part);
    return part;
  }
}
