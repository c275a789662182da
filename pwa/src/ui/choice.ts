// One out of a few: native radio buttons side by side. The chosen one is told by its dot, its weight and its edge.

import "./choice.css";
import { el } from "./el.ts";
import { actName, define, Part } from "./part.ts";

export interface ChoiceView {
  readonly name: string; // of the group; no other group on the page has it
  readonly legend: string;
  readonly options: readonly { readonly value: string; readonly label: string }[];
  readonly value: string;
}

export interface Chosen {
  readonly name: string;
  readonly value: string;
}

export const chosen = actName<Chosen>("rs-chosen");

export class Choice extends Part<ChoiceView> {
  readonly #legend = el("legend");
  readonly #list = el("div", { class: "row" });
  readonly #radios = new Map<string, HTMLInputElement>();

  protected override build(): void {
    this.append(el("fieldset", {}, this.#legend, this.#list));
  }

  protected override show(view: ChoiceView): void {
    if (this.#radios.size === 0) this.#fill(view);
    for (const [value, radio] of this.#radios) radio.checked = value === view.value;
  }

  // The options of a choice do not change while it stands on the page.
  #fill(view: ChoiceView): void {
    this.#legend.textContent = view.legend;
    for (const { value, label } of view.options) {
      const change = (): void => this.act(chosen, { name: view.name, value });
      const radio = el("input", { type: "radio", name: view.name, value, on: { change } });
      this.#radios.set(value, radio);
      this.#list.append(el("label", {}, radio, el("span", {}, label)));
    }
  }
}

define("rs-choice", Choice);
