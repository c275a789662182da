// What is due on a bike, with the reason; noted when it is done; as reminders for the phone's own calendar.

import "./checks.css";
import { bikeName } from "../../book/pressure/bikes.ts";
import { calendarText } from "../../book/checks/calendar.ts";
import { type DueLine, dueReminders, dueTitle, dueView, intervalsOf, wayOf } from "../../book/checks/due_view.ts";
import { dayOf } from "../../book/wheels/measure_days.ts";
import { textOf } from "../../book/checks/walk_save.ts";
import { type Change, newRec } from "../../log/book_log.ts";
import { type RecordState, valueOf } from "../../log/op/merge.ts";
import { el } from "../../ui/el.ts";
import { Field, typed } from "../../ui/field.ts";
import { fold } from "../../ui/fold.ts";
import { handOver } from "../../ui/hand_over.ts";
import { keyed } from "../../ui/keyed.ts";
import { Outcome } from "../../ui/outcome.ts";
import { openPage } from "../../ui/page.ts";
import { listen, setHidden, setText } from "../../ui/part.ts";
import type { Ctx } from "../../ui/screen.ts";
import { w } from "../../words/index.ts";
import { attempt, follow } from "../shared/follow.ts";
import { DuePart } from "./due_part.ts";
import { askDue } from "./front_lines.ts";

export function due(host: HTMLElement, ctx: Ctx): void {
  new DuePage(host, ctx, ctx.path[1] ?? "");
}

class DuePage {
  readonly #ctx: Ctx;
  readonly #bike: string;
  readonly #page = el("div", { class: "stack looking" });
  readonly #none = el("p", {}, w("due.none"));
  readonly #lines = el("div", { class: "columns" });
  readonly #neverTitle = el("summary");
  readonly #neverLines = el("div", { class: "columns" });
  readonly #never = el("details", { class: "card fold" }, this.#neverTitle, el("div", { class: "stack" }, el("p", { class: "small quiet" }, w("due.neverWhy")), this.#neverLines));
  readonly #outcome = new Outcome();
  readonly #calendar = el("button", { type: "button", class: "button", on: { click: () => void this.#save() } }, w("due.calendar"));
  readonly #fields = el("div", { class: "fields" });
  readonly #again: () => Promise<void>;
  #shown: readonly DueLine[] = [];
  #name = "";
  #setting: RecordState | undefined;
  #texts: Record<string, string> = {};

  constructor(host: HTMLElement, ctx: Ctx, bike: string) {
    this.#ctx = ctx;
    this.#bike = bike;
    openPage(ctx, w("due.heading"), { href: "#/checks", words: w("place.checks") });
    this.#page.append(this.#outcome, this.#none, this.#lines, this.#never, el("section", { class: "card stack" }, el("p", {}, this.#calendar), el("p", { class: "small quiet" }, w("due.calendarWhy"))),
      fold(w("due.intervals"), el("p", { class: "small quiet" }, w("due.intervalsWhy")), this.#fields));
    host.append(this.#page);
    listen(host, typed, ({ id, text }) => void this.#interval(id, text), ctx.closed);
    this.#again = follow(ctx, () => this.#look(), (words) => (this.#outcome.view = { words, failed: true }));
  }

  async #look(): Promise<void> {
    const { book, closed } = this.#ctx;
    await book.ready;
    const bike = await book.get(this.#bike);
    this.#setting = (await book.all("setting")).find((setting) => textOf(setting, "name") === "intervals");
    const lines = bike === undefined ? [] : await askDue(this.#ctx, bike);
    if (closed.aborted) return;
    this.#page.classList.remove("looking");
    this.#ctx.heading(`${w("due.heading")} · ${bikeName(bike) || w("head.bike")}`);
    this.#shown = lines ?? [];
    this.#name = bikeName(bike) || w("head.bike");
    const view = dueView(this.#shown);
    const tyreOf = async (side: "front" | "rear"): Promise<string> => textOf(await book.get(textOf(bike, side)), "tyre");
    const tyres = { front: await tyreOf("front"), rear: await tyreOf("rear") };
    if (closed.aborted) return;
    const wheels = { front: textOf(bike, "front"), rear: textOf(bike, "rear") };
    setText(this.#none, lines === undefined ? w("checks.waiting") : w("due.none"));
    setHidden(this.#none, this.#shown.length > 0);
    const show = (part: DuePart, line: DueLine): void => {
      part.view = { line, way: wayOf(line.id, this.#bike, wheels, tyres), measures: isMeasured(line.id), done: () => void this.#done(line), take: (mm) => void this.#take(line, mm) };
    };
    keyed(this.#lines, view.lines, ({ id }) => id, () => new DuePart(), show);
    keyed(this.#neverLines, view.never, ({ id }) => id, () => new DuePart(), show);
    setText(this.#neverTitle, w("due.never", { n: view.never.length }));
    setHidden(this.#never, view.never.length === 0);
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
    const title = dueTitle(line);
    const day = dayOf(Date.now());
    const of = await this.#thingOf(line.id);
    const side = line.id.endsWith("_rear") ? "rear" : line.id.endsWith("_front") ? "front" : undefined;
    const entry = line.id === "wash" ? { kind: "wash", set: { bike: this.#bike, day, kind: "wash" } }
      : { kind: "service", set: { bike: this.#bike, day, what: line.id, done: title, ...(side !== undefined && of !== this.#bike && { of }) } };
    await this.#add(entry, title);
  }

  // take notes what was measured, with its thing.
  async #take(line: DueLine, mm: number): Promise<void> {
    const side = line.id.endsWith("_rear") ? "rear" : "front";
    const what = line.id.startsWith("pads") ? "pads" : "rotor_thickness";
    await this.#add({ kind: "measure", set: { of: await this.#thingOf(line.id), what, mm, side, bike: this.#bike, day: dayOf(Date.now()) } }, dueTitle(line));
  }

  // thingOf is what a line is about: pads and bolts belong to the bike, the rest to wheel or tyre.
  async #thingOf(id: string): Promise<string> {
    const { book } = this.#ctx;
    const wheel = textOf(await book.get(this.#bike), id.endsWith("_rear") ? "rear" : "front");
    if (id.startsWith("rotor") || id.startsWith("spokes")) return wheel || this.#bike;
    if (id.startsWith("sealant")) return (wheel === "" ? "" : textOf(await book.get(wheel), "tyre")) || wheel || this.#bike;
    return this.#bike;
  }

  async #add(entry: Pick<Change, "kind" | "set">, title: string): Promise<void> {
    const { book } = this.#ctx;
    let made: readonly RecordState[] = [];
    const failed = await attempt(this.#ctx, async () => {
      made = await book.save([{ rec: newRec(), ...entry }]);
    });
    await this.#again();
    const undo = async (): Promise<void> => {
      const trouble = await attempt(this.#ctx, () => book.remove(...made));
      this.#outcome.view = { words: trouble || w("things.undone"), failed: trouble !== "" };
    };
    this.#outcome.view = failed === "" ? { words: w("due.noted", { title }), undo: () => void undo() } : { words: failed, failed: true };
  }

  async #save(): Promise<void> {
    const text = calendarText(dueReminders(this.#shown, this.#bike, this.#name, Date.now(), dayOf(Date.now())), Date.now());
    await handOver(new File([text], "rimside-due.ics", { type: "text/calendar" }));
  }
}

// isMeasured tells of what is due by a value in millimetres.
const isMeasured = (id: string): boolean => id.startsWith("pads") || id.startsWith("rotor");
