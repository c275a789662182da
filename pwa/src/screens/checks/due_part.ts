// One thing that is due: since when, why, and what can be done about it.

import { type DueLine, dueSource, dueTitle, dueWhy, isNoted, isReplaced } from "../../book/checks/due_view.ts";
import { millimetres } from "../../book/checks/walk_save.ts";
import { dayWords } from "../../book/value/when.ts";
import { dayOf } from "../../book/wheels/measure_days.ts";
import { el } from "../../ui/el.ts";
import { Field, typed } from "../../ui/field.ts";
import { define, listen, Part, setAttr, setHidden, setText } from "../../ui/part.ts";
import { w } from "../../words/index.ts";

export interface DueLineView {
  readonly line: DueLine;
  readonly way: string; // where it is done; "" for nowhere but at the bike
  readonly measures: boolean; // it may be measured instead
  readonly done: () => void;
  readonly take: (mm: number) => void;
}

export class DuePart extends Part<DueLineView> {
  readonly #title = el("h2");
  readonly #when = el("strong");
  readonly #why = el("p");
  readonly #source = el("p", { class: "small quiet" });
  readonly #done = el("button", { type: "button", class: "button", on: { click: () => this.view?.done() } });
  readonly #way = el("a", { class: "button primary" }, w("due.go"));
  readonly #value = new Field();
  readonly #take = el("button", { type: "button", class: "button", on: { click: () => this.#note() } }, w("due.takeValue"));
  readonly #measure = el("div", { class: "row" }, this.#value, this.#take);
  #text = "";
  #fault = "";

  protected override build(): void {
    listen(this, typed, ({ text }, event) => {
      event.stopPropagation();
      this.#text = text;
      this.#fault = "";
      this.#showValue();
    });
    this.append(el("section", { class: "card stack" }, this.#title, el("p", {}, this.#when), this.#why, this.#source, this.#measure, el("p", { class: "row" }, this.#way, this.#done)));
  }

  #note(): void {
    const mm = millimetres(this.#text);
    this.#fault = mm === undefined ? w("due.badValue") : "";
    if (mm !== undefined) {
      this.#text = "";
      this.view?.take(mm);
    }
    this.#showValue();
  }

  #showValue(): void {
    const title = this.view === undefined ? "" : dueTitle(this.view.line);
    this.#value.view = { id: "due.value", label: w("due.measured"), spoken: w("due.doneOf", { done: w("due.measured"), title }), text: this.#text, unit: w("unit.mm"), range: null, fault: this.#fault, signed: false, step: 0 };
    setAttr(this.#take, "aria-label", w("due.doneOf", { done: w("due.takeValue"), title }));
  }

  protected override show({ line, way, measures }: DueLineView): void {
    const title = dueTitle(line);
    const now = Date.now();
    const done = isReplaced(line.id) ? w("due.fitted") : w("due.done");
    setAttr(this.#way, "href", way === "" ? null : way);
    setHidden(this.#way, way === "");
    setHidden(this.#done, !isNoted(line.id));
    setHidden(this.#measure, !measures);
    setText(this.#done, done);
    setText(this.#title, title);
    setText(this.#when, whenDue(line, now));
    this.#when.className = line.why.values["severity"] === "stop" ? "notice stop" : "";
    setText(this.#why, dueWhy(line, now));
    setText(this.#source, w("checks.source", { source: dueSource(line) }));
    setAttr(this.#done, "aria-label", w("due.doneOf", { done, title }));
    setAttr(this.#way, "aria-label", w("due.doneOf", { done: w("due.go"), title }));
    this.#showValue();
  }
}

function whenDue({ due, overdue_days: days, why: { code, values } }: DueLine, now: number): string {
  if (values["severity"] === "stop") return w("ready.state.stop");
  if (code === "never_noted") return w("due.now");
  if (days > 0) return w("due.overdue", { n: days });
  return due === dayOf(now) ? w("due.today") : w("due.on", { day: dayWords(due, now) });
}

define("rs-due", DuePart);
