// After the ride: one question a wheel. What was chosen stays here until it is saved.

import "./beside.css";
import { type RideTold, saysNothing, type Told } from "../../book/after_ride.ts";
import { type Side, sides } from "../../book/answer.ts";
import { felts } from "../../book/shift.ts";
import { Choice, chosen } from "../../ui/choice.ts";
import { el } from "../../ui/el.ts";
import { actName, define, listen, Part, setHidden, setText } from "../../ui/part.ts";
import { w } from "../../words/index.ts";

export const rideTold = actName<RideTold>("rs-ride-told");
export const rideTakenBack = actName<undefined>("rs-ride-taken-back");

export interface AfterRideView {
  readonly moved: string; // how far all notes have moved the starting point
  readonly done: string; // what was just noted or taken back
  readonly undoable: boolean;
  readonly saved: number; // counts, so that the answers are cleared once they are saved
}

const nothing: Told = { felt: undefined, struck: false };

class Wheel {
  readonly choice = new Choice();
  readonly #box = el("input", { type: "checkbox" });
  readonly node: HTMLElement;
  #told = nothing;

  constructor(readonly side: Side) {
    const legend = w("ride.felt", { side: w(`ride.side.${side}`) });
    this.#box.setAttribute("aria-label", w("field.sided", { side: w(`side.${side}`), label: w("ride.struck") }));
    this.#box.addEventListener("change", () => (this.#told = { ...this.#told, struck: this.#box.checked }));
    listen(this.choice, chosen, ({ value }, event) => {
      event.stopPropagation(); // an answer, no input of the sums
      this.#told = { ...this.#told, felt: felts.find((each) => each === value) };
    });
    this.node = el("div", { class: "stack" }, this.choice, el("label", { class: "tick" }, this.#box, w("ride.struck")));
    this.#show(legend);
  }

  get told(): Told {
    return this.#told;
  }

  #show(legend: string): void {
    this.choice.view = { name: `ride.${this.side}`, legend, options: felts.map((value) => ({ value, label: w(`ride.option.${value}`) })), value: this.#told.felt ?? "" };
  }

  clear(): void {
    this.#told = nothing;
    this.#box.checked = false;
    this.#show("");
  }
}

export class AfterRide extends Part<AfterRideView> {
  readonly #wheels: Readonly<Record<Side, Wheel>> = { front: new Wheel("front"), rear: new Wheel("rear") };
  readonly #moved = el("p", { class: "small quiet" });
  readonly #done = el("p", { role: "status" });
  readonly #undo = el("button", { type: "button", class: "button", on: { click: () => this.act(rideTakenBack, undefined) } }, w("ride.back"));
  #saved = 0;

  protected override build(): void {
    this.append(el("div", { class: "stack" },
      el("p", { class: "small quiet" }, w("ride.intro")), ...sides.map((side) => this.#wheels[side].node),
      el("button", { type: "button", class: "button", on: { click: () => this.#save() } }, w("ride.save")),
      el("div", { class: "row" }, this.#done, this.#undo), this.#moved));
  }

  #save(): void {
    const told = { front: this.#wheels.front.told, rear: this.#wheels.rear.told };
    if (sides.every((side) => saysNothing(told[side]))) setText(this.#done, w("ride.nothing"));
    else this.act(rideTold, told);
  }

  protected override show({ moved, done, undoable, saved }: AfterRideView): void {
    if (saved !== this.#saved) {
      this.#saved = saved;
      for (const side of sides) this.#wheels[side].clear();
    }
    setText(this.#moved, moved);
    setHidden(this.#moved, moved === "");
    setText(this.#done, done);
    setHidden(this.#undo, !undoable);
  }
}

define("rs-after-ride", AfterRide);
