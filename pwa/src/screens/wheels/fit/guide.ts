// The guide of one wheel: may the tyre go on the rim, will it go on, the ways to the steps, and what was done.

import { draftName } from "../../../book/fit/fit_draft.ts";
import { type Way } from "../../../book/fit/steps.ts";
import { shortNameOf } from "../../../book/value/record_words.ts";
import { newRec } from "../../../log/book_log.ts";
import { el } from "../../../ui/el.ts";
import { openPage } from "../../../ui/page.ts";
import { listen, setHidden } from "../../../ui/part.ts";
import type { Ctx } from "../../../ui/screen.ts";
import { w } from "../../../words/index.ts";
import { attempt, follow } from "../../shared/follow.ts";
import { Said } from "../said.ts";
import { type FitBook, readFit } from "./fit_book.ts";
import { PairCard, tyreChosen } from "./pair.ts";
import { RoomCard } from "./room.ts";

export function guideOf(host: HTMLElement, ctx: Ctx, rec: string): void {
  new Guide(host, ctx, rec);
}

class Guide {
  readonly #ctx: Ctx;
  readonly #rec: string;
  readonly #page = el("div", { class: "stack looking" });
  readonly #gone = el("p", { class: "notice care", hidden: true }, w("fit.gone"));
  readonly #said = new Said();
  readonly #pair: PairCard;
  readonly #room: RoomCard;
  readonly #ways: Readonly<Record<Way, { readonly link: HTMLElement; readonly closed: HTMLElement }>>;
  readonly #again: () => Promise<void>;

  constructor(host: HTMLElement, ctx: Ctx, rec: string) {
    this.#ctx = ctx;
    this.#rec = rec;
    openPage(ctx, w("fit.title"), { href: `#/wheels/${rec}`, words: w("measure.record") });
    const say = (words: string, undo?: () => Promise<unknown>, failed = false): void => this.#said.say(ctx, words, undo, failed);
    const again = (): void => void this.#again();
    this.#pair = new PairCard(ctx, again, say);
    this.#room = new RoomCard(ctx, again, say);
    const way = (name: Way): { readonly link: HTMLElement; readonly closed: HTMLElement } => ({
      link: el("a", { class: "button primary big", href: `#/wheels/fit/${rec}/${name}` }, w(`fitWay.${name}`)), closed: el("p", { class: "quiet", hidden: true }, w("fit.closed")),
    });
    this.#ways = { off: way("off"), on: way("on"), seat: way("seat") };
    this.#page.append(this.#gone, el("div", { class: "columns" },
      el("div", { class: "stack" }, this.#step("off"), this.#pair.node),
      el("div", { class: "stack" }, this.#room.node, this.#step("on"), this.#step("seat"),
        el("section", { class: "card stack" }, el("h2", {}, w("fit.done")), el("p", { class: "quiet" }, w("fit.doneIntro")), el("p", {}, el("a", { class: "button", href: `#/wheels/fit/${rec}/done` }, w("fit.toDone")))))), this.#said);
    host.append(this.#page);
    listen(host, tyreChosen, (tyre) => void this.#choose(tyre), ctx.closed);
    ctx.closed.addEventListener("abort", () => this.#said.stop());
    this.#again = follow(ctx, () => this.#look(), (words) => say(words, undefined, true));
  }

  #step(way: Way): HTMLElement {
    const { link, closed } = this.#ways[way];
    return el("section", { class: "card stack" }, el("h2", {}, w(`fitWay.${way}`)), el("p", {}, w(`fitWayText.${way}`)),
      ...(way === "off" ? [el("p", { class: "small quiet" }, w("fit.handsFree"))] : []), closed, el("p", {}, link));
  }

  async #look(): Promise<void> {
    const at = await readFit(this.#ctx, this.#rec);
    if (this.#ctx.closed.aborted) return;
    this.#page.classList.remove("looking");
    setHidden(this.#gone, at.wheel !== undefined);
    if (at.wheel !== undefined) this.#ctx.heading(`${w("fit.title")} · ${shortNameOf(at.wheel, at.teller)}`);
    await this.#pair.show(at);
    await this.#room.show(at);
    this.#open(at);
  }

  // open shows the ways that may be gone: off always, on and up only once the pair is known to be allowed.
  #open({ gate, tyre }: FitBook): void {
    for (const way of ["on", "seat"] as const) {
      const open = gate.open && tyre !== undefined;
      setHidden(this.#ways[way].link, !open);
      setHidden(this.#ways[way].closed, open);
    }
  }

  async #choose(tyre: string): Promise<void> {
    const rec = tyre === "new" ? newRec() : tyre;
    const { book } = this.#ctx;
    const failed = tyre !== "new" ? "" : await attempt(this.#ctx, () => book.save([{ rec, kind: "tyre", set: { hookless_ok: "unknown" } }]));
    if (failed !== "") return this.#said.say(this.#ctx, failed, undefined, true);
    const { draft } = await readFit(this.#ctx, this.#rec);
    await this.#ctx.drafts.save(draftName(this.#rec), { ...draft, tyre: rec });
    await this.#again();
  }
}
