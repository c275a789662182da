// The page of one thing: what is known of it, what was measured on it, where it belongs, and what can be done with it.

import { assumedOf } from "../../book/wheels/assumed.ts";
import { describeRecord, type Teller } from "../../book/value/record_words.ts";
import { tables } from "../../book/pressure/tables.ts";
import { groups, isThing, type ThingKind, thingKinds } from "../../book/wheels/thing_fields.ts";
import { askedOf } from "../../book/wheels/thing_view.ts";
import { tiesOf } from "../../book/wheels/ties.ts";
import type { RecordState } from "../../log/op/merge.ts";
import "../../ui/way.css";
import { el } from "../../ui/el.ts";
import { fold } from "../../ui/fold.ts";
import { keyed } from "../../ui/keyed.ts";
import { setAttr, setHidden, setText } from "../../ui/part.ts";
import { openPage } from "../../ui/page.ts";
import type { Ctx } from "../../ui/screen.ts";
import { w } from "../../words/index.ts";
import { follow, tellerFor } from "../shared/follow.ts";
import { Acts } from "./acts.ts";
import { Edits } from "./edits.ts";
import { Form } from "../shared/form.ts";
import { measuredCard } from "./measured.ts";
import { ReadyHere } from "../shared/ready_here.ts";
import { spokesCard } from "./spokes_card.ts";
import { trialCard } from "./trial_card.ts";
import { Said } from "./said.ts";

export function thing(host: HTMLElement, ctx: Ctx, rec: string): void {
  new Thing(host, ctx, rec);
}

class Thing {
  readonly #ctx: Ctx;
  readonly #rec: string;
  readonly #page = el("div", { class: "stack looking" });
  readonly #gone = el("p", { class: "notice care" });
  readonly #ties = el("ul", { class: "unmarked ways" });
  readonly #assumed = el("ul", { class: "unmarked stack small" });
  readonly #said = new Said();
  readonly #forms = new Map<string, Form>();
  readonly #edits: Edits;
  readonly #acts: Acts;
  readonly #ready: ReadyHere;
  #kind: ThingKind | undefined; // once the page is made
  #show: () => void = () => undefined;

  constructor(host: HTMLElement, ctx: Ctx, rec: string) {
    this.#ctx = ctx;
    this.#rec = rec;
    openPage(ctx, w("place.wheels"), { href: "#/wheels", words: w("place.wheels") });
    setHidden(this.#gone, true);
    this.#ready = new ReadyHere(ctx);
    this.#page.append(this.#gone);
    ctx.head.append(this.#ready.line);
    host.append(this.#page);
    const saved = (words: string, undo?: () => Promise<unknown>, failed = false): void => this.#said.say(ctx, words, undo, failed);
    this.#edits = new Edits(host, ctx, rec, () => this.#show(), saved);
    this.#acts = new Acts(ctx, saved);
    ctx.closed.addEventListener("abort", () => this.#said.stop());
    void this.#start();
  }

  async #start(): Promise<void> {
    await this.#edits.load();
    follow(this.#ctx, () => this.#look(), (words) => this.#said.say(this.#ctx, words, undefined, true));
  }

  async #look(): Promise<void> {
    const { book } = this.#ctx;
    await book.ready;
    const [state, ...lists] = await Promise.all([book.get(this.#rec), ...thingKinds.map((kind) => book.all(kind))]);
    const teller = await tellerFor(this.#ctx, state === undefined ? [] : [state]);
    if (this.#ctx.closed.aborted) return;
    this.#page.classList.remove("looking");
    this.#show = () => this.#draw(state, lists.flat(), teller);
    this.#edits.know(state, lists[0] ?? []);
    this.#show();
  }

  #draw(state: RecordState | undefined, things: readonly RecordState[], teller: Teller): void {
    this.#ctx.heading(state === undefined ? w("place.wheels") : describeRecord(state, teller));
    const open = state !== undefined && !state.erased && isThing(state.kind) ? state.kind : undefined;
    setText(this.#gone, goneWords(state));
    setHidden(this.#gone, goneWords(state) === "");
    if (open === undefined || state === undefined) {
      this.#page.replaceChildren(this.#gone);
      this.#kind = undefined;
      return;
    }
    if (this.#kind !== open) this.#make(open);
    const find = (rec: string): RecordState | undefined => things.find((each) => each.rec === rec);
    for (const { name, fields } of groups[open]) {
      const form = this.#forms.get(name);
      if (form !== undefined) form.view = fields.map((field) => askedOf(open, field, state, this.#edits, teller, things));
    }
    const assumed = assumedOf(state, find, tables);
    keyed(this.#assumed, assumed, (words) => words, () => el("li", { class: "notice" }), setText);
    setHidden(this.#assumed, assumed.length === 0);
    keyed(this.#ties, tiesOf(state, things, teller), (tie) => tie.key, () => el("li", {}, el("a", { class: "way" })), (node, tie) => {
      const link = node.firstElementChild;
      if (link === null) return;
      setAttr(link, "href", `#/wheels/${tie.rec}`);
      setText(link, tie.words);
    });
    setHidden(this.#ties, this.#ties.childElementCount === 0);
    this.#acts.show(state, find);
    this.#ready.at(open === "bike" || open === "wheel" ? state.rec : "");
  }

  // make puts up the page for a kind: the first group stands open, the others are folded.
  #make(kind: ThingKind): void {
    this.#kind = kind;
    this.#forms.clear();
    const [first, ...rest] = groups[kind].map(({ name }) => {
      const form = new Form();
      this.#forms.set(name, form);
      return { name, form };
    });
    this.#page.replaceChildren(this.#gone, this.#ready.card, el("div", { class: "columns" },
      el("section", { class: "card stack" }, ...(first === undefined ? [] : [first.form]), this.#assumed, this.#ties,
        ...(kind === "wheel" ? [el("p", {}, el("a", { class: "button", href: `#/wheels/fit/${this.#rec}` }, w("fit.toGuide")))] : [])),
      el("div", { class: "stack" }, measuredCard(this.#ctx, this.#rec), ...(kind === "wheel" ? [spokesCard(this.#ctx, this.#rec)] : kind === "bike" ? [trialCard(this.#ctx, this.#rec)] : []),
        ...rest.map(({ name, form }) => fold(w(`thing.group.${name}` as "thing.group.rim"), form)), this.#acts.node)), this.#said);
  }
}

function goneWords(state: RecordState | undefined): string {
  if (state === undefined) return w("history.unknown");
  if (state.erased) return w("history.isErased");
  if (!isThing(state.kind)) return w("things.notOne");
  if (state.deleted) return w("things.isDeleted");
  return state.clashes.length > 0 ? w("things.clashes") : "";
}
