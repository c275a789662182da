// The answer for one end of one bike: one spare in large words, what to do then, and the other spares with their reasons.

import type { GiveView } from "../../book/car/match.ts";
import { el } from "../../ui/el.ts";
import { keyed } from "../../ui/keyed.ts";
import { actName, define, Part, setAttr, setHidden, setText } from "../../ui/part.ts";
import { w } from "../../words/index.ts";

export const gaveSpare = actName<string>("rs-gave-spare"); // the spare's record
export const spareMissing = actName<string>("rs-spare-missing");

export interface GiveShown {
  readonly who: string;
  readonly end: string; // in words
  readonly view: GiveView | undefined; // undefined while it is being looked for
}

export class Give extends Part<GiveShown> {
  readonly #end = el("p", { class: "quiet small" });
  readonly #large = el("p", { class: "give-large" });
  readonly #facts = el("p");
  readonly #change = el("p", { class: "give-change" });
  readonly #box = el("div", { class: "give", role: "status" }, this.#large, this.#facts, this.#change, el("p", {}, w("car.then")));
  readonly #gave = el("button", { type: "button", class: "button primary big", on: { click: () => this.#tell(gaveSpare) } }, w("car.gave"));
  readonly #missing = el("button", { type: "button", class: "button big", on: { click: () => this.#tell(spareMissing) } }, w("car.notThereButton"));
  readonly #deeds = el("div", { class: "give-deeds" }, this.#gave, this.#missing);
  readonly #nothing = el("div", { class: "give nothing stack", role: "status" }, el("p", { class: "give-large" }, w("car.nothing")),
    el("p", {}, w("car.instead.tube")), el("p", {}, w("car.instead.hanger")), el("p", {}, w("car.instead.lift")));
  readonly #others = el("ul", { class: "unmarked give-others", "aria-label": w("car.others") });

  protected override build(): void {
    this.append(el("div", { class: "stack" }, this.#end, this.#box, this.#deeds, this.#nothing, this.#others, el("p", { class: "small quiet" }, w("car.doubt"))));
  }

  protected override show({ who, end, view }: GiveShown): void {
    setText(this.#end, end);
    const give = view?.give;
    setHidden(this.#box, view !== undefined && give === undefined);
    setHidden(this.#deeds, give === undefined);
    setHidden(this.#nothing, view === undefined || give !== undefined);
    setText(this.#large, give?.words ?? w("car.searching"));
    setText(this.#facts, give?.facts ?? "");
    setText(this.#change, give?.change ?? "");
    setHidden(this.#change, (give?.change ?? "") === "");
    setAttr(this.#gave, "aria-label", give === undefined ? null : spoken(give.spare, who));
    keyed(this.#others, view?.others ?? [], ({ rec }) => rec, ({ rec }) => gaveLine(() => this.act(gaveSpare, rec)), (node, { spare, name, why, can }) => {
      const [first, second, button] = node.children;
      if (first !== undefined) setText(first, name);
      if (second !== undefined) setText(second, why);
      if (!(button instanceof HTMLElement)) return;
      setHidden(button, !can);
      setAttr(button, "aria-label", spoken(spare, who));
    });
  }

  #tell(act: typeof gaveSpare): void {
    const rec = this.view?.view?.give?.rec;
    if (rec !== undefined) this.act(act, rec);
  }
}

// spoken tells the buttons apart for those who listen.
export function spoken(spare: string, who: string): string {
  return who === "" ? w("car.gaveNamed", { spare }) : w("car.gaveSpoken", { spare, who });
}

// gaveLine is one more spare with its reason.
export function gaveLine(give: () => void): HTMLLIElement {
  return el("li", {}, el("span", { class: "named" }), el("span", {}), el("button", { type: "button", class: "button", on: { click: give } }, w("car.gave")));
}

define("rs-give", Give);
