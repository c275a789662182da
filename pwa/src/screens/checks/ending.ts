// What a walk-around comes to, in words, with the reasons.

import { type Item, verdictOf, type Walk } from "../../book/checks/walk.ts";
import { el } from "../../ui/el.ts";
import { keyed } from "../../ui/keyed.ts";
import { actName, define, Part, setHidden, setText } from "../../ui/part.ts";
import { w } from "../../words/index.ts";

export interface EndingView {
  readonly walk: Walk;
  readonly items: readonly Item[];
}

export const walkFinished = actName<undefined>("rs-walk-finished");
export const walkPutAway = actName<undefined>("rs-walk-put-away");
export const walkChanged = actName<undefined>("rs-walk-changed");

export class Ending extends Part<EndingView> {
  readonly #outcome = el("h2", { tabindex: -1, class: "outcome" });
  readonly #reasons = el("ul", {});
  readonly #defer = el("p", { class: "small quiet" }, w("checks.defer"));
  readonly #failed = el("p", { class: "fault", role: "alert" });
  readonly #card = el("section", { class: "card stack" }, this.#outcome, this.#reasons, this.#defer, this.#failed,
    el("div", { class: "okay" },
      el("button", { type: "button", class: "button primary big", on: { click: () => this.act(walkFinished, undefined) } }, w("checks.finish")),
      el("button", { type: "button", class: "button big", on: { click: () => this.act(walkChanged, undefined) } }, w("checks.change"))));

  protected override build(): void {
    this.append(el("div", { class: "stack" }, this.#card,
      el("p", {}, el("button", { type: "button", class: "button quiet flush", on: { click: () => this.act(walkPutAway, undefined) } }, w("checks.cancel")))));
  }

  protected override show({ walk, items }: EndingView): void {
    const { outcome, looked, of } = verdictOf(items);
    const answered = walk.asked.some(({ id }) => walk.seen[id] !== undefined || walk.found[id] !== undefined);
    setHidden(this.#card, !answered);
    setText(this.#outcome, outcome === "nothing_found" ? w("checks.nothing", { looked, of }) : outcome === "do_not_ride" ? w("checks.stop") : w("checks.care"));
    this.#card.classList.toggle("stop", outcome === "do_not_ride");
    this.#card.classList.toggle("care", outcome === "ride_with_care");
    const found = walk.asked.flatMap(({ id, title }) => {
      const finding = walk.found[id];
      return finding === undefined ? [] : [`${title}: ${finding.words.trim() === "" ? w(`checks.bad.${finding.severity ?? "care"}`) : `${finding.words.trim()} (${w(`checks.bad.${finding.severity ?? "care"}`)})`}`];
    });
    const missed = walk.asked.filter((_, n) => items[n]?.state === "skipped").map(({ title }) => title);
    const reasons = [...found, ...(missed.length === 0 ? [] : [w("checks.skipped", { n: missed.length, of, what: missed.join(", ") })])];
    keyed(this.#reasons, reasons, (words) => words, () => el("li"), setText);
    setHidden(this.#reasons, reasons.length === 0);
  }

  fail(words: string): void {
    setText(this.#failed, words);
  }

  toOutcome(): void {
    this.#outcome.focus({ preventScroll: true });
    this.#card.scrollIntoView({ block: "center" });
  }
}

define("rs-ending", Ending);
