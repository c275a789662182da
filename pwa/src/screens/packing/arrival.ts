// On arrival: the way back, with the torques. It cannot say finished while a rotor, an axle or a brake is open.

import "./packing.css";
import { builtWords } from "../../book/packing/as_built.ts";
import { progressOf, stepViews } from "../../book/packing/pack_view.ts";
import { textOf } from "../../book/checks/walk_save.ts";
import { el } from "../../ui/el.ts";
import { keyed } from "../../ui/keyed.ts";
import { openPage } from "../../ui/page.ts";
import { define, listen, Part, setAttr, setHidden, setText } from "../../ui/part.ts";
import type { Ctx } from "../../ui/screen.ts";
import { w } from "../../words/index.ts";
import { follow } from "../shared/follow.ts";
import { type Packed, packed, type PackedBike, tick } from "./packed.ts";
import { Steps, stepTicked } from "./steps.ts";

export function arrival(host: HTMLElement, ctx: Ctx, rec: string): void {
  openPage(ctx, w("trip.arrival"), { href: `#/packing/${rec}`, words: w("recKind.trip") });
  const failed = el("p", { class: "fault", role: "alert" });
  const bikes = el("div", { class: "stack" });
  const page = el("div", { class: "stack looking" }, el("p", { class: "notice care" }, w("trip.torque")), el("p", { class: "small quiet" }, w("trip.noWrench")), failed, bikes);
  host.append(page);
  const again = follow(ctx, async () => {
    const found = await packed(ctx, rec);
    if (ctx.closed.aborted || found === undefined) return;
    page.classList.remove("looking");
    ctx.heading(`${w("trip.arrival")} · ${textOf(found.trip, "name")}`);
    keyed(bikes, found.bikes, (bike) => bike.rec, () => new BackPart(), (part, bike) => (part.view = { bike, packed: found }));
  }, (words) => setText(failed, words));
  listen(host, stepTicked, (ticked) => void tick(ctx, rec, ticked).then((words) => {
    setText(failed, words);
    return again();
  }), ctx.closed);
}

class BackPart extends Part<{ readonly bike: PackedBike; readonly packed: Packed }> {
  readonly #title = el("h2");
  readonly #state = el("p", { role: "status" });
  readonly #steps = new Steps();
  readonly #walk = el("a", { class: "button primary" }, w("trip.walk"));
  readonly #waiting = el("p", { class: "notice care" }, w("checks.waiting"));

  protected override build(): void {
    this.append(el("section", { class: "card stack" }, this.#title, this.#waiting, this.#state, this.#steps, el("p", {}, this.#walk)));
  }

  protected override show({ bike, packed: { ticks, measures } }: { readonly bike: PackedBike; readonly packed: Packed }): void {
    const views = stepViews(bike.pack?.arrival ?? [], bike.rec, ticks, (step) => builtWords(step, measures, bike.rec, bike.wheels));
    const { done, of, mustOpen } = progressOf(views);
    const ready = bike.pack !== undefined && mustOpen.length === 0;
    setText(this.#title, bike.name);
    setHidden(this.#waiting, bike.pack !== undefined);
    setText(this.#state, `${w("trip.progress", { done, of })}. ${ready ? w("trip.ready") : w("trip.notReady", { n: mustOpen.length })}`);
    this.#state.className = ready ? "" : "notice stop";
    this.#steps.view = views;
    setHidden(this.#walk, !ready);
    setAttr(this.#walk, "href", `#/checks/walk/${bike.rec}/arrival`);
  }
}

define("rs-way-back", BackPart);
