// The page of what could not be saved on the server: what it was, the server's reason, and details to copy.

import "./refused.css";
import { type RejectedView, rejectedViews } from "../../book/settings/rejected_view.ts";
import { refsOf } from "../../book/value/refs.ts";
import { el } from "../../ui/el.ts";
import { keyed } from "../../ui/keyed.ts";
import { actName, define, listen, Part, setAttr, setHidden, setText } from "../../ui/part.ts";
import type { Ctx } from "../../ui/screen.ts";
import { w } from "../../words/index.ts";
import { attempt, follow, tellerFor } from "../shared/follow.ts";
import { Outcome } from "../../ui/outcome.ts";
import { openPage } from "./page.ts";

const seen = actName<string>("rs-refusal-seen"); // the op's id

class Refusal extends Part<RejectedView> {
  readonly #title = el("h2");
  readonly #by = el("p", { class: "quiet small" });
  readonly #values = el("ul", { class: "unmarked" });
  readonly #reason = el("p", { class: "notice care" });
  readonly #code = el("p", { class: "quiet small" });
  readonly #details = el("pre", { tabindex: 0 });
  readonly #fold = el("details", {}, el("summary", {}, w("refused.details")), this.#details);
  readonly #copied = el("p", { role: "status" });
  readonly #copy = el("button", { type: "button", class: "button", on: { click: () => void this.#take() } }, w("refused.copy"));
  readonly #seen = el("button", { type: "button", class: "button", on: { click: () => this.act(seen, this.view?.id ?? "") } }, w("refused.seen"));

  protected override build(): void {
    this.append(el("section", { class: "card stack" }, el("div", {}, this.#title, this.#by), this.#values, this.#reason, this.#code, this.#fold,
      el("div", { class: "row" }, this.#copy, this.#seen), this.#copied));
  }

  protected override show(view: RejectedView): void {
    setText(this.#title, view.title);
    setText(this.#by, view.by);
    keyed(this.#values, view.values, (each) => each.label, () => el("li"), (node, { label, value }) => setText(node, w("clash.is", { field: label, value })));
    setHidden(this.#values, view.values.length === 0);
    setText(this.#reason, w("refused.reason", { reason: view.reason }));
    setText(this.#code, w("refused.code", { code: view.code }));
    setText(this.#details, view.details);
    setAttr(this.#copy, "aria-label", w("refused.copyOf", { name: view.title }));
    setAttr(this.#seen, "aria-label", w("refused.seenOf", { name: view.title }));
  }

  async #take(): Promise<void> {
    try {
      await navigator.clipboard.writeText(this.#details.textContent);
      setText(this.#copied, w("refused.copied"));
    } catch {
      this.#fold.open = true;
      getSelection()?.selectAllChildren(this.#details);
      setText(this.#copied, w("refused.marked"));
    }
  }
}

export class Refused {
  readonly #ctx: Ctx;
  readonly #intro = el("p", { tabindex: -1 });
  readonly #outcome = new Outcome();
  readonly #cards = el("div", { class: "columns" });
  readonly #again: () => Promise<void>;

  constructor(host: HTMLElement, ctx: Ctx) {
    this.#ctx = ctx;
    openPage(ctx, w("refused.title"));
    host.append(el("div", { class: "stack looking" }, this.#intro, this.#outcome, this.#cards));
    listen(host, seen, (id) => void this.#dismiss(id), ctx.closed);
    this.#again = follow(ctx, () => this.#look(), (words) => (this.#outcome.view = { words, failed: true }));
    ctx.closed.addEventListener("abort", ctx.sync.on(() => void this.#again()));
  }

  async #look(): Promise<void> {
    const ops = await this.#ctx.book.rejected();
    const known = ops.flatMap(({ op }) => (op === undefined ? [] : [op]));
    const refs = refsOf(known);
    for (const { rec } of known) refs.add(rec);
    const teller = await tellerFor(this.#ctx, [], refs);
    if (this.#ctx.closed.aborted) return;
    keyed(this.#cards, rejectedViews(ops, teller), (view) => view.key, () => new Refusal(), (part, view) => (part.view = view));
    setText(this.#intro, w(ops.length === 0 ? "refused.none" : "refused.intro"));
    this.#cards.parentElement?.classList.remove("looking");
  }

  async #dismiss(id: string): Promise<void> {
    const failed = await attempt(this.#ctx, () => this.#ctx.book.dismissRejected(id));
    this.#outcome.view = { words: failed, failed: failed !== "" };
    await this.#again();
    if (failed === "") this.#intro.focus(); // its card is gone, and the focus with it
  }
}

define("rs-refusal", Refusal);
