// A form of questions about a thing. Parts stay while their question stands, so that nobody is disturbed while typing.

import "./form.css";
import type { Asked } from "../../book/wheels/thing_view.ts";
import { Choice } from "../../ui/choice.ts";
import { el } from "../../ui/el.ts";
import { DayEntry, LongEntry } from "../../ui/entry.ts";
import { Field } from "../../ui/field.ts";
import { keyed } from "../../ui/keyed.ts";
import { define, Part } from "../../ui/part.ts";
import { Picker } from "../../ui/picker.ts";

export class Form extends Part<readonly Asked[]> {
  readonly #fields = el("div", { class: "fields" });

  protected override build(): void {
    this.append(this.#fields);
  }

  protected override show(asked: readonly Asked[]): void {
    keyed(this.#fields, asked, ({ as, id }) => `${as} ${id}`, made, fill);
  }
}

type Answer = Field | Choice | Picker | DayEntry | LongEntry;

function made({ as }: Asked): Answer {
  switch (as) {
    case "typed": return new Field();
    case "day": return new DayEntry();
    case "note": return new LongEntry();
    case "choice": return new Choice();
    case "picker": return new Picker();
  }
}

function fill(part: Answer, asked: Asked): void {
  if (part instanceof Field && asked.as === "typed") part.view = { ...asked, spoken: asked.label, step: 0 };
  else if ((part instanceof DayEntry || part instanceof LongEntry) && (asked.as === "day" || asked.as === "note")) part.view = asked;
  else if (part instanceof Choice && asked.as === "choice") part.view = { name: asked.id, legend: asked.label, options: asked.options, value: asked.value };
  else if (part instanceof Picker && asked.as === "picker") part.view = { name: asked.id, label: asked.label, spoken: asked.label, options: asked.options, value: asked.value };
}

define("rs-form", Form);
