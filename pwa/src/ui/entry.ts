// A day, or a longer text: a labelled native input that tells what was typed as a field does.

import "./field.css";
import { el } from "./el.ts";
import { typed } from "./field.ts";
import { define, Part, setAttr, setHidden, setText } from "./part.ts";

export interface EntryView {
  readonly id: string;
  readonly label: string;
  readonly text: string;
  readonly fault: string;
}

let made = 0;

abstract class Entry extends Part<EntryView> {
  readonly #label = el("label");
  readonly #fault = el("p", { class: "fault" });
  protected abstract readonly input: HTMLInputElement | HTMLTextAreaElement;

  protected override build(): void {
    const id = `entry-${++made}`;
    this.input.id = id;
    this.#label.htmlFor = id;
    this.#fault.id = `${id}-fault`;
    setAttr(this.input, "aria-describedby", this.#fault.id);
    this.input.addEventListener("input", () => this.act(typed, { id: this.view?.id ?? "", text: this.input.value }));
    this.append(this.#label, this.input, this.#fault);
  }

  protected override show({ label, text, fault }: EntryView): void {
    setText(this.#label, label);
    setText(this.#fault, fault);
    setHidden(this.#fault, fault === "");
    setAttr(this.input, "aria-invalid", fault === "" ? null : "true");
    if (this.input.value !== text) this.input.value = text;
  }

  override focus(): void {
    this.input.focus();
  }
}

export class DayEntry extends Entry {
  protected override readonly input = el("input", { class: "entry", type: "date" });
}

export class LongEntry extends Entry {
  protected override readonly input = el("textarea", { class: "entry", maxlength: 2000 });

  protected override build(): void {
    super.build();
    this.input.rows = 3;
  }
}

define("rs-day-entry", DayEntry);
define("rs-long-entry", LongEntry);
