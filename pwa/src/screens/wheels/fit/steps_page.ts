// The steps, hands free: large type, one step at a time, the next by a tap anywhere or the space key, the screen kept awake.

import { limitWords } from "../../../book/fit/gate_view.ts";
import { draftName, type FitDraft } from "../../../book/fit/fit_draft.ts";
import { drawnWords, type Step, stepsOf, type Way } from "../../../book/fit/steps.ts";
import { shortNameOf } from "../../../book/value/record_words.ts";
import { showKpa } from "../../../book/value/quantity.ts";
import { el } from "../../../ui/el.ts";
import { keyed } from "../../../ui/keyed.ts";
import { openPage } from "../../../ui/page.ts";
import { setHidden, setText } from "../../../ui/part.ts";
import type { Ctx } from "../../../ui/screen.ts";
import { w } from "../../../words/index.ts";
import { stayAwake } from "../../shared/awake.ts";
import { follow } from "../../shared/follow.ts";
import { type FitBook, knownOf, readFit } from "./fit_book.ts";
import { Gate } from "./pair.ts";
import { StepPicture } from "./step_draw.ts";

const settle = 450; // ms: a soapy finger that taps twice goes on once

// after is where a way leads once it is gone.
const after: Readonly<Record<Way, { readonly page: string; readonly words: "fitWay.on" | "fitWay.seat" | "fit.toDone" }>> = {
  off: { page: "", words: "fitWay.on" }, on: { page: "/seat", words: "fitWay.seat" }, seat: { page: "/done", words: "fit.toDone" },
};

export function stepsPage(host: HTMLElement, ctx: Ctx, rec: string, way: Way): void {
  new StepsPage(host, ctx, rec, way);
}

class StepsPage {
  readonly #ctx: Ctx;
  readonly #rec: string;
  readonly #way: Way;
  readonly #page = el("div", { class: "stack looking" });
  readonly #gate = new Gate();
  readonly #count = el("p", { class: "step-count" });
  readonly #words = el("p", { class: "step-words" });
  readonly #notes = el("ul", { class: "unmarked stack step-notes" });
  readonly #picture = new StepPicture();
  readonly #next = el("button", { type: "button", class: "button primary big", on: { click: () => this.#go(1) } }, w("fit.next"));
  readonly #back = el("button", { type: "button", class: "button big", on: { click: () => this.#go(-1) } }, w("fit.previous"));
  readonly #on: HTMLAnchorElement;
  readonly #awake = el("p", { class: "small quiet" });
  readonly #body: HTMLElement;
  #steps: readonly Step[] = [];
  #draft: FitDraft | undefined;
  #limit = "";
  #at = 0;
  #moved = 0; // when the last step was taken

  constructor(host: HTMLElement, ctx: Ctx, rec: string, way: Way) {
    this.#ctx = ctx;
    this.#rec = rec;
    this.#way = way;
    openPage(ctx, w(`fitWay.${way}`), { href: `#/wheels/fit/${rec}`, words: w("fit.back") });
    this.#on = el("a", { class: "button primary big", href: `#/wheels/fit/${rec}${after[way].page}` }, w(after[way].words));
    this.#body = el("section", { class: "card steps-page", hidden: true, "aria-label": w(`fitWay.${way}`) },
      el("div", { class: "step-said" }, el("div", { role: "status", class: "stack" }, this.#count, this.#words, this.#notes)), this.#picture,
      el("div", { class: "step-ways" }, this.#back, this.#next, this.#on), this.#awake);
    setHidden(this.#gate, true);
    host.append(this.#page);
    this.#page.append(this.#gate, this.#body);
    document.addEventListener("click", (event) => this.#tap(event), { signal: ctx.closed });
    document.addEventListener("keydown", (event) => this.#key(event), { signal: ctx.closed });
    void stayAwake(ctx.closed).then((awake) => setText(this.#awake, awake ? w("fit.awake") : w("fit.asleep")));
    follow(ctx, () => this.#look(), (words) => setText(this.#awake, words));
  }

  async #look(): Promise<void> {
    const at = await readFit(this.#ctx, this.#rec);
    if (this.#ctx.closed.aborted) return;
    this.#page.classList.remove("looking");
    if (at.wheel !== undefined) this.#ctx.heading(`${w(`fitWay.${this.#way}`)} · ${shortNameOf(at.wheel, at.teller)}`);
    const open = this.#way === "off" || (at.gate.open && at.tyre !== undefined);
    this.#gate.view = at.gate;
    setHidden(this.#gate, open);
    setHidden(this.#body, !open);
    if (!open) return;
    this.#steps = stepsOf(this.#way, knownOf(at, this.#ctx.settings.units));
    this.#limit = this.#shortLimit(at);
    const first = this.#draft === undefined;
    if (first) this.#at = at.draft.at[this.#way] ?? 0;
    this.#draft = at.draft;
    this.#show();
    if (first) this.#body.scrollIntoView({ block: "start" });
  }

  #shortLimit({ seat }: FitBook): string {
    const { units } = this.#ctx.settings;
    if (seat === undefined || limitWords(seat, units) === "" || seat.gauge_kpa === null) return "";
    return w("value.with", { value: showKpa(seat.gauge_kpa, units, "down"), unit: w(`unit.${units}`) });
  }

  // tap: anywhere but on what has a use of its own.
  #tap(event: MouseEvent): void {
    const own = event.target instanceof Element && event.target.closest("a, button, input, select, summary, label, dialog, nav, header") !== null;
    if (!own && !this.#body.hidden && this.#at < this.#steps.length - 1) this.#go(1);
  }

  #key(event: KeyboardEvent): void {
    if (event.ctrlKey || event.metaKey || event.altKey || this.#body.hidden) return;
    const own = event.target instanceof Element && event.target.closest("a, button, input, select, summary") !== null;
    const by = event.key === "ArrowRight" || event.key === "PageDown" || (event.key === " " && !own) ? 1 : event.key === "ArrowLeft" || event.key === "PageUp" ? -1 : 0;
    if (by === 0) return;
    event.preventDefault(); // space would scroll
    if (!event.repeat) this.#go(by);
  }

  #go(by: 1 | -1): void {
    const now = performance.now();
    const to = Math.min(this.#steps.length - 1, Math.max(0, this.#at + by));
    if (to === this.#at || now - this.#moved < settle) return;
    this.#moved = now;
    this.#at = to;
    const draft = this.#draft;
    if (draft !== undefined) {
      this.#draft = { ...draft, at: { ...draft.at, [this.#way]: to === this.#steps.length - 1 ? 0 : to } }; // gone through: next time from the first
      void this.#ctx.drafts.save(draftName(this.#rec), this.#draft);
    }
    this.#show();
    this.#body.scrollIntoView({ block: "start" });
  }

  #show(): void {
    this.#at = Math.min(this.#at, this.#steps.length - 1);
    const step = this.#steps[this.#at];
    if (step === undefined) return;
    const last = this.#at === this.#steps.length - 1;
    setText(this.#count, w("fit.step", { n: this.#at + 1, of: this.#steps.length }));
    setText(this.#words, step.words);
    keyed(this.#notes, step.notes, (words) => words, () => el("li", { class: "notice care" }), setText);
    setHidden(this.#notes, step.notes.length === 0);
    this.#picture.view = { step, limit: this.#limit, label: w("fit.picture", { n: this.#at + 1, what: drawnWords(step) }) };
    setHidden(this.#back, this.#at === 0);
    setHidden(this.#next, last);
    setHidden(this.#on, !last);
  }
}
