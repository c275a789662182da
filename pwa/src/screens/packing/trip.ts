// The page of one trip: out and home, for each bike the next step and the rest, the bag, the goods, one's own things, reminders.

import "./packing.css";
import { calendarText } from "../../book/checks/calendar.ts";
import { tripReminders } from "../../book/packing/reminders.ts";
import { questionsOf } from "../../book/packing/questions.ts";
import { toolWords } from "../../book/packing/step_words.ts";
import { itemsOf, timeLeft, wayOf } from "../../book/packing/trip.ts";
import { optionWords } from "../../book/value/kind_words.ts";
import { dayOf } from "../../book/wheels/measure_days.ts";
import { textOf } from "../../book/checks/walk_save.ts";
import type { RecordState } from "../../log/op/merge.ts";
import { el } from "../../ui/el.ts";
import { handOver } from "../../ui/hand_over.ts";
import { keyed } from "../../ui/keyed.ts";
import { Outcome } from "../../ui/outcome.ts";
import { openPage } from "../../ui/page.ts";
import { listen, setAttr, setHidden, setText } from "../../ui/part.ts";
import type { Ctx } from "../../ui/screen.ts";
import { facts, listed, w } from "../../words/index.ts";
import { attempt, follow } from "../shared/follow.ts";
import { answered, Asks } from "./asks.ts";
import { Goods } from "./goods.ts";
import { Items } from "./items.ts";
import { directionIn, hearTicks, mustLeft, showBikes, Ways } from "./list_page.ts";
import { type Packed, packed } from "./packed.ts";

export function trip(host: HTMLElement, ctx: Ctx, rec: string): void {
  new TripPage(host, ctx, rec);
}

class TripPage {
  readonly #ctx: Ctx;
  readonly #rec: string;
  readonly #page = el("div", { class: "stack looking" });
  readonly #left = el("p", { class: "quiet" });
  readonly #gone = el("p", { class: "notice care" }, w("history.unknown"));
  readonly #body = el("div", { class: "stack" });
  readonly #ways: Ways;
  readonly #open = el("p", { class: "notice care" });
  readonly #asks = new Asks();
  readonly #outcome = new Outcome();
  readonly #bikes = el("div", { class: "stack" });
  readonly #arrival = el("a", { class: "button" });
  readonly #bag = el("ul", { class: "bag" });
  readonly #buy = el("p");
  readonly #goods: Goods;
  readonly #items: Items;
  readonly #again: () => Promise<void>;
  #packed: Packed | undefined;

