// Holds the draft, asks the calculator after every change, and shows the newest answer: on the board, on the set-up page, or in
// the form of the first run.

import { emptyDraft, type PressureDraft, readDraft } from "../../book/pressure/draft.ts";
import { groundLines } from "../../book/pressure/grounds.ts";
import { unpack } from "../../book/pressure/kept.ts";
import { shiftWords } from "../../book/pressure/after_ride.ts";
import { hereNow } from "../../book/pressure/places_view.ts";
import { readingViews } from "../../book/pressure/reading_view.ts";
import { restated } from "../../book/pressure/restate.ts";
import type { Reading } from "../../book/pressure/request.ts";
import { rideDue } from "../../book/pressure/ride_due.ts";
import { screenView, type ScreenView } from "../../book/pressure/screen_view.ts";
import { tables } from "../../book/pressure/tables.ts";
import { veiledWords } from "../../book/value/veil.ts";
import { setHidden } from "../../ui/part.ts";
import type { Ctx } from "../../ui/screen.ts";
import { w } from "../../words/index.ts";
import { ReadyHere } from "../shared/ready_here.ts";
import { Acts } from "./acts.ts";
import { Board, type BoardView } from "./board/board.ts";
import { BikeLine, bikesWanted } from "./board/bike_line.ts";
import { Entries } from "./entries.ts";
import { firstMeeting } from "./first_meeting.ts";
import { invented } from "./invented.ts";
import type { Lent } from "./lent.ts";
import { type Holder, Records } from "./records.ts";
import { Rides } from "./ride/rides.ts";
import { FirstRun } from "./setup/first_run.ts";
import type { InputState } from "./setup/inputs.ts";
import { Setup } from "./setup/setup.ts";
import { WidthDesk } from "./setup/width_desk.ts";
import { type Source, Sums } from "./sums.ts";

const draftName = "pressure";
const answerName = "pressure-answer";

export class Desk {
  readonly ctx: Ctx;
  readonly host: HTMLElement;
  readonly entries: Entries;
  readonly records: Records;
  readonly sums: Sums;
  readonly rides: Rides;
  readonly holder: Holder;
  draft: PressureDraft = emptyDraft;
  unit: Ctx["settings"]["units"];
  fault = ""; // why a file was not taken
  readonly #ready: ReadyHere;
  readonly #line: BikeLine;
  readonly #acts: Acts;
  readonly #widths: WidthDesk;
  #pressed = false; // the first-run button, so that missing answers are now pointed at
  #part: Board | FirstRun | Setup | undefined;
  // opened ends when the draft is read: until then there is nothing that a change of the book could be compared with.
  readonly opened: Promise<void>;
  #loaded = false;
  #stale = false;
  #asking: Promise<void> | undefined;
  #field: string; // to go to, once

