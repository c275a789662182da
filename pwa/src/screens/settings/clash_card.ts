// One record whose phones disagree: its open questions with a button for each answer, and what was settled.

import "./clashes.css";
import type { Answer, Question, Settled } from "../../book/settings/clash_view.ts";
import type { Json } from "../../log/op/json.ts";
import { el } from "../../ui/el.ts";
import { keyed } from "../../ui/keyed.ts";
import { actName, define, Part, setAttr, setHidden, setText } from "../../ui/part.ts";
import { facts, w } from "../../words/index.ts";
import { historyOf } from "./page.ts";

export interface Item {
  readonly question: Question;
  readonly settled: Settled | undefined; // undefined: still open
  readonly undoable: boolean; // settled here a moment ago: another answer is still offered
}

export interface CardView {
  readonly rec: string;
  readonly title: string;
  readonly items: readonly Item[];
}

export interface Answered {
  readonly key: string; // of the question
  readonly value: Json;
}

export const answered = actName<Answered>("rs-answered");

export class ClashCardPart extends Part<CardView> {
  readonly #title = el("h2");
  readonly #items = el("div", { class: "stack" });
  readonly #history = el("a", { class: "button quiet" }, w("clash.history"));

  protected override build(): void {
    this.append(el("section", { class: "card stack" }, this.#title, this.#items, el("p", { class: "flush" }, this.#history)));
  }

  protected override show({ rec, title, items }: CardView): void {
    setText(this.#title, title);
    setAttr(this.#history, "href", historyOf(rec));
    setAttr(this.#history, "aria-label", w("clash.historyOf", { name: title }));
    keyed(this.#items, items, (each) => each.question.key, () => new QuestionPart(), (part, each) => (part.view = each));
  }

  // toSettled takes a person who has just answered to what came of it.
  toSettled(key: string): void {
    for (const part of this.#items.children) {
      if (part instanceof QuestionPart && part.view?.question.key === key) part.toSettled();
    }
  }
}

let made = 0;

class QuestionPart extends Part<Item> {
  readonly #ask = el("h3");
  readonly #facts = el("div");
  readonly #answers = el("div", { class: "stack answers" });
  readonly #open = el("div", { class: "stack", role: "group" }, this.#ask, this.#facts, this.#answers);
  readonly #words = el("strong");
  readonly #by = el("span", { class: "quiet small" });
  readonly #done = el("p", { tabindex: -1 }, this.#words, " ", this.#by);
  readonly #instead = el("div", { class: "row" });

  protected override build(): void {
    this.#ask.id = `question-${++made}`;
    setAttr(this.#open, "aria-labelledby", this.#ask.id);
    this.append(this.#open, this.#done, this.#instead);
  }

  protected override show({ question, settled, undoable }: Item): void {
    setHidden(this.#open, settled !== undefined);
    setHidden(this.#done, settled === undefined);
    this.#showInstead(settled?.instead ?? [], undoable);
    if (settled === undefined) return this.#showOpen(question);
    setText(this.#words, settled.words);
    setText(this.#by, settled.by === "" ? "" : w("clash.decided", { by: settled.by }));
  }

  #showOpen({ ask, facts, answers }: Question): void {
    setText(this.#ask, ask);
    setHidden(this.#facts, facts.length === 0);
    keyed(this.#facts, facts, (fact) => fact, () => el("p"), (node, fact) => setText(node, fact));
    keyed(this.#answers, answers, keyOf, () => new AnswerButton(), (button, answer) => {
      button.view = answer;
      button.onclick = () => this.#say(answer);
    });
  }

  #showInstead(answers: readonly Answer[], undoable: boolean): void {
    const gone = !undoable && this.#instead.contains(document.activeElement);
    keyed(this.#instead, undoable ? answers : [], keyOf, () => el("button", { type: "button", class: "button" }), (button, answer) => {
      setText(button, w("clash.instead", { label: answer.label }));
      button.onclick = () => this.#say(answer);
    });
    setHidden(this.#instead, !undoable);
    if (gone) this.toSettled();
  }

  #say(answer: Answer): void {
    this.act(answered, { key: this.view?.question.key ?? "", value: answer.value });
  }

  toSettled(): void {
    this.#done.focus();
  }
}

// Equal values are one answer, so a value is its key.
function keyOf(answer: Answer): string {
  return JSON.stringify(answer.value);
}

class AnswerButton extends Part<Answer> {
  readonly #label = el("strong");
  readonly #by = el("span");
  readonly #button = el("button", { type: "button", class: "button big" }, this.#label, this.#by);

  protected override build(): void {
    this.append(this.#button);
  }

  protected override show({ label, by, mark }: Answer): void {
    setText(this.#label, label);
    setText(this.#by, facts([by, mark]));
    setHidden(this.#by, this.#by.textContent === "");
  }
}

define("rs-answer", AnswerButton);
define("rs-question", QuestionPart);
define("rs-clash-card", ClashCardPart);
