// The first screen of all: one form, then the pressures. What the rim edge makes necessary appears at once.

import "./setup.css";
import { el } from "../../../ui/el.ts";
import { labelOf } from "../../../book/pressure/field_view.ts";
import { Choice, chosen } from "../../../ui/choice.ts";
import { typed } from "../../../ui/field.ts";
import { actName, define, listen, Part, setHidden } from "../../../ui/part.ts";
import { Picker } from "../../../ui/picker.ts";
import { groundKinds } from "../../../book/pressure/fields.ts";
import { w } from "../../../words/index.ts";
import { answered } from "./answers.ts";
import { Bikes, type BikesView } from "../bikes/bikes.ts";
import { Inputs, type InputState } from "./inputs.ts";
import { edgeChoice } from "./edge.ts";
import { answers, setups } from "./sections.ts";
import { stretchChanged } from "../ground/ground.ts";

export interface FirstRunView extends InputState {
  readonly bikes: BikesView;
}

export const started = actName<undefined>("rs-started");
export const unitChosen = actName<"bar" | "psi">("rs-unit-chosen");

export class FirstRun extends Part<FirstRunView> {
  readonly #inputs = new Inputs();
  readonly #ground = new Picker();
  readonly #bikes = new Bikes();

  protected override build(): void {
    const inputs = this.#inputs;
    const pick = (name: string, legend: string, options: Parameters<Inputs["choice"]>[2]): HTMLElement =>
      inputs.choice(`front.${name}`, legend, options, (draft) => draft.picks[`front.${name}`] ?? "", "first.");
    const hookless = pick("hookless", w("pick.hookless"), answers());
    inputs.also(({ draft }) => setHidden(hookless, (draft.picks["front.profile"] || "hooked") === "hooked"));
    const unit = new Choice();
    inputs.also((state) => (unit.view = { name: "first.units", legend: w("first.unit"), value: state.unit, options: (["bar", "psi"] as const).map((value) => ({ value, label: w(`unit.${value}`) })) }));
    listen(unit, chosen, ({ value }, event) => {
      event.stopPropagation();
      this.act(unitChosen, value === "psi" ? "psi" : "bar");
    });
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
    this.append(el("div", { class: "card stack" }, el("p", {}, w("first.intro")), unit,
      el("div", { class: "fields" }, inputs.field("rider"), inputs.field("bike")), answered("bags"),
      el("div", { class: "fields" }, inputs.field("front.label"), inputs.field("front.inner")), answered("inner"),
      pick("setup", w("pick.setup"), setups()), edgeChoice(inputs, "front", "first."), hookless,
      el("div", { class: "fields" }, mark(inputs, "front.tyreMax"), mark(inputs, "front.rimMax")),
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

// mark is a printed maximum, with the answer for those who cannot read one.
function mark(inputs: Inputs, id: "front.tyreMax" | "front.rimMax"): HTMLElement {
  const field = inputs.field(id);
  const box = el("input", { type: "checkbox" });
  const words = w("first.unread");
  box.setAttribute("aria-label", w("field.sided", { side: labelOf(id), label: words }));
  const tell = (): void => void field.dispatchEvent(new CustomEvent(chosen, { detail: { name: `${id}.unread`, value: box.checked ? "yes" : "" }, bubbles: true }));
  box.addEventListener("change", () => {
    if (box.checked) field.act(typed, { id, text: "" });
    tell();
  });
  listen(field, typed, ({ text }) => {
    if (text !== "" && box.checked) {
      box.checked = false;
      tell();
    }
  });
  inputs.also(({ draft }) => (box.checked = draft.picks[`${id}.unread`] === "yes"));
  return el("div", { class: "mark" }, field, el("label", { class: "tick" }, box, words));
}

define("rs-first-run", FirstRun);