  constructor(host: HTMLElement, ctx: Ctx) {
    this.ctx = ctx;
    this.host = host;
    this.unit = ctx.settings.units;
    this.#field = ctx.path[0] === "setup" ? ctx.path[1] ?? "" : "";
    this.sums = new Sums(ctx);
    this.entries = new Entries(ctx.book, () => this.show());
    const desk = this;
    this.holder = {
      name: draftName, read: () => this.read(),
      get draft() { return desk.draft; },
      set draft(draft) { desk.draft = draft; },
    };
    this.records = new Records(ctx.book, this.holder);
    const lender = { lend: () => this.#lent(), settle: () => this.records.now(), renew: () => this.#renew(), show: () => this.show() };
    this.rides = new Rides(host, ctx, lender);
    this.#widths = new WidthDesk(host, ctx, lender);
    this.#acts = new Acts(this);
    host.classList.add("opening"); // keeps the room until the draft is read, so that nothing below jumps
    this.#ready = new ReadyHere(ctx);
    this.#line = new BikeLine(this.#ready.line);
    setHidden(this.#line, true);
    ctx.head.append(this.#line);
    ctx.head.addEventListener(bikesWanted, () => this.#part instanceof Board && this.#part.sheets.openBikes(), { signal: ctx.closed });
    this.#acts.hear();
    // Ages are told in minutes; a screen that lies open keeps them true.
    const clock = setInterval(() => this.#tick(), 60_000);
    ctx.closed.addEventListener("abort", () => clearInterval(clock));
    this.opened = this.#load();
  }

  async #load(): Promise<void> {
    const { drafts } = this.ctx;
    await Records.settled;
    const [stored, answer] = await Promise.all([drafts.load(draftName), drafts.load(answerName)]);
    this.sums.kept = unpack(answer);
    await this.#open(stored);
    this.show();
    await this.sums.ahead(this.source()).catch(() => false);
    this.#loaded = true;
    this.refresh();
  }

  // open makes the draft: as it was left, or of the bike edited last, or an empty form.
  async #open(stored: unknown): Promise<void> {
    // The unit may have been changed in Settings, or in another tab, since this was typed.
    const draft = restated(stored === undefined ? emptyDraft : readDraft(stored), this.unit);
    this.draft = { ...draft, here: hereNow(draft, Date.now()) };
    if (stored !== undefined) this.show(); // the last answer first; what else the book holds may take a moment
    try {
      await this.entries.look();
      if (stored === undefined) {
        if (this.entries.newest === undefined) await firstMeeting(this.ctx.sync);
        await this.entries.look();
        await this.firstDraft();
      }
      await this.records.look();
    } catch {
      // a phone that refuses its storage is told by the status line; the sums work all the same
    }
  }

  // firstDraft opens the bike that the book knows, with the invented weather and ground where the server plays an event.
  async firstDraft(): Promise<void> {
    const demo = await invented();
    const today = demo === undefined ? this.draft : { ...readDraft(demo["draft"]), demo: true, setAt: Date.now(), weatherAt: Date.now() };
    const bike = this.entries.bike(String(demo?.["bike"])) ?? this.entries.newest;
    if (bike === undefined) return;
    const opened = await this.records.opened(bike, today);
    this.draft = restated({ ...opened, texts: { ...opened.texts, ...today.texts } }, this.unit);
    void this.ctx.drafts.save(draftName, this.draft); // it opens without the server too
  }

  change(change: Partial<PressureDraft>): void {
    this.draft = { ...this.draft, ...change };
    this.keep();
    this.records.soon();
    this.refresh();
  }

  keep(): void {
    void this.ctx.drafts.save(draftName, this.draft);
  }

  // forgetAnswer drops what was worked out from another bike, or said of one that was erased.
  forgetAnswer(): void {
    this.sums.kept = undefined;
    this.sums.forget();
    void this.ctx.drafts.save(answerName, undefined);
  }

  // start leaves the first-run form once nothing needed is missing; until then it goes to what is.
  start(): void {
    this.#pressed = true;
    const first = [...this.read().faults.keys()][0];
    if (first === undefined) {
      this.change({ started: true });
      void this.records.now();
      scrollTo(0, 0);
    } else {
      this.show();
      if (this.#part instanceof FirstRun) this.#part.toField(first);
    }
  }

  noteTaken(): void {
    if (this.#part instanceof Board) this.#part.sheets.noteTaken();
    this.show();
  }

  // told are the numbers as they are shown, for the log.
  told(): ScreenView["wheels"] {
    return this.#screen().wheels.map((wheel) => (wheel.old === "" ? wheel : { ...wheel, kpa: undefined }));
  }

  source(): Source {
    const { sets, taught } = this.entries;
    return { draft: this.draft, unit: this.unit, sets, notes: taught };
  }

  read(): Reading {
    return this.sums.reading(this.source());
  }

  #lent(): Lent {
    const { sets, notes } = this.entries;
    const { kept, learned } = this.sums;
    return { draft: this.draft, reading: this.read(), answer: kept?.answer, learned, unit: this.unit, tables, sets, notes, bike: this.entries.bike(this.draft.links["bike"] ?? "") };
  }

  // refresh shows what is known, asks, and shows what has come.
  refresh(): void {
    this.show();
    void this.#ask().catch(() => undefined); // the state of the calculator tells
  }

  // ask goes round once more for all that was changed meanwhile; who waits for it waits for the newest answer.
  #ask(): Promise<void> {
    this.#stale = true;
    this.#asking ??= this.#rounds().finally(() => (this.#asking = undefined));
    return this.#asking;
  }

  async #rounds(): Promise<void> {
    while (this.#stale && !this.ctx.closed.aborted) {
      this.#stale = false;
      await this.#round();
    }
  }

  async #round(): Promise<void> {
    if (!this.#loaded) return;
    if (await this.sums.ask(() => this.source())) this.#answered();
    if (await this.sums.ahead(this.source())) {
      this.show();
      if (await this.sums.ask(() => this.source())) this.#answered();
    }
  }

  #answered(): void {
    if (this.sums.broken === "") {
      void this.ctx.drafts.save(answerName, this.sums.kept);
      this.ctx.say(this.#screen().spoken);
    }
    this.show();
  }

  async #renew(): Promise<Lent["answer"]> {
    await this.entries.look();
    await this.#ask();
    return this.sums.kept?.answer;
  }

  #tick(): void {
    const here = hereNow(this.draft, Date.now());
    if (here === this.draft.here) this.show();
    else this.change({ here });
  }

