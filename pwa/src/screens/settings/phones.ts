// The page of who may come in: this phone, the others, a code for one more, and what all that is trusted with.

import "./phones.css";
import { phoneViews, type PhoneView, saidFault } from "../../book/settings/phones_view.ts";
import { phaseWords } from "../../book/settings/sync_view.ts";
import { valueOf } from "../../log/op/merge.ts";
import type { Device, Visit } from "../../log/sync/pairing.ts";
import { ServerRefusal, ServerTrouble } from "../../log/sync/server_api.ts";
import { isOutside } from "../../log/sync/sync.ts";
import { el } from "../../ui/el.ts";
import { keyed } from "../../ui/keyed.ts";
import { Outcome } from "../../ui/outcome.ts";
import { listen, setHidden, setText } from "../../ui/part.ts";
import type { Ctx } from "../../ui/screen.ts";
import { w } from "../../words/index.ts";
import { follow } from "../shared/follow.ts";
import { openPage } from "./page.ts";
import { codeCard } from "./phones_code.ts";
import { barred, PhoneLine, renamed } from "./phones_line.ts";
import { pairForm } from "./phones_pair.ts";
import { showVisits, visitsCard } from "./phones_visits.ts";
import { trustCard } from "./phones_trust.ts";

class Phones {
  readonly #ctx: Ctx;
  readonly #intro = el("p", { tabindex: -1 }, w("pair.busy"));
  readonly #outcome = new Outcome();
  readonly #list = el("ul", { class: "unmarked stack" });
  readonly #form;
  readonly #code;
  readonly #again: () => Promise<void>;
  readonly #trust = trustCard();
  readonly #visits = visitsCard();
  #met = "";

  constructor(host: HTMLElement, ctx: Ctx) {
    this.#ctx = ctx;
    openPage(ctx, w("book.phones"));
    this.#form = pairForm(ctx, () => this.#paired());
    this.#code = codeCard(ctx);
    setHidden(this.#form.node, true);
    setHidden(this.#code, true);
    setHidden(this.#visits.node, true);
    setHidden(this.#trust, true); // until it is known how much stands above
    host.append(el("div", { class: "phones columns" },
      el("div", { class: "stack looking" }, this.#intro, this.#outcome, this.#form.node, this.#list, this.#code, this.#visits.node), this.#trust));
    listen(host, renamed, ({ id, label }) => void this.#do(() => ctx.sync.pairing.rename(id, label), w("phones.renamed", { name: label })), ctx.closed);
    listen(host, barred, (phone) => void this.#shutOut(phone), ctx.closed);
    this.#again = follow(ctx, () => this.#look(), (words) => this.#says(words));
    ctx.closed.addEventListener("abort", ctx.sync.on(() => this.#heard()));
  }

  // heard looks again when a round has ended otherwise than the one before, or has met the server once more.
  #heard(): void {
    const { phase, lastMet } = this.#ctx.sync.state;
    const met = `${phase} ${lastMet ?? ""}`;
    if (phase === "sending" || phase === "fetching" || met === this.#met) return;
    this.#met = met;
    void this.#again();
  }

  async #look(): Promise<void> {
    const { book, sync, closed } = this.#ctx;
    await book.ready;
    const label = valueOf(await book.get(book.device), "label");
    const devices = await this.#ask();
    const visits = typeof devices === "string" ? [] : await this.#visitors(); // all is known before anything is shown: nothing jumps
    if (closed.aborted) return;
    this.#form.name(typeof label === "string" && label !== "" ? label : book.usualLabel);
    const outside = devices === "outside";
    const other = !outside && sync.state.phase === "otherBook";
    const views = typeof devices === "string" ? [] : phoneViews(devices, book.device, Date.now());
    this.#says(outside ? phaseWords(isOutside(sync.state) ? sync.state : { ...sync.state, phase: "notPaired" })
      : w(devices === "away" ? "phones.alone" : other ? "phones.other" : views.length === 0 ? "phones.none" : "phones.intro"));
    this.#intro.className = outside || other ? "notice care" : "";
    setHidden(this.#form.node, !outside);
    setHidden(this.#code, typeof devices === "string");
    showVisits(this.#visits, visits, views);
    setHidden(this.#list, views.length === 0);
    keyed(this.#list, views, (view) => view.id, () => el("li", { class: "card" }, new PhoneLine()), (node, view) => {
      (node.firstChild as PhoneLine).view = view;
    });
  }

  #says(words: string): void {
    setText(this.#intro, words);
    setHidden(this.#trust, false);
    this.#intro.parentElement?.classList.remove("looking");
  }

  // visitors are none at a server of before, which does not know the call.
  async #visitors(): Promise<readonly Visit[]> {
    return this.#ctx.sync.pairing.visits().catch((error: unknown) => {
      if (error instanceof ServerRefusal || error instanceof ServerTrouble) return [];
      throw error;
    });
  }

  async #ask(): Promise<readonly Device[] | "outside" | "away"> {
    const { sync } = this.#ctx;
    try {
      return await sync.pairing.devices();
    } catch (error) {
      if (error instanceof ServerRefusal && (error.status === 401 || error.status === 403)) {
        if (!isOutside(sync.state)) await sync.round(); // it finds out why
        return "outside";
      }
      if (error instanceof ServerRefusal || error instanceof ServerTrouble) return "away";
      throw error;
    }
  }

  async #paired(): Promise<void> {
    this.#outcome.view = { words: w("pair.done") };
    await this.#again();
    this.#intro.focus(); // the form is gone, and the focus with it
  }

  async #shutOut({ id, name }: PhoneView): Promise<void> {
    if (await this.#do(() => this.#ctx.sync.pairing.shutOut(id), w("phones.isOut", { name }))) this.#intro.focus();
  }

  async #do(work: () => Promise<void>, done: string): Promise<boolean> {
    let words = "";
    try {
      await work();
    } catch (error) {
      words = saidFault(error).words;
    }
    this.#outcome.view = { words: words || done, failed: words !== "" };
    await this.#again();
    return words === "";
  }
}

export const phones = (host: HTMLElement, ctx: Ctx): Phones => new Phones(host, ctx);
