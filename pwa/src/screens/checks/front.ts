// The front page of Checks: whether the bike may be ridden, the walk-arounds begun, those to begin, and what is due.

import "./checks.css";
import { bikeName } from "../../book/pressure/bikes.ts";
import { isDone, type Moment, moments, readWalk, stationsOf, type Walk, walkDraft } from "../../book/checks/walk.ts";
import { whenWords } from "../../book/value/when.ts";
import type { RecordState } from "../../log/op/merge.ts";
import { chosen } from "../../ui/choice.ts";
import { el } from "../../ui/el.ts";
import { keyed } from "../../ui/keyed.ts";
import { Outcome } from "../../ui/outcome.ts";
import { listen, setAttr, setHidden, setText } from "../../ui/part.ts";
import { Picker } from "../../ui/picker.ts";
import type { Ctx } from "../../ui/screen.ts";
import { showWay, way } from "../../ui/way.ts";
import { w } from "../../words/index.ts";
import { follow } from "../shared/follow.ts";
import { bikePicker, pickBike, pickedBike } from "../shared/picked_bike.ts";
import { adoptWalk, readyBook, readyOf } from "../shared/ready.ts";
import { ReadyCard } from "../shared/ready_part.ts";
import { restoreDiscarded, takeDiscarded } from "./discard.ts";
import { dueLine, sweatLine } from "./front_lines.ts";

export function front(host: HTMLElement, ctx: Ctx): void {
  new Front(host, ctx);
}

class Front {
  readonly #ctx: Ctx;
  readonly #page = el("div", { class: "stack looking" });
  readonly #picker = new Picker();
  readonly #said = new Outcome();
  readonly #ready = new ReadyCard();
  readonly #begun = el("ul", { class: "unmarked stack" });
  readonly #moments = el("ul", { class: "unmarked moments" });
  readonly #due = way();
  readonly #sweat = way();
  readonly #history = way();
  readonly #rotor = way();
  readonly #flat = way();
  readonly #others = el("section", { class: "card" }, el("ul", { class: "unmarked ways" }, this.#due, this.#flat, this.#sweat, this.#history, this.#rotor));
  readonly #none = el("section", { class: "card stack" }, el("p", {}, w("checks.noBike")), el("p", {}, el("a", { class: "button primary", href: "#/wheels/new/bike" }, w("checks.toWheels"))));
  readonly #again: () => Promise<void>;

  constructor(host: HTMLElement, ctx: Ctx) {
    this.#ctx = ctx;
    host.append(this.#page);
    listen(host, chosen, ({ value }) => {
      pickBike(ctx, value);
      void this.#again();
    }, ctx.closed);
    this.#again = follow(ctx, () => this.#look(), (words) => (this.#said.view = { words, failed: true }));
    const discarded = takeDiscarded();
    if (discarded === undefined) return;
    this.#said.view = { words: w("checks.discarded"), undo: () => void restoreDiscarded(ctx, discarded).then(() => this.#again()).then(() => (this.#said.view = { words: w("things.undone") })) };
  }

  async #look(): Promise<void> {
    const bike = await pickedBike(this.#ctx);
    if (this.#ctx.closed.aborted) return;
    if (bike === undefined) return this.#page.replaceChildren(this.#none);
    await adoptWalk(this.#ctx, bike.rec);
    const book = await readyBook(this.#ctx);
    const [ready, walks, due, sweat] = await Promise.all([readyOf(this.#ctx, book, bike), this.#walks(bike.rec), dueLine(this.#ctx, bike), sweatLine(this.#ctx, bike)]);
    if (this.#ctx.closed.aborted) return;
    this.#page.classList.remove("looking");
    if (!this.#page.contains(this.#moments)) this.#page.replaceChildren(this.#picker, this.#said, this.#ready, this.#begun, this.#moments, this.#others);
    this.#ctx.heading(`${w("place.checks")} · ${bikeName(bike) || w("head.bike")}`);
    bikePicker(this.#picker, book.lists.bike, bike);
    this.#ready.view = { ready, of: "", quietWhenFine: false };
    this.#showBegun(walks);
    this.#showMoments(bike);
    showWay(this.#due, `#/checks/due/${bike.rec}`, due.title, due.line);
    showWay(this.#flat, `#/wheels/fit/of/${bike.rec}`, w("fit.afterFlat"), "");
    showWay(this.#sweat, `#/checks/sweat/${bike.rec}`, w("checks.toSweat"), sweat);
    showWay(this.#history, `#/checks/history/${bike.rec}`, w("checks.history"), "");
    showWay(this.#rotor, "#/checks/rotor", w("checks.toRotor"), "");
  }

  async #walks(bike: string): Promise<readonly Walk[]> {
    const all = await Promise.all(moments.map(async (moment) => readWalk(await this.#ctx.drafts.load(walkDraft(bike, moment)))));
    return all.filter((walk) => walk !== undefined);
  }

  #showBegun(walks: readonly Walk[]): void {
    setHidden(this.#begun, walks.length === 0);
    keyed(this.#begun, walks, ({ moment }) => moment, makeBegun, (node, walk) => node.show(walk));
  }

  #showMoments(bike: RecordState): void {
    keyed(this.#moments, moments, (moment) => moment, () => way(), (node, moment: Moment) => {
      const [name, facts] = moment === "start" ? [w("checks.moment.start"), w("checks.when.start")] : [w(`checks.short.${moment}`), ""];
      showWay(node, `#/checks/walk/${bike.rec}/${moment}`, name, facts);
      setAttr(node.firstElementChild ?? node, "title", w(`checks.when.${moment}`));
    });
  }
}

interface BegunNode extends HTMLLIElement {
  show: (walk: Walk) => void;
}

function makeBegun(): BegunNode {
  const name = el("strong");
  const facts = el("span", { class: "small quiet" });
  const go = el("a", { class: "button" }, w("checks.goOn"));
  const show = (walk: Walk): void => {
    const all = stationsOf(walk);
    const what = w(`checks.begun.${walk.moment}`);
    setText(name, what);
    setText(facts, w("checks.begunAt", { done: all.filter((station) => isDone(walk, station)).length, of: all.length, when: whenWords(walk.started, Date.now()) }));
    setAttr(go, "href", `#/checks/walk/${walk.bike}/${walk.moment}`);
    setAttr(go, "aria-label", w("checks.goOnOf", { what }));
  };
  return Object.assign(el("li", { class: "card begun" }, el("div", {}, name, " ", facts), go), { show });
}
