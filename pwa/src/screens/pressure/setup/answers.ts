// Questions of the first week, answered beside what they concern.

import { gaugeCheck } from "../../../book/pressure/gauge_check.ts";
import { el } from "../../../ui/el.ts";
import { Field, typed } from "../../../ui/field.ts";
import { listen, setHidden, setText } from "../../../ui/part.ts";
import { w } from "../../../words/index.ts";
import type { Inputs, InputState } from "./inputs.ts";

export type Question = "bags" | "inner" | "lower" | "plug" | "insert" | "soft";

// answered is a question that opens into its answer.
export function answered(question: Question): HTMLElement {
  return disclosed(w(`ask.${question}`), el("p", {}, w(`answer.${question}`)));
}

function disclosed(question: string, ...answer: readonly Node[]): HTMLElement {
  return el("details", { class: "ask" }, el("summary", {}, question), el("div", { class: "stack small" }, ...answer));
}

// twoGauges compares the person's gauge with another and stores the difference in the field for the gauge's error.
export function twoGauges(inputs: Inputs): HTMLElement {
  const texts = { mine: "", other: "" };
  const fields = { mine: new Field(), other: new Field() };
  const said = el("p", { role: "status" });
  const store = el("button", { type: "button", class: "button" }, w("gauges.store"));
  let unit: InputState["unit"] = "bar";
  let stored = false;
  const show = (): void => {
    const check = gaugeCheck(texts.mine, texts.other, unit);
    for (const name of ["mine", "other"] as const) {
      const label = w(`gauges.reads.${name}`);
      fields[name].view = { id: `gauges.${name}`, label, spoken: label, text: texts[name], unit: w(`unit.${unit}`), range: null, fault: "", signed: false, step: 0 };
    }
    setText(said, stored ? w("gauges.stored") : check.words);
    setHidden(store, stored || check.text === "");
  };
  const box = disclosed(w("ask.gauges"), el("p", {}, w("gauges.how")), el("div", { class: "fields" }, fields.mine, fields.other), said, store);
  for (const name of ["mine", "other"] as const) {
    listen(fields[name], typed, ({ text }, event) => {
      event.stopPropagation(); // no input of the sums
      texts[name] = text;
      stored = false;
      show();
    });
  }
  store.addEventListener("click", () => {
    const { text } = gaugeCheck(texts.mine, texts.other, unit);
    stored = true;
    box.dispatchEvent(new CustomEvent(typed, { detail: { id: "gaugeError", text }, bubbles: true }));
    show();
  });
  inputs.also((state) => {
    if (state.unit !== unit) texts.mine = texts.other = ""; // bare numbers would change their meaning
    unit = state.unit;
    show();
  });
  return box;
}
