// The page of one record's history. What was deleted is restored here, and an earlier value put back.

import "./history.css";
import { type HistoryLine, historyLines, type Shift } from "../../book/settings/history_view.ts";
import { describeRecord } from "../../book/value/record_words.ts";
import { refsIn, refsOf } from "../../book/value/refs.ts";
import type { RecordState } from "../../log/op/merge.ts";
import { el } from "../../ui/el.ts";
import { keyed } from "../../ui/keyed.ts";
import { define, Part, setAttr, setHidden, setText } from "../../ui/part.ts";
import type { Ctx } from "../../ui/screen.ts";
import { w } from "../../words/index.ts";
import { attempt, follow, tellerFor } from "../shared/follow.ts";
import { Outcome } from "../../ui/outcome.ts";
import { openPage } from "./page.ts";

interface LineView {
  readonly line: HistoryLine;
  readonly reuse: (shift: Shift) => void;
}

class Line extends Part<LineView> {
  readonly #what = el("strong");
  readonly #when = el("span", { class: "quiet" });
  readonly #by = el("p", { class: "quiet small" });
  readonly #shifts = el("ul", { class: "unmarked" });

  protected override build(): void {
    this.append(el("p", {}, this.#what, " ", this.#when), this.#by, this.#shifts);
  }

  protected override show({ line, reuse }: LineView): void {
    setText(this.#what, line.what);
    setText(this.#when, line.when);
    setText(this.#by, line.by);
    setHidden(this.#shifts, line.shifts.length === 0);
    keyed(this.#shifts, line.shifts, (shift) => shift.field, makeShift, (node, shift) => node.show(shift, reuse));
  }
}

interface ShiftNode extends HTMLLIElement {
  show: (shift: Shift, reuse: (shift: Shift) => void) => void;
}

function makeShift(): ShiftNode {
  const label = el("span", { class: "quiet" });
  const value = el("strong");
  const before = el("span", { class: "quiet small block" });
  const again = el("button", { type: "button", class: "button quiet flush" });
  const node = el("li", {}, el("p", {}, label, " ", value, before), again);
  const show = (shift: Shift, reuse: (shift: Shift) => void): void => {
    setText(label, w("history.field", { field: shift.label }));
    setText(value, shift.value);
    setText(before, shift.before === "" ? "" : w("history.before", { value: shift.before }));
    setHidden(again, shift.again === undefined);
    again.onclick = () => reuse(shift);
    if (shift.again === undefined) return;
    setText(again, w("history.again", { value: shift.again.words }));
    setAttr(again, "aria-label", w("history.againOf", { field: shift.label, value: shift.again.words }));
  };
  return Object.assign(node, { show });
}

export class History {
  readonly #ctx: Ctx;
  readonly #rec: string;
  readonly #state = el("p");
  readonly #restore = el("button", { type: "button", class: "button", on: { click: () => void this.#bringBack() } }, w("history.restore"));
  readonly #decide = el("a", { class: "button", href: "#/settings/clashes" }, w("history.toClashes"));
  readonly #notice = el("div", { class: "notice care stack" }, this.#state, el("p", { class: "row" }, this.#restore, this.#decide));
  readonly #outcome = new Outcome();
  readonly #lines = el("ol", { class: "unmarked stack lines" });
  readonly #erase = el("a", { class: "button quiet flush" }, w("things.erase"));
  readonly #again: () => Promise<void>;
  #shown: RecordState | undefined;

  constructor(host: HTMLElement, ctx: Ctx, rec: string) {
    this.#ctx = ctx;
    this.#rec = rec;
    openPage(ctx, w("history.title"), { href: "#/settings/records", words: w("records.title") });
    setHidden(this.#notice, true);
    setHidden(this.#erase, true);
    setAttr(this.#erase, "href", `#/wheels/erase/${rec}`);
    host.append(el("div", { class: "stack looking" }, this.#notice, this.#outcome, this.#lines, el("p", {}, this.#erase)));
    this.#again = follow(ctx, () => this.#look(), (words) => (this.#outcome.view = { words, failed: true }));
  }

  async #look(): Promise<void> {
    const { book } = this.#ctx;
    await book.ready;
    const [state, entries] = await Promise.all([book.get(this.#rec), book.history(this.#rec)]);
    const states = state === undefined ? [] : [state];
    const teller = await tellerFor(this.#ctx, states, new Set([...refsIn(states), ...refsOf(entries)]));
    if (this.#ctx.closed.aborted) return;
    this.#shown = state;
    this.#lines.parentElement?.classList.remove("looking");
    this.#showState(state);
    if (state === undefined) return;
    this.#ctx.heading(describeRecord(state, teller));
    const lines = historyLines(entries, state, teller);
    const reuse = (shift: Shift): void => void this.#reuse(shift);
    keyed(this.#lines, lines, (line) => line.key, () => el("li", { class: "card" }, new Line()), (node, line) => {
      if (node.firstChild instanceof Line) node.firstChild.view = { line, reuse };
    });
  }

  #showState(state: RecordState | undefined): void {
    const words = stateWords(state);
    setText(this.#state, words);
    setHidden(this.#notice, words === "");
    setHidden(this.#restore, state?.deleted !== true);
    setHidden(this.#erase, state?.kind !== "person");
    setHidden(this.#decide, (state?.clashes.length ?? 0) === 0);
  }

  async #bringBack(): Promise<void> {
    const shown = this.#shown;
    if (shown === undefined) return;
    await this.#try(() => this.#ctx.book.restore(shown), w("history.isRestored"), async () => {
      const now = this.#shown;
      if (now !== undefined) await this.#try(() => this.#ctx.book.remove(now), w("history.isDeleted"));
    });
  }

  async #reuse({ field, label, again }: Shift): Promise<void> {
    const shown = this.#shown;
    if (shown === undefined || again === undefined) return;
    await this.#try(() => this.#ctx.book.choose(shown, field, again.value), w("history.isSet", { field: label, value: again.words }));
  }

  async #try(work: () => Promise<unknown>, done: string, undo?: () => Promise<void>): Promise<void> {
    const failed = await attempt(this.#ctx, work);
    await this.#again();
    this.#outcome.view = failed === "" ? { words: done, ...(undo && { undo: () => void undo() }) } : { words: failed, failed: true };
  }
}

function stateWords(state: RecordState | undefined): string {
  if (state === undefined) return w("history.unknown");
  if (state.erased) return w("history.isErased");
  if (state.clashes.length > 0) return w("history.clashes");
  return state.deleted ? w("history.isDeleted") : "";
}

define("rs-history-line", Line);
