// What is due on a bike, with the reason; noted when it is done; as reminders for the phone's own calendar.

import "./checks.css";
import { bikeName } from "../../book/pressure/bikes.ts";
import { buildOf, historyOf } from "../../book/checks/build.ts";
import { calendarText } from "../../book/checks/calendar.ts";
import { type DueLine, dueReminders, intervalsOf, isReplaced, isWalk, wayOf } from "../../book/checks/due_view.ts";
import { dayOf } from "../../book/wheels/measure_days.ts";
import { textOf } from "../../book/checks/walk_save.ts";
import { dayWords } from "../../book/value/when.ts";
import { newRec } from "../../log/book_log.ts";
import { type RecordState, valueOf } from "../../log/op/merge.ts";
import { el } from "../../ui/el.ts";
import { Field, typed } from "../../ui/field.ts";
import { fold } from "../../ui/fold.ts";
import { handOver } from "../../ui/hand_over.ts";
import { keyed } from "../../ui/keyed.ts";
import { Outcome } from "../../ui/outcome.ts";
import { openPage } from "../../ui/page.ts";
import { define, listen, Part, setAttr, setHidden, setText } from "../../ui/part.ts";
import type { Ctx } from "../../ui/screen.ts";
import { w } from "../../words/index.ts";
import { attempt, follow } from "../shared/follow.ts";

interface LineView {
  readonly line: DueLine;
  readonly way: string; // where it is done; "" for nowhere but at the bike
  readonly done: () => void;
}

class DuePart extends Part<LineView> {
  readonly #title = el("h2");
  readonly #when = el("strong");
  readonly #why = el("p");
  readonly #source = el("p", { class: "small quiet" });
  readonly #done = el("button", { type: "button", class: "button", on: { click: () => this.view?.done() } });
  readonly #way = el("a", { class: "button primary" }, w("due.go"));

