// After the ride: one question a wheel.

import "./beside.css";
import { type RideTold, saysNothing, type Told } from "../../../book/pressure/after_ride.ts";
import { type Side, sides } from "../../../book/pressure/answer.ts";
import { felts } from "../../../book/pressure/learned.ts";
import { Choice, chosen } from "../../../ui/choice.ts";
import { el } from "../../../ui/el.ts";
import { keyed } from "../../../ui/keyed.ts";
import { actName, define, listen, Part, setHidden, setText } from "../../../ui/part.ts";
import { w } from "../../../words/index.ts";

export const rideAnswered = actName<RideTold>("rs-ride-answered"); // chosen, not saved yet
export const rideTold = actName<RideTold>("rs-ride-told");
export const rideTakenBack = actName<undefined>("rs-ride-taken-back");

export interface AfterRideView {
  readonly moved: readonly string[]; // how far all notes have moved the numbers, and which do not count
  readonly remark: string; // what kind of note this would be; "" for the first after a ride
  readonly done: string; // what was just noted or taken back
  readonly undoable: boolean;
  readonly told: RideTold; // what is chosen so far
}

class Wheel {
  readonly choice = new Choice();
  readonly #box = el("input", { type: "checkbox" });
  readonly #legend: string;
  readonly node: HTMLElement;
  #told: Told = { felt: undefined, struck: false };

  constructor(readonly side: Side, answered: () => void) {
    const legend = w("ride.felt", { side: w(`ride.side.${side}`) });
    this.#box.setAttribute("aria-label", w("field.sided", { side: w(`side.${side}`), label: w("ride.struck") }));
    this.#box.addEventListener("change", () => {
      this.#told = { ...this.#told, struck: this.#box.checked };
      answered();
    });
    listen(this.choice, chosen, ({ value }, event) => {
      event.stopPropagation(); // an answer, no input of the sums
      this.#told = { ...this.#told, felt: felts.find((each) => each === value) };
      answered();
    });
    this.node = el("div", { class: "stack" }, this.choice, el("label", { class: "tick" }, this.#box, w("ride.struck")));
    this.#legend = legend;
  }

  get told(): Told {
    return this.#told;
  }

  show(told: Told): void {
    this.#told = told;
    this.#box.checked = told.struck;
    this.choice.view = { name: `ride.${this.side}`, legend: this.#legend, options: felts.map((value) => ({ value, label: w(`ride.option.${value}`) })), value: told.felt ?? "" };
  }
}

export class AfterRide extends Part<AfterRideView> {
  readonly #wheels: Readonly<Record<Side, Wheel>> = {
    front: new Wheel("front", () => this.act(rideAnswered, this.#told)), rear: new Wheel("rear", () => this.act(rideAnswered, this.#told)),
  };
  readonly #moved = el("div", { class: "small quiet" });
  readonly #remark = el("p", { class: "small" });
  readonly #done = el("p", { role: "status" });
  readonly #undo = el("button", { type: "button", class: "button", on: { click: () => this.act(rideTakenBack, undefined) } }, w("ride.back"));

  get #told(): RideTold {
    return { front: this.#wheels.front.told, rear: this.#wheels.rear.told };
  }

  protected override build(): void {
    this.append(el("div", { class: "stack" },
      el("p", { class: "small quiet" }, w("ride.intro")), this.#remark, ...sides.map((side) => this.#wheels[side].node),
      el("button", { type: "button", class: "button", on: { click: () => this.#save() } }, w("ride.save")),
      el("div", { class: "row" }, this.#done, this.#undo), this.#moved));
  }

  #save(): void {
    const told = this.#told;
    if (sides.every((side) => saysNothing(told[side]))) setText(this.#done, w("ride.nothing"));
    else this.act(rideTold, told);
  }

  protected override show({ moved, remark, done, undoable, told }: AfterRideView): void {
    for (const side of sides) this.#wheels[side].show(told[side]);
    keyed(this.#moved, moved, (each) => each, () => el("p"), (node, words) => setText(node, words));
    setHidden(this.#moved, moved.length === 0);
    setText(this.#remark, remark);
    setHidden(this.#remark, remark === "");
    setText(this.#done, done);
    setHidden(this.#undo, !undoable);
  }
}

define("rs-after-ride", AfterRide);
