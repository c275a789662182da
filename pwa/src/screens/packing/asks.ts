// What is not known and would change the list, one question at a time, before the list. An answer belongs to the bike or its wheel.

import { questionsOf, type Question } from "../../book/packing/questions.ts";
import { Choice, chosen } from "../../ui/choice.ts";
import { el } from "../../ui/el.ts";
import { keyed } from "../../ui/keyed.ts";
import { actName, define, listen, Part, setHidden, setText } from "../../ui/part.ts";
import { w } from "../../words/index.ts";
import { Rest } from "./steady.ts";

export interface Answered {
  readonly question: Question;
  readonly value: string;
}

export const answered = actName<Answered>("rs-pack-answered");

export class Asks extends Part<ReturnType<typeof questionsOf>> {
  readonly #one = el("div");
  readonly #more = el("p", { class: "small quiet" });
  readonly #rest = new Rest(this);
  #later = false; // in this visit
  #shown = "";

  protected override build(): void {
    const later = (): void => {
      this.#later = true;
      setHidden(this, true);
    };
    this.append(el("section", { class: "card stack asks" }, el("h2", {}, w("trip.asks")), el("p", { class: "small quiet" }, w("trip.asksWhy")), this.#one,
      el("div", { class: "row spread" }, this.#more, el("button", { type: "button", class: "button quiet", on: { click: later } }, w("trip.asksLater")))));
    listen(this, chosen, ({ value }, event) => {
      event.stopPropagation();
      const [question] = this.view ?? [];
      if (question !== undefined && this.#rest.over) this.act(answered, { question, value });
    });
  }

  protected override show(questions: ReturnType<typeof questionsOf>): void {
    const first = questions.slice(0, 1);
    setHidden(this, this.#later || first.length === 0);
    const key = first[0]?.key ?? "";
    if (this.#shown !== "" && key !== this.#shown) this.#rest.begin();
    this.#shown = key;
    keyed(this.#one, first, (each) => each.key, () => new Choice(), (choice, { key: name, label, options }) => (choice.view = { name, legend: label, options, value: "" }));
    setText(this.#more, questions.length < 2 ? "" : w("trip.asksMore", { n: questions.length - 1 }));
  }
}

define("rs-pack-asks", Asks);
