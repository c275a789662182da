// One phone of the list: its name and when it came; folded below, another name and the way out.

import { labelFault, longestLabel, type PhoneView } from "../../book/settings/phones_view.ts";
import { el } from "../../ui/el.ts";
import { actName, define, Part, setAttr, setHidden, setText } from "../../ui/part.ts";
import { w } from "../../words/index.ts";
import { entry } from "./phones_entry.ts";

export const renamed = actName<{ readonly id: string; readonly label: string }>("rs-phone-renamed");
export const barred = actName<PhoneView>("rs-phone-barred");

export class PhoneLine extends Part<PhoneView> {
  readonly #name = el("strong");
  readonly #line = el("span", { class: "quiet small block" });
  readonly #label = entry(w("phones.name"), { maxlength: longestLabel });
  readonly #summary = el("summary", {}, w("phones.change"));
  readonly #bar = el("button", { type: "button", class: "button quiet flush", on: { click: () => this.#ask(true) } }, w("phones.shutOut"));
  readonly #means = el("p");
  readonly #yes = el("button", { type: "button", class: "button", on: { click: () => this.#shutOut() } }, w("phones.forEver"));
  readonly #no = el("button", { type: "button", class: "button", on: { click: () => this.#ask(false) } }, w("phones.leave"));
  readonly #sure = el("div", { class: "notice stop", hidden: true }, this.#means, el("div", { class: "row" }, this.#yes, this.#no));
  readonly #form = el("form", { class: "stack" }, this.#label.node, el("p", {}, el("button", { type: "submit", class: "button" }, w("phones.save"))));
  readonly #fold = el("details", {}, this.#summary, el("div", { class: "stack" }, this.#form, this.#bar, this.#sure));
  #shown = "";

  protected override build(): void {
    this.#form.addEventListener("submit", (event) => {
      event.preventDefault();
      this.#rename();
    });
    this.append(el("p", {}, this.#name, this.#line), this.#fold);
  }

  protected override show({ name, label, line, here, out }: PhoneView): void {
    setText(this.#name, name);
    setText(this.#line, line);
    setText(this.#means, w("phones.means", { name }));
    setAttr(this.#summary, "aria-label", w("phones.changeOf", { name }));
    setHidden(this.#fold, out);
    setHidden(this.#bar, here || !this.#sure.hidden);
    if (this.#label.input.value === this.#shown) this.#label.input.value = label; // nothing else was typed
    this.#shown = label;
  }

  #ask(asking: boolean): void {
    setHidden(this.#sure, !asking);
    setHidden(this.#bar, asking);
    (asking ? this.#no : this.#bar).focus();
  }

  #rename(): void {
    const label = this.#label.input.value.trim();
    const fault = labelFault(label);
    this.#label.fault(fault?.words ?? "");
    if (fault !== undefined) this.#label.input.focus();
    else if (this.view !== undefined) this.act(renamed, { id: this.view.id, label });
  }

  #shutOut(): void {
    if (this.view !== undefined) this.act(barred, this.view);
  }
}

define("rs-phone-line", PhoneLine);
