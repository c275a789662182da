// What a walk-around comes to: whether the bike may be ridden, as everywhere, and how much this walk has seen.

import { rowTitle } from "../../book/checks/rows.ts";
import type { ReadyView } from "../../book/checks/ready_view.ts";
import { askedNow, countOf, itemsOf, type Walk } from "../../book/checks/walk.ts";
import { el } from "../../ui/el.ts";
import { actName, define, Part, setHidden, setText } from "../../ui/part.ts";
import { listed, w } from "../../words/index.ts";
import { ReadyCard } from "../shared/ready_part.ts";

export interface EndingView {
  readonly walk: Walk;
  readonly ready: ReadyView | undefined; // as it will be once the walk is ended
}

export const walkFinished = actName<undefined>("rs-walk-finished");
export const walkChanged = actName<undefined>("rs-walk-changed");

export class Ending extends Part<EndingView> {
  readonly #ready = new ReadyCard();
  readonly #count = el("p");
  readonly #skipped = el("p");
  readonly #failed = el("p", { class: "fault", role: "alert" });

  protected override build(): void {
    this.append(el("div", { class: "stack" }, this.#ready, el("section", { class: "card stack" }, this.#count, this.#skipped, el("p", { class: "small quiet" }, w("checks.defer")), this.#failed,
      el("div", { class: "okay" },
        el("button", { type: "button", class: "button primary big", on: { click: () => this.act(walkFinished, undefined) } }, w("checks.finish")),
        el("button", { type: "button", class: "button big", on: { click: () => this.act(walkChanged, undefined) } }, w("checks.change"))))));
  }

  protected override show({ walk, ready }: EndingView): void {
    const items = itemsOf(walk);
    const { asked, looked } = countOf(items);
    const more = walk.asked.length - askedNow(walk).length;
    this.#ready.view = { ready, of: "", quietWhenFine: false };
    setText(this.#count, more === 0 ? w("checks.thisWalk", { asked, looked }) : w("checks.thisWalkMore", { asked, looked, more }));
    setHidden(this.#count, ready?.state === "no_fault_found");
    const missed = items.filter(({ state }) => state === "skipped").map(({ id }) => rowTitle(id as Walk["asked"][number]["id"]));
    setText(this.#skipped, missed.length === 0 ? "" : w("checks.skipped", { what: listed([...new Set(missed)]) }));
    setHidden(this.#skipped, missed.length === 0);
  }

  fail(words: string): void {
    setText(this.#failed, words);
  }

  toOutcome(): void {
    this.#ready.toState();
  }
}

define("rs-ending", Ending);
