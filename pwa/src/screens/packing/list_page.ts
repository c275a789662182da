// What the packing list and the list of an arrival share: the bikes of a trip with their steps in one direction, and the ticks.

import { type Direction, progressOf, stepViews } from "../../book/packing/pack_view.ts";
import { el } from "../../ui/el.ts";
import { keyed } from "../../ui/keyed.ts";
import { listen, setAttr, setText } from "../../ui/part.ts";
import type { Ctx } from "../../ui/screen.ts";
import { w } from "../../words/index.ts";
import { BikePart, type BikeView } from "./bike_part.ts";
import { nextDone, nextUndone } from "./next.ts";
import { type Packed, tick } from "./packed.ts";
import { steady } from "./steady.ts";
import { stepTicked, type Ticked } from "./steps.ts";

// directionIn is the one that the address names, else the one to do now.
export function directionIn(found: Packed, named: string | undefined): Direction {
  return named === "out" || named === "home" ? named : found.now;
}

// hearTicks keeps what is ticked anywhere on the page.
export function hearTicks(host: HTMLElement, ctx: Ctx, rec: string, direction: () => Direction, again: () => Promise<void>, refused: (words: string) => void): void {
  const keep = (ticked: Ticked, event: Event): void => void steady(event.target, async () => {
    const failed = await tick(ctx, rec, direction(), ticked);
    if (failed !== "") refused(failed);
    await again();
  });
  for (const act of [stepTicked, nextDone, nextUndone]) listen(host, act, keep, ctx.closed);
}

export function showBikes(list: HTMLElement, found: Packed, view: Omit<BikeView, "bike" | "packed">): void {
  keyed(list, found.bikes, ({ rec }) => rec, () => new BikePart(), (part, bike) => (part.view = { ...view, bike, packed: found }));
}

export function mustLeft(found: Packed, direction: Direction): number {
  return found.bikes.reduce((sum, { rec, packs }) => sum + progressOf(stepViews(packs?.[direction].arrival ?? [], rec, direction, found.ticks)).mustLeft, 0);
}

// Ways is Out | Home, each with how far its packing is.
export class Ways {
  readonly node = el("nav", { class: "out-home", "aria-label": w("trip.ways") });
  readonly #links = { out: el("a", { class: "button" }), home: el("a", { class: "button" }) };

  constructor(rec: string, page: string) {
    for (const direction of ["out", "home"] as const) {
      this.#links[direction].href = `#/packing/${rec}/${page}${direction}`;
      this.node.append(this.#links[direction]);
    }
  }

  show(found: Packed, direction: Direction, list: BikeView["list"]): void {
    for (const each of ["out", "home"] as const) {
      const views = found.bikes.flatMap(({ rec, packs }) => stepViews(packs?.[each][list] ?? [], rec, each, found.ticks));
      const { done, of } = progressOf(views);
      const begun = each === direction || done > 0;
      setText(this.#links[each], begun ? w(`directionOf.${each}`, { done, of }) : w(`direction.${each}`));
      setAttr(this.#links[each], "aria-current", each === direction ? "page" : null);
    }
  }
}
