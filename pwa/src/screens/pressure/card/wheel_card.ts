// One wheel's card. The action and the number first; a stop takes the number away; an old one is struck through.

import type { WheelView } from "../../../book/pressure/wheel_view.ts";
import { el } from "../../../ui/el.ts";
import { actName, define, Part, setAttr, setHidden, setText } from "../../../ui/part.ts";
import { w } from "../../../words/index.ts";

// wanted asks for the field that would end a stop.
export const wanted = actName<string>("rs-wanted");

export class WheelCard extends Part<WheelView> {
  readonly #title = el("h2");
  readonly #number = el("span", { class: "number" });
  readonly #struck = el("s", { class: "number" });
  readonly #unit = el("span");
  readonly #good = el("span");
  readonly #range = el("span");
  readonly #side = el("p", { class: "small quiet" }, this.#good, " ", this.#range);
  readonly #old = el("p", { class: "oldness" });
  readonly #act = el("p", { class: "deed" });
  readonly #strokes = el("p", { class: "quiet" });
  readonly #facts = el("p", { class: "quiet small facts" });
  readonly #none = el("p", { class: "none" });
  readonly #stop = el("p", { class: "notice stop" });
  readonly #enter = el("button", { type: "button", class: "button" });
  readonly #line = el("p", { class: "reads" }, this.#number, this.#struck, " ",
    el("span", { class: "unit" }, this.#unit, " ", el("span", { class: "small" }, w("wheel.gauge"))));

  protected override build(): void {
    this.#enter.addEventListener("click", () => this.act(wanted, this.view?.wanting ?? ""));
    this.append(el("section", { class: "card" }, el("div", {}, this.#title, this.#side), el("div", { class: "says" },
      this.#line, this.#old, this.#act, this.#strokes, this.#none, this.#stop, this.#enter, this.#facts)));
  }

  protected override show(view: WheelView): void {
    const has = view.number !== "";
    const old = view.old !== "";
    setText(this.#title, view.title);
    setText(this.#number, view.number);
    setText(this.#struck, view.number);
    setHidden(this.#number, old);
    setHidden(this.#struck, !old);
    setText(this.#unit, view.unit);
    setText(this.#good, view.good?.[0] ?? "");
    setText(this.#range, view.good?.[1] ?? "");
    setHidden(this.#side, view.good === undefined || old);
    setHidden(this.#line, !has);
    setText(this.#old, old ? w("wheel.oldWhy", { reason: view.old }) : "");
    setHidden(this.#old, !has || !old);
    setText(this.#act, view.act);
    setHidden(this.#act, !has || old);
    setText(this.#strokes, view.strokes);
    setHidden(this.#strokes, !has || old || view.strokes === "");
    setText(this.#facts, view.facts.join(" · "));
    setHidden(this.#facts, old || view.facts.length === 0);
    setText(this.#none, w("wheel.none"));
    setHidden(this.#none, has);
    setText(this.#stop, view.stops.join(" "));
    setHidden(this.#stop, has || view.stops.length === 0);
    setText(this.#enter, view.wanting === "inner" ? w("wheel.enterInner") : w("wheel.enterMax"));
    setAttr(this.#enter, "aria-label", w("field.sided", { side: view.title, label: this.#enter.textContent ?? "" }));
    setHidden(this.#enter, view.wanting === "");
  }
}

define("rs-wheel-card", WheelCard);
