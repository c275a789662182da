// Set-up on one page: weight, tyres and rims, gauge and pump, with the numbers on top.

import "./setup.css";
import type { ScreenView } from "../../../book/pressure/screen_view.ts";
import { el } from "../../../ui/el.ts";
import { actName, define, Part, setText } from "../../../ui/part.ts";
import { w } from "../../../words/index.ts";
import { Live } from "../card/live.ts";
import { Inputs, type InputState } from "./inputs.ts";
import { gearSection, tyreSection, weightSection } from "./sections.ts";
import { Widths, type WidthsView } from "./widths.ts";

export interface SetupView {
  readonly screen: ScreenView;
  readonly state: InputState;
  readonly widths: WidthsView;
}

export const renamed = actName<string>("rs-renamed");

export class Setup extends Part<SetupView> {
  readonly #inputs = new Inputs();
  readonly #live = new Live();
  readonly #widths = new Widths();
  readonly #assumed = el("p", { class: "quiet small" });
  readonly #name = el("input", { class: "entry", type: "text", maxlength: 60, autocomplete: "off" });

  protected override build(): void {
    const inputs = this.#inputs;
    this.#name.addEventListener("input", () => this.act(renamed, this.#name.value));
    const name = el("label", { class: "named" }, w("field.name"), this.#name);
    this.append(this.#live, this.#assumed, el("div", { class: "columns" },
      el("div", { class: "stack" }, weightSection(inputs), gearSection(inputs, name)),
      el("div", { class: "stack" }, tyreSection(inputs, this.#widths))));
  }

  protected override show({ screen, state, widths }: SetupView): void {
    this.#live.view = screen.wheels;
    setText(this.#assumed, screen.assumed);
    this.#inputs.show(state);
    if (this.#name.value !== state.draft.bike) this.#name.value = state.draft.bike;
    this.#widths.view = widths;
  }

  toField(id: string): void {
    this.#inputs.focus(id);
  }
}

define("rs-setup", Setup);
