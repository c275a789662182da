// The first screen of all: six answers, then the pressures. What the rim edge makes necessary appears at once.

import { el } from "../../../ui/el.ts";
import { chosen } from "../../../ui/choice.ts";
import { actName, define, listen, Part, setHidden } from "../../../ui/part.ts";
import { Picker } from "../../../ui/picker.ts";
import { groundKinds } from "../../../book/pressure/fields.ts";
import { w } from "../../../words/index.ts";
import { answered } from "./answers.ts";
import { Bikes, type BikesView } from "../bikes/bikes.ts";
import { Inputs, type InputState } from "./inputs.ts";
import { answers, profiles, setups } from "./sections.ts";
import { stretchChanged } from "../ground/ground.ts";

export interface FirstRunView extends InputState {
  readonly bikes: BikesView;
}

export const started = actName<undefined>("rs-started");

export class FirstRun extends Part<FirstRunView> {
  readonly #inputs = new Inputs();
  readonly #ground = new Picker();
  readonly #bikes = new Bikes();

  protected override build(): void {
    const inputs = this.#inputs;
    const pick = (name: string, legend: string, options: Parameters<Inputs["choice"]>[2]): HTMLElement =>
      inputs.choice(`front.${name}`, legend, options, (draft) => draft.picks[`front.${name}`] ?? "", "first.");
    // A straight or unknown edge asks its questions before any number; a hooked one only when a number needs them.
    const edge = el("div", { class: "stack" }, pick("hookless", w("pick.hookless"), answers()),
      el("div", { class: "fields" }, inputs.field("front.tyreMax"), inputs.field("front.rimMax")));
    inputs.also(({ draft }) => setHidden(edge, (draft.picks["front.profile"] || "hooked") === "hooked"));
    inputs.also(({ draft }) => {
      const first = draft.ground[0];
      this.#ground.view = { name: "first.ground", label: w("part.ground"), spoken: w("part.ground"), value: first?.kind ?? "", options: groundKinds.map((value) => ({ value, label: w(`kind.${value}`) })) };
    });
    listen(this.#ground, chosen, ({ value }, event) => {
      event.stopPropagation();
      const id = this.view?.draft.ground[0]?.id ?? "";
      this.act(stretchChanged, { id, change: { kind: value } });
    });
    const go = el("button", { type: "button", class: "button primary big", on: { click: () => this.act(started, undefined) } }, w("first.go"));
    this.append(el("div", { class: "card stack" }, el("p", {}, w("first.intro")),
      el("div", { class: "fields" }, inputs.field("rider"), inputs.field("bike")), answered("bags"),
      el("div", { class: "fields" }, inputs.field("front.label"), inputs.field("front.inner")), answered("inner"),
      pick("setup", w("pick.setup"), setups()), pick("profile", w("pick.profile"), profiles()), edge,
      this.#ground, go, el("p", { class: "small quiet" }, w("first.more"))));
  }

  protected override show(state: FirstRunView): void {
    this.#inputs.show(state);
    this.#bikes.view = state.bikes;
    // Known bikes come first, as they spare the answers; a friend's file can wait below them.
    const known = state.bikes.bikes.length > 0;
    if (this.firstElementChild !== this.#bikes && known) this.prepend(this.#bikes);
    if (this.lastElementChild !== this.#bikes && !known) this.append(this.#bikes);
  }

  // focus takes a person to a field that still needs an answer.
  toField(id: string): void {
    this.#inputs.focus(id);
  }
}

define("rs-first-run", FirstRun);
