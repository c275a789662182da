// The page of the erasures that wait: whose, of what, and the two answers. An answer is an entry in the book, so it travels.

import { heldViews, type HeldView } from "../../book/settings/held_view.ts";
import { newRec } from "../../log/book_log.ts";
import { ServerRefusal, ServerTrouble } from "../../log/sync/server_api.ts";
import { el } from "../../ui/el.ts";
import { keyed } from "../../ui/keyed.ts";
import { actName, define, listen, Part, setAttr, setHidden, setText } from "../../ui/part.ts";
import { Outcome } from "../../ui/outcome.ts";
import type { Ctx } from "../../ui/screen.ts";
import { w } from "../../words/index.ts";
import { attempt, follow, tellerFor } from "../shared/follow.ts";
import { openPage } from "./page.ts";

const decided = actName<{ readonly held: HeldView; readonly agree: boolean }>("rs-erasures-decided");

class HeldCard extends Part<HeldView> {
  readonly #title = el("h2");
  readonly #since = el("p", { class: "quiet small" });
  readonly #kinds = el("ul", { class: "unmarked" });
  readonly #names = el("p", { class: "quiet" });
  readonly #state = el("p", { class: "notice care" });
  readonly #means = el("p", {}, w("held.means"));
  readonly #agree = this.#button(true, "held.agree");
  readonly #stop = this.#button(false, "held.stop");

  protected override build(): void {
    this.append(el("section", { class: "card stack" }, el("div", {}, this.#title, this.#since), this.#kinds, this.#names, this.#state, this.#means,
      el("div", { class: "row" }, this.#agree, this.#stop)));
  }

  protected override show({ title, name, since, kinds, names, state, mayAgree, stopped }: HeldView): void {
    setText(this.#title, title);
    setText(this.#since, since);
    keyed(this.#kinds, kinds, (each) => each, () => el("li"), (node, words) => setText(node, words));
    setText(this.#names, names);
    setHidden(this.#names, names === "");
    setText(this.#state, state);
    setHidden(this.#state, state === "");
    setHidden(this.#agree, !mayAgree);
    setHidden(this.#stop, stopped);
    setAttr(this.#agree, "aria-label", w("held.agreeOf", { name }));
    setAttr(this.#stop, "aria-label", w("held.stopOf", { name }));
  }

  #button(agree: boolean, words: "held.agree" | "held.stop"): HTMLButtonElement {
    const press = (): void => {
      if (this.view !== undefined) this.act(decided, { held: this.view, agree });
    };
    return el("button", { type: "button", class: "button", on: { click: press } }, w(words));
  }
}

class Erasures {
  readonly #ctx: Ctx;
  readonly #intro = el("p", { tabindex: -1 });
  readonly #outcome = new Outcome();
  readonly #cards = el("div", { class: "columns" });
  readonly #again: () => Promise<void>;
  #met = -1;

  constructor(host: HTMLElement, ctx: Ctx) {
    this.#ctx = ctx;
    openPage(ctx, w("held.title"));
    host.append(el("div", { class: "stack looking" }, this.#intro, this.#outcome, this.#cards));
    listen(host, decided, ({ held, agree }) => void this.#decide(held, agree), ctx.closed);
    this.#again = follow(ctx, () => this.#look(), (words) => (this.#outcome.view = { words, failed: true }));
    ctx.closed.addEventListener("abort", ctx.sync.on(({ lastMet = 0 }) => {
      if (lastMet !== this.#met) void this.#again();
    }));
  }

  async #look(): Promise<void> {
    const { sync, closed } = this.#ctx;
    this.#met = sync.state.lastMet ?? 0;
    let views: readonly HeldView[] | undefined;
    try {
      const held = await sync.heldErasures();
      const teller = await tellerFor(this.#ctx, [], new Set(held.flatMap(({ recs }) => recs.slice(0, 100)))); // enough to name a few
      views = heldViews(held, teller, Date.now());
    } catch (error) {
      if (!(error instanceof ServerRefusal || error instanceof ServerTrouble)) throw error;
    }
    if (closed.aborted) return;
    setText(this.#intro, w(views === undefined ? "held.away" : views.length === 0 ? "held.none" : "held.intro"));
    keyed(this.#cards, views ?? [], (view) => view.key, () => new HeldCard(), (card, view) => (card.view = view));
    this.#cards.parentElement?.classList.remove("looking");
  }

  async #decide({ ids, recs, name }: HeldView, agree: boolean): Promise<void> {
    const { book, sync } = this.#ctx;
    const failed = await attempt(this.#ctx, () => book.save([{ rec: newRec(), kind: "agreement", set: { ids, recs, agree } }]));
    await sync.round();
    this.#outcome.view = failed === "" ? { words: agree ? w("held.agreed", { name }) : w("held.stopDone") } : { words: failed, failed: true };
    await this.#again();
    this.#intro.focus(); // the card is gone, or has other buttons
  }
}

define("rs-held-card", HeldCard);

export const erasures = (host: HTMLElement, ctx: Ctx): Erasures => new Erasures(host, ctx);
