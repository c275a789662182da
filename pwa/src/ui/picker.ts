// One out of many: a labelled native list, which every phone shows in a way its owner knows.

import "./field.css";
import { el } from "./el.ts";
import { chosen } from "./choice.ts";
import { define, Part, setAttr, setText } from "./part.ts";

export interface PickerView {
  readonly name: string;
  readonly label: string;
  readonly spoken: string;
  readonly value: string;
  readonly options: readonly { readonly value: string; readonly label: string }[];
}

let made = 0;

export class Picker extends Part<PickerView> {
  readonly #select = el("select", { class: "entry" });
  readonly #label = el("label");

  protected override build(): void {
    const id = `picker-${++made}`;
    this.#select.id = id;
    this.#label.htmlFor = id;
    this.#select.addEventListener("change", () => this.act(chosen, { name: this.view?.name ?? "", value: this.#select.value }));
    this.append(this.#label, this.#select);
  }

  // A list that is open stays as it is while its lines are the same.
  #offers(options: PickerView["options"]): boolean {
    const lines = [...this.#select.options];
    return lines.length === options.length && options.every(({ value, label }, n) => lines[n]?.value === value && lines[n]?.text === label);
  }

  protected override show(view: PickerView): void {
    setText(this.#label, view.label);
    setAttr(this.#select, "aria-label", view.spoken === view.label ? null : view.spoken);
    if (!this.#offers(view.options)) this.#select.replaceChildren(...view.options.map(({ value, label }) => el("option", { value }, label)));
    if (this.#select.value !== view.value) this.#select.value = view.value;
  }
}

define("rs-picker", Picker);
