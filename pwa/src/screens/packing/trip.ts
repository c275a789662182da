// The page of one trip: for each bike its steps in order, the tools to take, the goods, one's own things, reminders.

import "./packing.css";
import { calendarText } from "../../book/checks/calendar.ts";
import { progressOf, stepViews, tripReminders } from "../../book/packing/pack_view.ts";
import { itemsOf, timeLeft } from "../../book/packing/trip.ts";
import { dayOf } from "../../book/wheels/measure_days.ts";
import { textOf } from "../../book/checks/walk_save.ts";
import type { RecordState } from "../../log/op/merge.ts";
import { el } from "../../ui/el.ts";
import { handOver } from "../../ui/hand_over.ts";
import { keyed } from "../../ui/keyed.ts";
import { Outcome } from "../../ui/outcome.ts";
import { openPage } from "../../ui/page.ts";
import { define, listen, Part, setAttr, setHidden, setText } from "../../ui/part.ts";
import type { Ctx } from "../../ui/screen.ts";
import { w } from "../../words/index.ts";
import { attempt, follow } from "../shared/follow.ts";
import { Goods, nameOf } from "./goods.ts";
import { Items } from "./items.ts";
import { type Packed, packed, type PackedBike, tick } from "./packed.ts";
import { Steps, stepTicked } from "./steps.ts";

export function trip(host: HTMLElement, ctx: Ctx, rec: string): void {
  new TripPage(host, ctx, rec);
}

class TripPage {
  readonly #ctx: Ctx;
  readonly #rec: string;
  readonly #page = el("div", { class: "stack looking" });
  readonly #left = el("p");
  readonly #gone = el("p", { class: "notice care" }, w("history.unknown"));
  readonly #body = el("div", { class: "stack" });
  readonly #outcome = new Outcome();
  readonly #bikes = el("div", { class: "stack" });
  readonly #waiting = el("p", { class: "notice care" }, w("checks.waiting"));
  readonly #goods: Goods;
  readonly #items: Items;
  readonly #again: () => Promise<void>;
  #packed: Packed | undefined;

  constructor(host: HTMLElement, ctx: Ctx, rec: string) {
    this.#ctx = ctx;
    this.#rec = rec;
    openPage(ctx, w("recKind.trip"), { href: "#/packing", words: w("place.packing") });
    const say = (words: string, undo?: () => Promise<unknown>, failed = false): void => this.#say(words, undo, failed);
    this.#goods = new Goods(host, ctx, () => this.#packed, say);
    this.#items = new Items(host, ctx, () => this.#packed, say);
    const link = (href: string, words: string): HTMLElement => el("a", { class: "button", href }, words);
    setHidden(this.#gone, true);
    setHidden(this.#body, true);
    this.#page.append(this.#gone, this.#body);
    this.#body.append(
      el("section", { class: "card stack" }, this.#left, el("div", { class: "row" }, link(`#/packing/${rec}/plan`, w("trip.change")), link(`#/packing/${rec}/arrival`, w("trip.arrival")))),
      this.#outcome, this.#waiting, this.#bikes, this.#goods.node, this.#items.node,
      el("section", { class: "card stack" }, el("p", {}, el("button", { type: "button", class: "button", on: { click: () => void this.#calendar() } }, w("trip.calendar"))), el("p", { class: "small quiet" }, w("trip.calendarWhy"))),
      el("p", { class: "row" }, el("button", { type: "button", class: "button", on: { click: () => void this.#delete() } }, w("things.delete")),
        el("a", { class: "button quiet", href: `#/settings/history/${rec}` }, w("things.history"))));
    host.append(this.#page);
    listen(host, stepTicked, (ticked) => void this.#tick(ticked), ctx.closed);
    this.#again = follow(ctx, () => this.#look(), (words) => say(words, undefined, true));
  }

  #say(words: string, undo?: () => Promise<unknown>, failed = false): void {
    const back = async (): Promise<void> => {
      const trouble = undo === undefined ? "" : await attempt(this.#ctx, undo);
      this.#outcome.view = { words: trouble || w("things.undone"), failed: trouble !== "" };
      await this.#again();
    };
    this.#outcome.view = { words, failed, ...(undo && { undo: () => void back() }) };
  }

  async #tick(ticked: Parameters<typeof tick>[2]): Promise<void> {
    const failed = await tick(this.#ctx, this.#rec, ticked);
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
    if (found === undefined) return; // it may be on its way
    this.#ctx.heading(textOf(found.trip, "name") || w("recKind.trip"));
    setText(this.#left, timeLeft(found.trip, dayOf(Date.now())));
    setHidden(this.#waiting, found.bikes.every(({ pack }) => pack !== undefined));
    keyed(this.#bikes, found.bikes, ({ rec }) => rec, () => new BikePart(), (part, bike) => (part.view = { bike, packed: found }));
    this.#goods.show(found);
    this.#items.show(itemsOf(found.trip), found);
  }

  async #calendar(): Promise<void> {
    const found = this.#packed;
    if (found === undefined) return;
    const rotors = found.bikes.some(({ pack }) => pack?.steps.some(({ id }) => id.includes("rotor")) ?? false);
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

interface BikeView {
  readonly bike: PackedBike;
  readonly packed: Packed;
}

class BikePart extends Part<BikeView> {
  readonly #title = el("h2");
  readonly #progress = el("p", { role: "status" });
  readonly #asBuilt = el("a", { class: "button" }, w("trip.asBuilt"));
  readonly #steps = new Steps();
  readonly #bag = el("p");
  readonly #buy = el("p");

  protected override build(): void {
    this.append(el("section", { class: "card stack" }, this.#title, this.#progress, el("p", {}, this.#asBuilt), this.#steps,
      el("h3", {}, w("trip.bag")), this.#bag, this.#buy));
  }

  protected override show({ bike, packed: { ticks } }: BikeView): void {
    setText(this.#title, bike.name);
    setAttr(this.#asBuilt, "href", `#/wheels/measure/${bike.rec}/as_built`);
    const views = stepViews(bike.pack?.steps ?? [], bike.rec, ticks);
    const { done, of } = progressOf(views);
    setText(this.#progress, done === of && of > 0 ? w("trip.packed", { of }) : w("trip.progress", { done, of }));
    this.#steps.view = views;
    const bag = bike.pack?.bag ?? [];
    setText(this.#bag, bag.length === 0 ? w("trip.bagNone") : bag.join(", "));
    const buy = bike.pack?.buy_there ?? [];
    setText(this.#buy, buy.length === 0 ? "" : `${w("trip.buy")}: ${buy.map(nameOf).join(", ")}`);
    setHidden(this.#buy, buy.length === 0);
  }
}

define("rs-packed-bike", BikePart);
