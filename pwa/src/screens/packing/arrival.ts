// On arrival: putting together, with the torques. It cannot say finished while a step that must be done is open.

import "./packing.css";
import { progressOf, stepViews } from "../../book/packing/pack_view.ts";
import { textOf } from "../../book/checks/walk_save.ts";
import { el } from "../../ui/el.ts";
import { keyed } from "../../ui/keyed.ts";
import { openPage } from "../../ui/page.ts";
import { setAttr, setHidden, setText } from "../../ui/part.ts";
import type { Ctx } from "../../ui/screen.ts";
import { facts, w } from "../../words/index.ts";
import { follow } from "../shared/follow.ts";
import { directionIn, hearTicks, showBikes, Ways } from "./list_page.ts";
import { type Packed, packed } from "./packed.ts";

export function arrival(host: HTMLElement, ctx: Ctx, rec: string): void {
  openPage(ctx, w("trip.arrival"), { href: `#/packing/${rec}`, words: w("recKind.trip") });
  const failed = el("p", { class: "fault", role: "alert" });
  const ways = new Ways(rec, "arrival/");
  const states = el("div", { class: "stack" });
  const bikes = el("div", { class: "stack" });
  const home = el("a", { class: "button", href: `#/packing/${rec}/home` }, w("trip.toHome"));
  const page = el("div", { class: "stack looking" }, ways.node, states, home, failed, bikes, el("p", { class: "notice care" }, w("trip.torque")));
  host.append(page);
  let found: Packed | undefined;
  const direction = (): "out" | "home" => (ctx.path[2] === "home" ? "home" : ctx.path[2] === "out" || found === undefined ? "out" : directionIn(found, undefined));
  const again = follow(ctx, async () => {
    found = await packed(ctx, rec);
    if (ctx.closed.aborted || found === undefined) return;
    page.classList.remove("looking");
    const way = direction();
    ctx.heading(facts([way === "out" ? w("trip.arrival") : w("trip.arrivalHome"), textOf(found.trip, "name")]));
    ways.show(found, way, "arrival");
    showStates(states, found, way);
    setHidden(home, way !== "out" || found.now !== "home");
    showBikes(bikes, found, { ctx, direction: way, list: "arrival" });
  }, (words) => setText(failed, words));
  hearTicks(host, ctx, rec, direction, again, (words) => setText(failed, words));
}

// showStates says of each bike whether it may be ridden as far as putting together goes; then it is walked round.
function showStates(list: HTMLElement, { bikes, ticks }: Packed, direction: "out" | "home"): void {
  keyed(list, bikes.filter(({ packs }) => packs !== undefined), ({ rec }) => rec, () => el("div", { class: "stack" }, el("p", { role: "status" }), el("p", {}, el("a", { class: "button primary" }, w("trip.walk")))), (node, { rec, packs }) => {
    const { mustLeft } = progressOf(stepViews(packs?.[direction].arrival ?? [], rec, direction, ticks));
    const [state, walk] = node.children;
    if (!(state instanceof HTMLElement) || !(walk instanceof HTMLElement)) return;
    setText(state, mustLeft === 0 ? w("trip.ready") : w("trip.notReady", { n: mustLeft }));
    state.className = mustLeft === 0 ? "" : "notice stop";
    setHidden(walk, mustLeft > 0);
    const link = walk.querySelector("a");
    if (link !== null) setAttr(link, "href", `#/checks/walk/${rec}/arrival`);
  });
}
