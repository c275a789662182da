// The bike by eye: one question fills the screen, one tap answers it.

import { answered, type EyeAnswers, eyeChoices, type EyeQuestion, nextQuestion } from "../../book/car/eye.ts";
import { el, svg } from "../../ui/el.ts";
import { actName, define, Part, setHidden, setText } from "../../ui/part.ts";
import { w } from "../../words/index.ts";

export const eyeAnswered = actName<EyeAnswers>("rs-eye-answered");
export const eyeLeft = actName<undefined>("rs-eye-left");

export class Eye extends Part<EyeAnswers> {
  readonly #question = el("h2");
  readonly #choices = el("div", { class: "eye-choices" });
  readonly #back = el("button", { type: "button", class: "button", on: { click: () => this.#step() } }, w("eye.back"));
  readonly #past: EyeAnswers[] = [];

  protected override build(): void {
    const leave = el("button", { type: "button", class: "button quiet", on: { click: () => this.act(eyeLeft, undefined) } }, w("eye.stop"));
    this.append(el("section", { class: "stack" }, this.#question, this.#choices, el("div", { class: "row" }, this.#back, leave)));
  }

  protected override show(answers: EyeAnswers): void {
    const question = nextQuestion(answers);
    setHidden(this, question === undefined);
    if (question === undefined) return;
    setText(this.#question, w(`eye.ask.${question}`));
    setHidden(this.#back, this.#past.length === 0);
    const choices = eyeChoices(question, answers).map((value) => this.#choice(question, value));
    this.#choices.replaceChildren(...choices);
  }

  #choice(question: EyeQuestion, value: string): HTMLElement {
    return el("button", { type: "button", class: "button big eye-choice", on: { click: () => this.#answer(question, value) } }, drawing(question, value), el("span", {}, choiceWords(question, value)));
  }

  #answer(question: EyeQuestion, value: string): void {
    const before = this.view ?? {};
    this.#past.push(before);
    this.view = answered(before, question, value);
    this.act(eyeAnswered, this.view);
  }

  // step takes the last answer back.
  #step(): void {
    const before = this.#past.pop();
    if (before === undefined) return;
    this.view = before;
    this.act(eyeAnswered, before);
  }

  // begin forgets what was answered of another bike.
  begin(): void {
    this.#past.length = 0;
    this.view = {};
  }
}

function choiceWords(question: EyeQuestion, value: string): string {
  switch (question) {
    case "side": return w(value === "front" ? "eye.front" : "eye.rear");
    case "size": return w(value === "584" ? "eye.size.584" : value === "559" ? "eye.size.559" : "eye.size.622");
    case "brake": return w(value === "rim" ? "eye.rim" : "eye.disc");
    case "axle": {
      const [axle = "", width = ""] = value.split("x");
      return w(Number(axle) < 11 ? "eye.quick" : "eye.thru", { axle, width });
    }
    case "rotor": return w("eye.mm", { mm: value });
    case "speeds": return w("eye.sprockets", { n: value });
  }
}

// drawing shows what to look at; the words say the same.
function drawing(question: EyeQuestion, value: string): SVGSVGElement | null {
  const picture = (...children: readonly SVGElement[]): SVGSVGElement =>
    svg("svg", { viewBox: "0 0 48 48", width: "3em", height: "3em", "aria-hidden": "true", focusable: "false", class: "icon" }, ...children);
  const circle = (r: number, width = 1.5): SVGElement => svg("circle", { cx: 24, cy: 24, r, fill: "none", stroke: "currentColor", "stroke-width": width });
  const line = (d: string, width = 1.5): SVGElement => svg("path", { d, fill: "none", stroke: "currentColor", "stroke-width": width, "stroke-linecap": "round" });
  switch (question) {
    case "side": return picture(line("M9 34 L20 18 L32 18 L39 34 M20 18 L26 34 L32 18"), svg("circle", { cx: value === "rear" ? 9 : 39, cy: 34, r: 7, fill: "none", stroke: "currentColor", "stroke-width": 3 }));
    case "size": return picture(circle({ 622: 21, 584: 18, 559: 15 }[value] ?? 21, 3), circle(2));
    case "brake": return value === "rim" ? picture(circle(20, 2), line("M17 4v9 M31 4v9", 4)) : picture(circle(20, 1), circle(10, 3), line("M31 15l5 5", 5));
    case "axle": return picture(line(Number(value.split("x")[0]) < 11 ? "M6 24h36 M6 24l-2 8 M40 21v6" : "M6 24h36 M10 18v12 M38 18v12", Number(value.split("x")[0]) < 11 ? 2 : 6));
    case "rotor": return picture(circle(Number(value) / 11, 2), circle(5));
    case "speeds": return null;
  }
}

define("rs-eye", Eye);