  protected override build(): void {
    this.append(el("section", { class: "card stack" }, this.#title, el("p", {}, this.#when), this.#why, this.#source, el("p", { class: "row" }, this.#way, this.#done)));
  }

  protected override show({ line, way }: LineView): void {
    setAttr(this.#way, "href", way === "" ? null : way);
    setHidden(this.#way, way === "");
    setHidden(this.#done, isWalk(line.id));
    const done = isReplaced(line.id) ? w("due.fitted") : w("due.done");
    setText(this.#done, done);
    setText(this.#title, line.title);
    setText(this.#when, line.overdue_days > 0 ? w("due.overdue", { n: line.overdue_days }) : line.due === "" ? w("due.now") : line.due === dayOf(Date.now()) ? w("due.today") : w("due.on", { day: dayWords(line.due, Date.now()) }));
    setText(this.#why, line.why);
    setText(this.#source, w("checks.source", { source: line.source }));
    setAttr(this.#done, "aria-label", w("due.doneOf", { done, title: line.title }));
    setAttr(this.#way, "aria-label", w("due.doneOf", { done: w("due.go"), title: line.title }));
  }
}

export function due(host: HTMLElement, ctx: Ctx): void {
  new DuePage(host, ctx, ctx.path[1] ?? "");
}

class DuePage {
  readonly #ctx: Ctx;
  readonly #bike: string;
  readonly #page = el("div", { class: "stack looking" });
  readonly #none = el("p", {}, w("due.none"));
  readonly #lines = el("div", { class: "columns" });
  readonly #outcome = new Outcome();
  readonly #calendar = el("button", { type: "button", class: "button", on: { click: () => void this.#save() } }, w("due.calendar"));
  readonly #fields = el("div", { class: "fields" });
  readonly #again: () => Promise<void>;
  #shown: readonly DueLine[] = [];
  #setting: RecordState | undefined;
  #texts: Record<string, string> = {};

  constructor(host: HTMLElement, ctx: Ctx, bike: string) {
    this.#ctx = ctx;
    this.#bike = bike;
    openPage(ctx, w("due.title"), { href: "#/checks", words: w("place.checks") });
    this.#page.append(this.#outcome, this.#none, this.#lines, el("section", { class: "card stack" }, el("p", {}, this.#calendar), el("p", { class: "small quiet" }, w("due.calendarWhy"))),
      fold(w("due.intervals"), el("p", { class: "small quiet" }, w("due.intervalsWhy")), this.#fields));
    host.append(this.#page);
    listen(host, typed, ({ id, text }) => void this.#interval(id, text), ctx.closed);
    this.#again = follow(ctx, () => this.#look(), (words) => (this.#outcome.view = { words, failed: true }));
  }

  async #look(): Promise<void> {
    const { book, calc, closed } = this.#ctx;
    await book.ready;
    const states = new Map<string, RecordState>();
    for (const kind of ["bike", "wheel", "tyre"]) for (const state of await book.all(kind)) states.set(state.rec, state);
    const find = (rec: string): RecordState | undefined => states.get(rec);
    const bike = find(this.#bike);
    this.#setting = (await book.all("setting")).find((setting) => textOf(setting, "name") === "intervals");
    let lines: readonly DueLine[] | undefined;
    try {
      const { intervals } = intervalsOf(valueOf(this.#setting, "value"));
      const { answer } = await calc.ask("due", { bike: buildOf(bike, find), history: await historyOf(book, this.#bike), today: dayOf(Date.now()), ...(Object.keys(intervals).length > 0 && { intervals }) });
      lines = answer;
    } catch {
      lines = undefined; // told below
    }
    if (closed.aborted) return;
    this.#page.classList.remove("looking");
    this.#ctx.heading(`${w("due.title")} · ${bikeName(bike) || w("head.bike")}`);
    this.#shown = lines ?? [];
    const wheels = { front: textOf(bike, "front"), rear: textOf(bike, "rear") };
    setText(this.#none, lines === undefined ? w("checks.waiting") : w("due.none"));
    setHidden(this.#none, this.#shown.length > 0);
    keyed(this.#lines, this.#shown, ({ id }) => id, () => new DuePart(), (part, line) => (part.view = { line, way: wayOf(line.id, this.#bike, wheels), done: () => void this.#done(line) }));
    this.#calendar.disabled = this.#shown.length === 0;
    this.#showIntervals();
  }

  #showIntervals(): void {
    const { rows } = intervalsOf(valueOf(this.#setting, "value"), this.#texts);
    keyed(this.#fields, rows, ({ id }) => id, () => new Field(), (field, row) => (field.view = { ...row, spoken: row.label, unit: w("recUnit.d"), signed: false, step: 0 }));
  }

  async #interval(id: string, text: string): Promise<void> {
    this.#texts = { ...this.#texts, [id]: text };
    const { rows, intervals } = intervalsOf(valueOf(this.#setting, "value"), this.#texts);
    this.#showIntervals();
    if (rows.some((row) => row.id === id && row.fault !== "")) return;
    const shown = this.#setting;
    await attempt(this.#ctx, () => this.#ctx.book.save([{ rec: shown?.rec ?? newRec(), kind: "setting", set: { name: "intervals", value: intervals }, ...(shown && { shown }) }]));
  }

  async #done(line: DueLine): Promise<void> {
    const { book } = this.#ctx;
    let made: readonly RecordState[] = [];
    const day = dayOf(Date.now());
    const entry = line.id === "wash" ? { kind: "wash", set: { bike: this.#bike, day, kind: "wash" } } : { kind: "service", set: { bike: this.#bike, day, what: line.id, done: line.title } };
    const failed = await attempt(this.#ctx, async () => {
      made = await book.save([{ rec: newRec(), ...entry }]);
    });
    await this.#again();
    const undo = async (): Promise<void> => {
      const trouble = await attempt(this.#ctx, () => book.remove(...made));
      this.#outcome.view = { words: trouble || w("things.undone"), failed: trouble !== "" };
    };
    this.#outcome.view = failed === "" ? { words: w("due.noted", { title: line.title }), undo: () => void undo() } : { words: failed, failed: true };
  }

  async #save(): Promise<void> {
    const text = calendarText(dueReminders(this.#shown, this.#bike, dayOf(Date.now())), Date.now());
    await handOver(new File([text], "rimside-due.ics", { type: "text/calendar" }));
  }
}

define("rs-due", DuePart);
