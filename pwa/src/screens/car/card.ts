// The roadside card of one rider: what to know with one hand, the screen kept awake.

import "./car.css";
import { carSides, endNow } from "../../book/car/fleet.ts";
import { whoWords } from "../../book/car/load.ts";
import { endWords } from "../../book/car/match.ts";
import { clockWords } from "../../book/value/when.ts";
import { el } from "../../ui/el.ts";
import { openPage } from "../../ui/page.ts";
import { setHidden, setText } from "../../ui/part.ts";
import type { Ctx } from "../../ui/screen.ts";
import { w } from "../../words/index.ts";
import { follow } from "../shared/follow.ts";
import { stayAwake } from "../shared/awake.ts";
import { fleetNow } from "./car_book.ts";

export function card(host: HTMLElement, ctx: Ctx): void {
  const rec = ctx.path[1] ?? "";
  openPage(ctx, w("card.title"), { href: "#/car", words: w("place.car") });
  const gone = el("p", { class: "notice care" }, w("card.gone"));
  const who = el("p", { class: "card-number" });
  const name = el("p", { class: "card-name" });
  const on = el("p");
  const ends = el("dl", { class: "card-ends" });
  const awake = el("p", { class: "small quiet" });
  const body = el("div", { class: "card stack roadside" }, who, name, on, ends, awake);
  setHidden(gone, true);
  setHidden(body, true);
  host.append(el("div", { class: "stack car" }, gone, body));
  void stayAwake(ctx.closed).then((kept) => setText(awake, kept ? w("card.awake") : w("card.asleep")));
  follow(ctx, async () => {
    const { riders } = await fleetNow(ctx);
    if (ctx.closed.aborted) return;
    const rider = riders.find(({ bike }) => bike.rec === rec);
    setHidden(gone, rider !== undefined);
    setHidden(body, rider === undefined);
    if (rider === undefined) return;
    setText(who, rider.number || whoWords(rider));
    setText(name, rider.name || rider.bikeName);
    setText(on, rider.on?.loan === undefined ? "" : w("spareBike.on", { spare: rider.on.name, clock: clockWords(rider.on.loan.at, Date.now()) }));
    ends.replaceChildren(...carSides.flatMap((side) => [el("dt", {}, w(`side.${side}`)), el("dd", {}, endWords(endNow(rider, side)))]));
  }, (words) => setText(gone, words));
}