  #screen(): ScreenView {
    const { kept, broken } = this.sums;
    return screenView({ draft: this.draft, reading: this.read(), kept, unit: this.unit, broken, now: Date.now(), ages: this.records.ages(Date.now()) });
  }

  show(): void {
    if (this.ctx.closed.aborted) return;
    const { draft, unit } = this;
    const reading = this.read();
    const state: InputState = { draft, reading, unit, tables, ages: this.records.ages(Date.now()), quiet: !draft.started && !this.#pressed };
    const bikes = { bikes: this.entries.bikes(draft), first: !draft.started, fault: this.fault };
    const screen = this.#screen();
    const setup = this.ctx.path[0] === "setup";
    setHidden(this.#line, !draft.started || setup);
    this.#ready.at(draft.started ? draft.links["bike"] ?? "" : "");
    this.ctx.heading(!draft.started ? w("place.pressure") : setup ? w("setup.of", { bike: screen.heading }) : screen.heading);
    if (!draft.started) this.#stage(FirstRun).view = { ...state, bikes };
    else if (setup) this.#showSetup({ screen, state, widths: this.#widths.view(this.#lent()) });
    else {
      this.#line.view = { name: screen.heading };
      this.#stage(Board).view = this.#board(screen, state, bikes);
    }
  }

  #board(screen: ScreenView, state: InputState, bikes: BoardView["bikes"]): BoardView {
    const { draft, unit, entries, sums } = this;
    const now = Date.now();
    const { last, done, notes } = entries.view(draft, unit, now);
    const bar = { due: rideDue(draft, entries.sets, entries.notes, now), last, done, can: screen.wheels.some((each) => each.kpa !== undefined && each.old === "") };
    return {
      screen, state, undo: this.#acts.ground.said, bikes, kept: groundLines(entries.grounds), notes, bar,
      readings: readingViews({ draft, reading: state.reading, expected: sums.expected, unit, now, tables }), moved: draft.plain ? "" : shiftWords(sums.learned), ride: this.rides.view(this.#lent()),
      demo: draft.demo ? w("head.demo") : "", answered: sums.kept && { kept: sums.kept, unit, veiled: veiledWords(draft) !== "" },
    };
  }

  #showSetup(view: NonNullable<Setup["view"]>): void {
    const part = this.#stage(Setup);
    part.view = view;
    if (this.#field === "") return;
    part.toField(this.#field);
    this.#field = "";
  }

  // stage puts one of the parts on the page, unless it stands there already.
  #stage<P extends Board | FirstRun | Setup>(kind: new () => P): P {
    if (this.#part instanceof kind) return this.#part;
    const part = new kind();
    this.#part = part;
    this.host.classList.remove("opening");
    this.host.replaceChildren(...(part instanceof Board ? [this.#ready.card] : []), part);
    return part;
  }
}
