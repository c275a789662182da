// A field that is typed into: label, unit beside it, the range said before it is broken, the reason when it is.

import "./field.css";
import { w } from "../words/index.ts";
import { el } from "./el.ts";
import { actName, define, Part, setAttr, setHidden, setText } from "./part.ts";

export interface FieldShown {
  readonly id: string;
  readonly label: string;
  readonly spoken: string;
  readonly text: string;
  readonly unit: string;
  readonly range: string | null; // "" keeps the room for one that is not known yet; null for none
  readonly fault: string;
  readonly signed: boolean;
  readonly step: number; // 0: no steppers
}

export interface Typed {
  readonly id: string;
  readonly text: string;
}

export interface Stepped {
  readonly id: string;
  readonly by: number;
}

export const typed = actName<Typed>("rs-typed");
export const stepped = actName<Stepped>("rs-stepped");

let made = 0;

export class Field extends Part<FieldShown> {
  readonly #input = el("input", { class: "entry", type: "text", autocomplete: "off", spellcheck: "false", enterkeyhint: "done" });
  readonly #label = el("label");
  readonly #unit = el("span", { class: "unit", "aria-hidden": "true" });
  readonly #range = el("p", { class: "small quiet range" });
  readonly #fault = el("p", { class: "fault" });
  readonly #line = el("div", { class: "line" }, this.#input, this.#unit);
  #steppers: readonly [less: HTMLElement, more: HTMLElement] | undefined; // only where the field has them

  protected override build(): void {
    const id = `field-${++made}`;
    this.#input.id = id;
    this.#label.htmlFor = id;
    this.#range.id = `${id}-range`;
    this.#fault.id = `${id}-fault`;
    this.#input.addEventListener("input", () => this.act(typed, { id: this.#id(), text: this.#input.value }));
    this.append(this.#label, this.#line, this.#fault, this.#range);
  }

  #id(): string {
    return this.view?.id ?? "";
  }

  #stepper(sign: number, text: string): HTMLElement {
    const step = (): void => this.act(stepped, { id: this.#id(), by: sign * (this.view?.step ?? 0) });
    return el("button", { type: "button", class: "button big", on: { click: step } }, text);
  }

  #addSteppers(): readonly [HTMLElement, HTMLElement] {
    const made = [this.#stepper(-1, "−"), this.#stepper(1, "+")] as const;
    this.#line.prepend(made[0]);
    this.#line.append(made[1]);
    return made;
  }

  protected override show(view: FieldShown): void {
    setText(this.#label, view.label);
    setAttr(this.#input, "aria-label", view.spoken === view.label ? null : view.spoken);
    setText(this.#unit, view.unit);
    setText(this.#range, view.range ?? "");
    setText(this.#fault, view.fault);
    setHidden(this.#range, view.range === null);
    setHidden(this.#fault, view.fault === "");
    setAttr(this.#input, "inputmode", view.signed ? "text" : "decimal"); // a phone's decimal pad often has no minus
    setAttr(this.#input, "aria-invalid", view.fault === "" ? null : "true");
    setAttr(this.#input, "aria-describedby", `${this.#fault.id} ${this.#range.id}`);
    if (view.step > 0) {
      this.#steppers ??= this.#addSteppers();
      setAttr(this.#steppers[0], "aria-label", w("stepper.less", { label: view.spoken }));
      setAttr(this.#steppers[1], "aria-label", w("stepper.more", { label: view.spoken }));
    }
    if (this.#input.value !== view.text) this.#input.value = view.text;
  }

  override focus(): void {
    this.#input.focus();
    this.#input.scrollIntoView({ block: "center" });
  }
}

define("rs-field", Field);
