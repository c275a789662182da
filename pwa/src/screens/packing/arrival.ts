// On arrival: putting together, with the torques. It cannot say finished while a step that must be done is open.

import "./packing.css";
import { progressOf, stepViews } from "../../book/packing/pack_view.ts";
import type { ReadyView } from "../../book/checks/ready_view.ts";
import { textOf } from "../../book/checks/walk_save.ts";
import { el } from "../../ui/el.ts";
import { keyed } from "../../ui/keyed.ts";
import { openPage } from "../../ui/page.ts";
import { setAttr, setHidden, setText } from "../../ui/part.ts";
import type { Ctx } from "../../ui/screen.ts";
import { facts, w } from "../../words/index.ts";
import { follow } from "../shared/follow.ts";
import { readyOfAll } from "../shared/ready.ts";
import { ReadyCard } from "../shared/ready_part.ts";
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
    const ready = await readyOfAll(ctx, found?.bikes.map((bike) => bike.rec) ?? []);
    if (ctx.closed.aborted || found === undefined) return;
    page.classList.remove("looking");
    const way = direction();
    ctx.heading(facts([way === "out" ? w("trip.arrival") : w("trip.arrivalHome"), textOf(found.trip, "name")]));
    ways.show(found, way, "arrival");
    showStates(states, found, way, ready, `#/packing/${rec}/arrival`);
    setHidden(home, way !== "out" || found.now !== "home");
    showBikes(bikes, found, { ctx, direction: way, list: "arrival" });
  }, (words) => setText(failed, words));
  hearTicks(host, ctx, rec, direction, again, (words) => setText(failed, words));
}

interface StateNode extends HTMLElement {
  show: (view: { readonly ready: ReadyView | undefined; readonly of: string; readonly done: boolean; readonly rec: string }) => void;
}

// Whether each bike may be ridden, in the words of every other screen; once it is together it is walked round.
function showStates(list: HTMLElement, { bikes, ticks }: Packed, direction: "out" | "home", ready: ReadonlyMap<string, ReadyView>, here: string): void {
  keyed(list, bikes.filter(({ packs }) => packs !== undefined), ({ rec }) => rec, makeState, (node, { rec, name, packs }) => {
    const done = progressOf(stepViews(packs?.[direction].arrival ?? [], rec, direction, ticks)).mustLeft === 0;
    const state = ready.get(rec);
    const reasons = state?.reasons.map((reason) => (reason.href.startsWith(here) ? { ...reason, href: "" } : reason)); // one is here already
    node.show({ ready: state && { ...state, reasons: reasons ?? [] }, of: name, done, rec });
  });
}

function makeState(): StateNode {
  const card = new ReadyCard();
  const done = el("p", { role: "status" });
  const walk = el("a", { class: "button primary" }, w("trip.walk"));
  const row = el("p", {}, walk);
  return Object.assign(el("div", { class: "stack" }, card, done, row), {
    show: ({ ready, of, done: isDone, rec }: Parameters<StateNode["show"]>[0]): void => {
      card.view = { ready, of, quietWhenFine: false };
      setText(done, isDone ? w("trip.ready") : "");
      setHidden(done, !isDone);
      setHidden(row, !isDone);
      setAttr(walk, "href", `#/checks/walk/${rec}/arrival`);
    },
  });
}
