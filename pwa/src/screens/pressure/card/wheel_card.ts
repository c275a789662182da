// One wheel's card: the number, what to do, the ruler, and the box for a reading. A tap on the number says why.

import "./card.css";
import type { Side } from "../../../book/pressure/answer.ts";
import type { WheelView } from "../../../book/pressure/wheel_view.ts";
import { el } from "../../../ui/el.ts";
import { typed } from "../../../ui/field.ts";
import { actName, define, listen, Part, setAttr, setHidden, setText } from "../../../ui/part.ts";
import { w } from "../../../words/index.ts";
import { Keys, keyed, keysDone, setOne } from "./keys.ts";
import { boxEntered, ReadingBox, type ReadingView } from "./reading_box.ts";
import { Ruler } from "./ruler.ts";

export interface CardView {
  readonly wheel: WheelView;
  readonly reading: ReadingView;
}

export const whyWanted = actName<Side>("rs-why-wanted");
export const wheelSet = actName<Side>("rs-wheel-set"); // this wheel alone
export const keysOpened = actName<Side>("rs-keys-opened");

export class WheelCard extends Part<CardView> {
  readonly #title = el("h2");
  readonly #width = el("span", { class: "quiet small width" });
  readonly #number = el("span", { class: "number" });
  readonly #struck = el("s", { class: "number" });
  readonly #unit = el("span", { class: "unit" });
  readonly #why = el("span", { class: "unseen" });
  readonly #ask = el("button", { type: "button", class: "reads", on: { click: () => this.act(whyWanted, this.#side) } }, this.#number, this.#struck, " ", this.#unit, this.#why);
  readonly #old = el("p", { class: "oldness" });
  readonly #act = el("p", { class: "deed" });
  readonly #told = el("p", { class: "quiet small told" });
  readonly #none = el("p", { class: "none" }, w("wheel.none"));
  readonly #stop = el("p", { class: "notice stop" });
  readonly #enter = el("a", { class: "button enter", href: "#/pressure/setup" });
  readonly #box = new ReadingBox();
  readonly #warm = el("p", { class: "notice care small" });
  readonly #basis = el("p", { class: "quiet small" });
  readonly #ruler = new Ruler();
  readonly #below = el("div", { class: "below" });
  #keys: Keys | undefined;

  get #side(): Side {
    return this.view?.wheel.side ?? "front";
  }

  protected override build(): void {
    this.append(el("section", { class: "card" },
      el("div", { class: "top" }, this.#title, this.#width),
      el("div", { class: "main" }, el("div", { class: "says" }, this.#ask, this.#none, this.#old, this.#act, this.#told), this.#box),
      this.#stop, this.#enter, this.#box.fault, this.#warm, this.#ruler, this.#below));
    listen(this, boxEntered, () => this.#open());
    listen(this, keyed, (text) => this.act(typed, { id: `now.${this.#side}`, text }));
    listen(this, keysDone, () => this.closeKeys());
    listen(this, setOne, () => {
      this.closeKeys();
      this.act(wheelSet, this.#side);
    });
    this.addEventListener("keydown", (event) => {
      if (event.key === "Escape" || (event.key === "Enter" && event.target instanceof HTMLInputElement)) this.closeKeys();
    });
  }

  // The keys are made when they are wanted for the first time.
  #open(): void {
    if (this.#keys === undefined) {
      this.#keys = new Keys();
      this.#below.append(this.#keys, this.#basis);
    }
    setHidden(this.#below, false);
    this.#showKeys();
    this.act(keysOpened, this.#side);
  }

  closeKeys(): void {
    setHidden(this.#below, true);
  }

  #showKeys(): void {
    const { view } = this;
    if (this.#keys !== undefined && view !== undefined) this.#keys.view = { text: view.reading.text, side: view.wheel.side };
    setText(this.#basis, view?.reading.why ?? "");
  }

  protected override show({ wheel, reading }: CardView): void {
    const [has, old] = [wheel.number !== "", wheel.old !== ""];
    setText(this.#title, wheel.title);
    setText(this.#width, wheel.width);
    setText(this.#number, wheel.number);
    setText(this.#struck, wheel.number);
    setHidden(this.#number, old);
    setHidden(this.#struck, !old);
    setText(this.#unit, wheel.unit);
    setHidden(this.#ask, !has);
    setText(this.#why, ` ${w("part.whyOf", { side: wheel.title })}`);
    setText(this.#old, old ? w("wheel.oldWhy", { reason: wheel.old }) : "");
    setHidden(this.#old, !has || !old);
    setText(this.#act, wheel.act);
    setHidden(this.#act, !has || old);
    setText(this.#told, wheel.strokes || wheel.told);
    setHidden(this.#told, !has || old || (wheel.strokes || wheel.told) === "");
    setHidden(this.#none, has);
    setText(this.#stop, wheel.stops.join(" "));
    setHidden(this.#stop, has || wheel.stops.length === 0);
    this.#showEnter(wheel);
    setHidden(this.#box, !has);
    this.#box.view = reading;
    setText(this.#warm, reading.warm);
    setHidden(this.#warm, reading.warm === "" || !has);
    setHidden(this.#ruler, wheel.ruler === undefined || old);
    if (wheel.ruler !== undefined) this.#ruler.view = wheel.ruler;
    this.#showKeys();
  }

  #showEnter({ wanting, title }: WheelView): void {
    setHidden(this.#enter, wanting === "");
    if (wanting === "") return;
    const words = w(`wheel.enter.${wanting}`);
    setText(this.#enter, words);
    setAttr(this.#enter, "aria-label", w("field.sided", { side: title, label: words }));
    setAttr(this.#enter, "href", `#/pressure/setup/${this.#side}.${wanting}`);
  }
}

define("rs-wheel-card", WheelCard);
