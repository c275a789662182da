// One row of a station: what to look for, a value to type where one is asked, skip, and report a fault.

import { rowHow, rowLimit, rowLook, rowSource } from "../../book/checks/row_words.ts";
import { rowTitle } from "../../book/checks/rows.ts";
import { el } from "../../ui/el.ts";
import { Field } from "../../ui/field.ts";
import { actName, define, Part, setAttr, setHidden, setText } from "../../ui/part.ts";
import { w } from "../../words/index.ts";
import { FoundForm, type FoundView } from "./found_form.ts";
import type { AskView } from "./station.ts";

export const askFound = actName<string>("rs-ask-found");
export const askSkipped = actName<string>("rs-ask-skipped");

export class AskPart extends Part<AskView> {
  readonly #title = el("strong");
  readonly #look = el("p");
  readonly #before = el("p", { class: "small quiet" });
  readonly #mark = el("a", {}, w("checks.toMark"));
  readonly #unread = el("p", { class: "notice care" }, w("checks.unread"), " ", this.#mark);
  readonly #value = new Field();
  readonly #verdict = el("strong", { role: "status" });
  readonly #measure = el("div", { class: "fields" }, this.#value, this.#verdict);
  readonly #how = el("p");
  readonly #limit = el("p");
  readonly #source = el("p", { class: "quiet" });
  readonly #summary = el("summary", {}, w("checks.how"));
  readonly #fold = el("details", { class: "small" }, this.#summary, this.#how, this.#limit, this.#source);
  readonly #find = el("button", { type: "button", class: "button", on: { click: () => this.act(askFound, this.view?.ask.id ?? "") } });
  readonly #skip = el("button", { type: "button", class: "button quiet", on: { click: () => this.act(askSkipped, this.view?.ask.id ?? "") } });
  readonly #form = el("div");

  protected override build(): void {
    setAttr(this, "role", "listitem");
    this.append(el("div", {}, this.#title, this.#look), this.#before, this.#unread, this.#measure, el("div", { class: "ask" }, this.#find, this.#skip), this.#fold, this.#form);
  }

  protected override show(view: AskView): void {
    const { ask, found, bad, skipped, form } = view;
    const title = rowTitle(ask.id);
    setText(this.#title, title);
    setText(this.#look, w("checks.lookFor", { what: rowLook(ask.id) }));
    setText(this.#how, rowHow(ask.id));
    setText(this.#limit, rowLimit(ask));
    setText(this.#source, w("checks.source", { source: rowSource(ask) }));
    setAttr(this.#summary, "aria-label", w("checks.howOf", { title }));
    setText(this.#find, found === undefined ? w("checks.find") : `! ${w(`checks.bad.${bad ?? "care"}`)}`);
    setAttr(this.#find, "aria-label", found === undefined ? w("checks.findOf", { title }) : `${title}: ${w(`checks.bad.${bad ?? "care"}`)}`);
    setAttr(this.#find, "aria-expanded", form !== undefined);
    setText(this.#skip, skipped ? w("checks.unskip") : w("checks.skipRow"));
    setAttr(this.#skip, "aria-label", skipped ? w("checks.unskipOf", { title }) : w("checks.skipRowOf", { title }));
    setAttr(this.#skip, "aria-pressed", skipped);
    setHidden(this.#skip, found !== undefined);
    this.classList.toggle("skipped", skipped && found === undefined);
    this.#showValue(view, title);
    this.#showForm(form);
  }

  #showValue({ ask, value, verdict, fault, bad, before, mark }: AskView, title: string): void {
    setText(this.#before, before);
    setHidden(this.#before, before === "");
    setHidden(this.#unread, mark === "");
    setAttr(this.#mark, "href", mark === "" ? null : mark);
    setHidden(this.#measure, ask.measure === null);
    if (ask.measure === null) return;
    const label = w(`check.measure.${ask.measure}`);
    this.#value.view = { id: `${ask.id}.value`, label, spoken: `${title}: ${label}`, text: value, unit: w("unit.mm"), range: null, fault, signed: false, step: 0 };
    setText(this.#verdict, verdict);
    this.#verdict.className = verdict === "" || bad === undefined ? "" : `notice ${bad}`;
  }

  #showForm(form: FoundView | undefined): void {
    const part = this.#form.firstElementChild;
    if (form === undefined) this.#form.replaceChildren();
    else if (part instanceof FoundForm) part.view = form;
    else {
      const fresh = new FoundForm();
      fresh.view = form;
      this.#form.replaceChildren(fresh);
    }
  }
}

define("rs-ask", AskPart);
