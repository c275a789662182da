// The page to show at the desk, large: what is in this bag, what is in the cabin, and what is not carried.

import "./packing.css";
import { goodWords, toldGoods, type ToldGood } from "../../book/packing/goods_view.ts";
import { goodsOf, itemsOf, totalsOf } from "../../book/packing/trip.ts";
import { textOf } from "../../book/checks/walk_save.ts";
import { el } from "../../ui/el.ts";
import { keyed } from "../../ui/keyed.ts";
import { openPage } from "../../ui/page.ts";
import { setHidden, setText } from "../../ui/part.ts";
import type { Ctx } from "../../ui/screen.ts";
import { facts, w } from "../../words/index.ts";
import { plain } from "../../words/number.ts";
import { follow } from "../shared/follow.ts";
import { type Packed, packed } from "./packed.ts";

const places = ["bag", "cabin", "none"] as const;

export function desk(host: HTMLElement, ctx: Ctx, rec: string): void {
  openPage(ctx, w("trip.deskTitle"), { href: `#/packing/${rec}`, words: w("recKind.trip") });
  const fault = el("p", { class: "fault", role: "alert" });
  const lists = places.map((place) => ({ place, list: el("ul", { class: "desk" }), none: el("p", { class: "quiet" }, w("desk.nothing")) }));
  const weight = el("p", { class: "small" });
  const page = el("div", { class: "stack looking" }, fault, ...lists.map(({ place, list, none }) => el("section", { class: "card stack" }, el("h2", {}, w(`deskPlace.${place}`)), list, none)),
    weight, el("p", { class: "notice care" }, w("cautions.flying.text")));
  host.append(page);
  follow(ctx, async () => {
    const found = await packed(ctx, rec);
    if (ctx.closed.aborted || found === undefined) return;
    page.classList.remove("looking");
    ctx.heading(facts([w("trip.deskTitle"), textOf(found.trip, "name")]));
    for (const { place, list, none } of lists) {
      const lines = linesIn(found, place);
      setHidden(none, lines.length > 0);
      keyed(list, lines.map((words, n) => ({ words, n })), ({ n }) => `${n}`, () => el("li"), (node, { words }) => setText(node, words));
    }
    const { kg, cm } = totalsOf(found.trip);
    setText(weight, itemsOf(found.trip).length === 0 ? "" : w("desk.weight", { kg: plain(kg), cm: plain(cm) }));
  }, (words) => setText(fault, words));
}

function linesIn(found: Packed, place: (typeof places)[number]): readonly string[] {
  const told = toldGoods(goodsOf(found.trip), found.goods, found.people).filter(({ line }) => line.place === place);
  const bikes = place === "bag" ? found.bikes.map(({ name }) => w("desk.bike", { name })) : [];
  return [...bikes, ...told.map((each) => facts([goodWords(each), asking(each)]))];
}

function asking({ line }: ToldGood): string {
  return line[line.place === "cabin" ? "cabin" : "hold"] === "ask" ? w("desk.ask") : "";
}