  constructor(host: HTMLElement, ctx: Ctx, rec: string) {
    this.#ctx = ctx;
    this.#rec = rec;
    openPage(ctx, w("recKind.trip"), { href: "#/packing", words: w("place.packing") });
    const say = (words: string, undo?: () => Promise<unknown>, failed = false): void => this.#say(words, undo, failed);
    this.#ways = new Ways(rec, "");
    this.#goods = new Goods(host, ctx, () => this.#packed, say);
    this.#items = new Items(host, ctx, () => this.#packed, say);
    setHidden(this.#gone, true);
    setHidden(this.#body, true);
    this.#page.append(this.#gone, this.#body);
    this.#body.append(
      this.#ways.node, this.#left, this.#open, this.#outcome, this.#asks, this.#bikes, el("p", {}, this.#arrival),
      el("section", { class: "card stack" }, el("h2", {}, w("trip.bag")), this.#bag, this.#buy), this.#goods.node, this.#items.node,
      el("section", { class: "card stack" }, el("p", { class: "row" }, el("a", { class: "button", href: `#/packing/${rec}/plan` }, w("trip.change")),
        el("button", { type: "button", class: "button", on: { click: () => void this.#calendar() } }, w("trip.calendar"))), el("p", { class: "small quiet" }, w("trip.calendarWhy"))),
      el("p", { class: "row" }, el("button", { type: "button", class: "button", on: { click: () => void this.#delete() } }, w("things.delete")),
        el("a", { class: "button quiet", href: `#/settings/history/${rec}` }, w("things.history"))));
    host.append(this.#page);
    this.#again = follow(ctx, () => this.#look(), (words) => say(words, undefined, true));
    hearTicks(host, ctx, rec, () => this.#direction(), this.#again, (words) => say(words, undefined, true));
    listen(host, answered, ({ question, value }) => void this.#answer(() => ctx.book.save([question.change(value)])), ctx.closed);
  }

  #direction(): "out" | "home" {
    return this.#packed === undefined ? "out" : directionIn(this.#packed, this.#ctx.path[1]);
  }

  #say(words: string, undo?: () => Promise<unknown>, failed = false): void {
    const back = async (): Promise<void> => {
      const trouble = undo === undefined ? "" : await attempt(this.#ctx, undo);
      this.#outcome.view = { words: trouble || w("things.undone"), failed: trouble !== "" };
      await this.#again();
    };
    this.#outcome.view = { words, failed, ...(undo && { undo: () => void back() }) };
  }

  async #answer(save: () => Promise<unknown>): Promise<void> {
    const failed = await attempt(this.#ctx, save);
    if (failed !== "") this.#say(failed, undefined, true);
    await this.#again();
  }

  async #look(): Promise<void> {
    const found = await packed(this.#ctx, this.#rec);
    if (this.#ctx.closed.aborted) return;
    this.#packed = found;
    this.#page.classList.remove("looking");
    setHidden(this.#gone, found !== undefined);
    setHidden(this.#body, found === undefined);
    if (found !== undefined) this.#show(found); // else it may be on its way
  }

  #show(found: Packed): void {
    const direction = this.#direction();
    this.#ctx.heading(textOf(found.trip, "name") || w("recKind.trip"));
    setText(this.#left, facts([optionWords("way", wayOf(found.trip)), timeLeft(found.trip, dayOf(Date.now()))]));
    this.#ways.show(found, direction, "steps");
    const open = direction === "home" && found.now === "out" ? mustLeft(found, "out") : 0;
    setText(this.#open, open === 0 ? "" : w("trip.outOpen", { n: open }));
    setHidden(this.#open, open === 0);
    const bikes = found.bikes.flatMap(({ packs, ...bike }) => (packs === undefined ? [] : [{ ...bike, ask: packs[direction].ask }]));
    this.#asks.view = questionsOf(found.trip, bikes);
    showBikes(this.#bikes, found, { ctx: this.#ctx, direction, list: "steps" });
    setText(this.#arrival, direction === "out" ? w("trip.arrival") : w("trip.arrivalHome"));
    setAttr(this.#arrival, "href", `#/packing/${this.#rec}/arrival/${direction}`);
    const bag = [...new Set(found.bikes.flatMap(({ packs }) => packs?.[direction].bag ?? []))];
    keyed(this.#bag, bag, (tool) => tool, () => el("li"), (node, tool) => setText(node, toolWords(tool)));
    const buy = [...new Set(found.bikes.flatMap(({ packs }) => packs?.[direction].buy_there ?? []))];
    setText(this.#buy, buy.length === 0 ? "" : w("trip.buy", { what: listed(buy.map((good) => w(`good.${good}`))) }));
    setHidden(this.#buy, buy.length === 0 || direction === "home");
    this.#goods.show(found);
    this.#items.show(itemsOf(found.trip), found, direction);
  }

  async #calendar(): Promise<void> {
    const found = this.#packed;
    if (found === undefined) return;
    const rotors = found.bikes.some(({ packs }) => packs?.out.steps.some(({ id }) => id.endsWith("_rotor")) ?? false);
    await handOver(new File([calendarText(tripReminders(found.trip, rotors), Date.now())], "rimside-trip.ics", { type: "text/calendar" }));
  }

  async #delete(): Promise<void> {
    const { book } = this.#ctx;
    const state = this.#packed?.trip;
    if (state === undefined) return;
    const failed = await attempt(this.#ctx, () => book.remove(state));
    const undo = async (): Promise<void> => {
      const now: RecordState | undefined = await book.get(state.rec);
      if (now !== undefined) await book.restore(now);
    };
    this.#say(failed || w("trip.deleted"), failed === "" ? undo : undefined, failed !== "");
  }
}
