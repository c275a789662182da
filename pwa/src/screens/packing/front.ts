// The trips: what is ahead first, with the time that is left.

import "./packing.css";
import { optionWords } from "../../book/value/kind_words.ts";
import { timeLeft, tripsByDay, wayOf } from "../../book/packing/trip.ts";
import { dayOf } from "../../book/wheels/measure_days.ts";
import { textOf } from "../../book/checks/walk_save.ts";
import { dayWords } from "../../book/value/when.ts";
import { el } from "../../ui/el.ts";
import { keyed } from "../../ui/keyed.ts";
import { setHidden, setText } from "../../ui/part.ts";
import type { Ctx } from "../../ui/screen.ts";
import { showWay, way } from "../../ui/way.ts";
import { w } from "../../words/index.ts";
import { follow } from "../shared/follow.ts";

export function front(host: HTMLElement, ctx: Ctx): void {
  const none = el("p", {}, w("trip.none"));
  const list = el("ul", { class: "unmarked ways" });
  const card = el("section", { class: "card" }, list);
  const page = el("div", { class: "stack looking" });
  host.append(page);
  follow(ctx, async () => {
    await ctx.book.ready;
    const today = dayOf(Date.now());
    const trips = tripsByDay(await ctx.book.all("trip"), today);
    if (ctx.closed.aborted) return;
    if (page.childElementCount === 0) page.append(none, card, el("p", {}, el("a", { class: "button primary", href: "#/packing/new" }, w("trip.new"))));
    setHidden(none, trips.length > 0);
    setHidden(card, trips.length === 0);
    keyed(list, trips, ({ rec }) => rec, () => way(), (node, trip) => {
      const day = textOf(trip, "from");
      const facts = [timeLeft(trip, today), day === "" ? "" : dayWords(day, Date.now()), optionWords("way", wayOf(trip))].filter((words) => words !== "");
      showWay(node, `#/packing/${trip.rec}`, textOf(trip, "name") || w("recKind.trip"), facts.join(" · "));
    });
  }, (words) => setText(none, words));
}
