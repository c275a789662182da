// One bike on one list of a trip: the next step on top, then all of them under their stages.

import { nextOf, progressOf, stepViews, type Direction, tickOf, type StepView } from "../../book/packing/pack_view.ts";
import { el } from "../../ui/el.ts";
import { define, listen, Part, setHidden, setText } from "../../ui/part.ts";
import type { Ctx } from "../../ui/screen.ts";
import { w } from "../../words/index.ts";
import type { HowView } from "./how.ts";
import { Next, nextDone, nextUndone } from "./next.ts";
import type { Packed, PackedBike } from "./packed.ts";
import { Stages } from "./stages.ts";

export interface BikeView {
  readonly ctx: Ctx;
  readonly packed: Packed;
  readonly bike: PackedBike;
  readonly direction: Direction;
  readonly list: "steps" | "arrival";
}

export class BikePart extends Part<BikeView> {
  readonly #title = el("h2");
  readonly #progress = el("p", { role: "status" });
  readonly #next = new Next();
  readonly #stages = new Stages();
  readonly #waiting = el("p", { class: "notice care" }, w("checks.waiting"));
  #done: string[] = []; // what was done from the card, the last first to be taken back
  #shown = "";
  #lead = true; // the list follows the card

  protected override build(): void {
    this.append(el("div", { class: "stack" }, el("div", { class: "row spread" }, this.#title, this.#progress), this.#waiting, this.#next, this.#stages));
    listen(this, nextDone, ({ step }) => {
      this.#lead = true;
      this.#done.push(step);
    });
    listen(this, nextUndone, () => {
      this.#lead = true;
      this.#done.pop();
    });
  }

  protected override show({ ctx, packed: { trip, bikes, ticks }, bike, direction, list }: BikeView): void {
    const pack = bike.packs?.[direction];
    const views = stepViews(pack?.[list] ?? [], bike.rec, direction, ticks);
    const { done, of, mustLeft } = progressOf(views);
    const next = nextOf(views);
    setText(this.#title, bike.name);
    setHidden(this.#waiting, pack !== undefined);
    setText(this.#progress, next === undefined && of > 0 ? w("trip.allPacked", { of }) : w("trip.progress", { done, of }));
    this.#progress.className = bikes.length > 1 || next === undefined ? "" : "unseen"; // of one bike it stands above
    const out = (step: StepView): number => {
      const wheel = pack?.steps.find(({ id }) => id === `${step.step.id.split("_")[0]}_wheel_out`);
      const tick = wheel === undefined ? undefined : tickOf(ticks, direction, bike.rec, wheel);
      return tick?.ticked === true ? tick.at : 0;
    };
    const how = views.map((step): HowView => ({ ctx, trip: trip.rec, bike, step, out: out(step) }));
    const at = how.find(({ step }) => step === next);
    const last = this.#done.at(-1);
    setHidden(this.#next, at === undefined);
    if (at !== undefined) this.#next.view = { ...at, before: views.find(({ step, ticked }) => ticked && step.id === last) };
    this.#stages.view = how;
    this.classList.toggle("rideable", list === "arrival" && mustLeft === 0);
    if (next?.key === this.#shown) return;
    this.#shown = next?.key ?? "";
    if (this.#lead) this.#stages.only(next?.step.stage);
    else this.#stages.also(next?.step.stage);
    this.#lead = false;
  }
}

define("rs-packed-bike", BikePart);
