// The page of what has to be decided. Questions that were settled while it is open stay as a line: nothing may slip away
// under a finger.

import { clashCards, type Question, settled } from "../../book/settings/clash_view.ts";
import { refsIn } from "../../book/value/refs.ts";
import { describeRecord, type Teller } from "../../book/value/record_words.ts";
import type { RecordState } from "../../log/op/merge.ts";
import { el } from "../../ui/el.ts";
import { keyed } from "../../ui/keyed.ts";
import { listen, setHidden, setText } from "../../ui/part.ts";
import type { Ctx } from "../../ui/screen.ts";
import { w } from "../../words/index.ts";
import { answered, type Answered, type CardView, ClashCardPart, type Item } from "./clash_card.ts";
import { attempt, follow, tellerFor } from "../shared/follow.ts";
import { Doubles } from "./doubles.ts";
import { Outcome, undoFor } from "../../ui/outcome.ts";
import { openPage } from "./page.ts";

// Asked is a question that was seen on this page.
interface Asked {
  readonly rec: string;
  readonly question: Question;
  state: RecordState | undefined; // as it is shown now: an answer is given to this
  open: boolean;
  undoUntil: number; // ms; 0 when it was not settled here
}

export class Clashes {
  readonly #ctx: Ctx;
  readonly #asked = new Map<string, Asked>();
  readonly #intro = el("p");
  readonly #outcome = new Outcome();
  readonly #cards = el("div", { class: "columns" });
  readonly #doubles: Doubles;
  readonly #again: () => Promise<void>;

  constructor(host: HTMLElement, ctx: Ctx) {
    this.#ctx = ctx;
    openPage(ctx, w("clash.title"));
    this.#doubles = new Doubles(ctx);
    host.append(el("div", { class: "stack looking" }, this.#intro, this.#outcome, this.#cards, this.#doubles.node));
    listen(host, answered, (answer) => void this.#answer(answer), ctx.closed);
    this.#again = follow(ctx, () => this.#look(), (words) => (this.#outcome.view = { words, failed: true }));
  }

  async #look(): Promise<void> {
    const states = await this.#ctx.book.clashing();
    const clashing = new Map(states.map((state) => [state.rec, state]));
    const others = [...new Set([...this.#asked.values()].map((each) => each.rec))].filter((rec) => !clashing.has(rec));
    const known = new Map(clashing);
    for (const state of await Promise.all(others.map((rec) => this.#ctx.book.get(rec)))) if (state !== undefined) known.set(state.rec, state);
    const all = [...known.values()];
    const bikes = await this.#ctx.book.all("bike");
    const teller = await tellerFor(this.#ctx, all, refsIn(all));
    if (this.#ctx.closed.aborted) return;
    this.#take(states, known, teller);
    this.#show(known, teller, this.#doubles.show(bikes, teller));
  }

  // take brings what was asked up to date. New questions come last, so that nothing moves.
  #take(states: readonly RecordState[], known: ReadonlyMap<string, RecordState>, teller: Teller): void {
    const open = new Set<string>();
    const newestFirst = [...states].sort((a, b) => b.newest - a.newest);
    for (const { rec, state, questions } of clashCards(newestFirst, teller)) {
      for (const question of questions) {
        open.add(question.key);
        this.#asked.set(question.key, { rec, question, state, open: true, undoUntil: this.#asked.get(question.key)?.undoUntil ?? 0 });
      }
    }
    for (const [key, asked] of this.#asked) {
      if (open.has(key)) continue;
      asked.open = false;
      asked.state = known.get(asked.rec);
    }
  }

  #show(known: ReadonlyMap<string, RecordState>, teller: Teller, doubles: number): void {
    const cards = new Map<string, Item[]>();
    for (const asked of this.#asked.values()) {
      const { rec, question, state, open, undoUntil } = asked;
      const item: Item = { question, settled: open ? undefined : settled(question, state, teller), undoable: undoUntil > Date.now() };
      const others = cards.get(rec);
      if (others === undefined) cards.set(rec, [item]);
      else others.push(item);
    }
    const views = [...cards].map(([rec, items]): CardView => {
      const state = known.get(rec);
      return { rec, title: state === undefined ? "" : describeRecord(state, teller), items };
    });
    keyed(this.#cards, views, (view) => view.rec, () => new ClashCardPart(), (part, view) => (part.view = view));
    const left = doubles > 0 || [...this.#asked.values()].some((each) => each.open);
    setText(this.#intro, left ? w("clash.intro") : w(this.#asked.size === 0 ? "clash.none" : "clash.done"));
    setHidden(this.#cards, views.length === 0);
    this.#cards.parentElement?.classList.remove("looking");
  }

  async #answer({ key, value }: Answered): Promise<void> {
    const asked = this.#asked.get(key);
    const state = asked?.state;
    if (asked === undefined || state === undefined) return;
    asked.undoUntil = Date.now() + undoFor;
    const failed = await attempt(this.#ctx, () => this.#ctx.book.choose(state, asked.question.field, value));
    this.#outcome.view = { words: failed, failed: failed !== "" };
    await this.#again();
    if (failed !== "") return;
    for (const card of this.#cards.children) if (card instanceof ClashCardPart) card.toSettled(key);
    const timer = setTimeout(() => void this.#again(), undoFor);
    this.#ctx.closed.addEventListener("abort", () => clearTimeout(timer));
  }
}
