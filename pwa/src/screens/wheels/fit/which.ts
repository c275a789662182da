// Which wheel: those of the bike first, then all the others.

import { slotsOf } from "../../../book/wheels/swap.ts";
import { describeRecord } from "../../../book/value/record_words.ts";
import { type RecordState, valueOf } from "../../../log/op/merge.ts";
import { el } from "../../../ui/el.ts";
import { keyed } from "../../../ui/keyed.ts";
import { openPage } from "../../../ui/page.ts";
import { setHidden, setText } from "../../../ui/part.ts";
import type { Ctx } from "../../../ui/screen.ts";
import { showWay, way } from "../../../ui/way.ts";
import { w } from "../../../words/index.ts";
import { byName } from "../../../words/order.ts";
import { follow, tellerFor } from "../../shared/follow.ts";

export function whichWheel(host: HTMLElement, ctx: Ctx, bike: string): void {
  const back = bike === "" ? { href: "#/wheels", words: w("place.wheels") } : { href: "#/checks", words: w("place.checks") };
  openPage(ctx, w("fit.title"), back);
  const list = el("ul", { class: "unmarked ways" });
  const none = el("p", { class: "quiet" });
  host.append(el("section", { class: "card stack" }, el("h2", {}, w("fit.which")), none, list));
  follow(ctx, async () => {
    await ctx.book.ready;
    const [wheels, bikes] = await Promise.all([ctx.book.all("wheel"), ctx.book.all("bike")]);
    const teller = await tellerFor(ctx, wheels);
    if (ctx.closed.aborted) return;
    const here = (wheel: RecordState): number => (slotsOf(bikes, wheel.rec).some((slot) => slot.bike.rec === bike) ? 0 : 1);
    const offered = wheels.filter((wheel) => valueOf(wheel, "retired") !== true).map((wheel) => ({ wheel, name: describeRecord(wheel, teller), place: teller.placeOf(wheel.rec) }))
      .sort((a, b) => here(a.wheel) - here(b.wheel) || byName(a.name, b.name));
    setText(none, w("fit.noWheel"));
    setHidden(none, offered.length > 0);
    keyed(list, offered, ({ wheel }) => wheel.rec, way, (node, { wheel, name, place }) => showWay(node, `#/wheels/fit/${wheel.rec}`, name, name.includes(place) ? "" : place));
  }, (words) => {
    setText(none, words);
    setHidden(none, false);
  });
}
