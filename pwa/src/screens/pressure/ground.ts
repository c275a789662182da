// Today's ground: a strip that shows its stones, and a stretch of ground in each row.

import type { StretchDraft } from "../../book/draft.ts";
import { fieldView } from "../../book/field_view.ts";
import { groundKinds, stretchFields } from "../../book/fields.ts";
import { el } from "../../ui/el.ts";
import { Field } from "../../ui/field.ts";
import { keyed } from "../../ui/keyed.ts";
import { actName, define, Part, setAttr, setHidden, setText } from "../../ui/part.ts";
import { Picker } from "../../ui/picker.ts";
import { w } from "../../words/index.ts";
import { GroundStrip } from "./ground_strip.ts";
import type { InputState } from "./inputs.ts";

export interface StretchChange {
  readonly id: string;
  readonly change: Partial<StretchDraft>;
}

export const stretchChanged = actName<StretchChange>("rs-stretch-changed");
export const stretchAdded = actName<undefined>("rs-stretch-added");
export const stretchRemoved = actName<string>("rs-stretch-removed");
export const groundUndone = actName<undefined>("rs-ground-undone");

export interface GroundView {
  readonly state: InputState;
  readonly undo: string; // what was just taken away, in words; "" when nothing can be undone
}

const kinds = (): { value: string; label: string }[] => [...groundKinds, "typed" as const].map((value) => ({ value, label: w(`kind.${value}`) }));

export class Ground extends Part<GroundView> {
  readonly #strip = new GroundStrip();
  readonly #list = el("div", { class: "stack" });
  readonly #undone = el("p", { role: "status" });
  readonly #undo = el("div", { class: "row" }, this.#undone,
    el("button", { type: "button", class: "button", on: { click: () => this.act(groundUndone, undefined) } }, w("ground.undo")));

  protected override build(): void {
    const add = el("button", { type: "button", class: "button", on: { click: () => this.act(stretchAdded, undefined) } }, w("ground.add"));
    this.append(el("section", { class: "card stack" }, el("h2", {}, w("part.ground")), this.#strip,
      el("p", { class: "small quiet" }, w("ground.hint")), this.#list, this.#undo, add));
  }

  protected override show({ state, undo }: GroundView): void {
    const { ground } = state.draft;
    this.#strip.view = ground;
    keyed(this.#list, ground, (each) => each.id, () => new Stretch(), (node, stretch, index) => {
      node.view = { state, stretch, index, lone: ground.length === 1 };
    });
    setText(this.#undone, undo);
    setHidden(this.#undo, undo === "");
  }
}

interface StretchView {
  readonly state: InputState;
  readonly stretch: StretchDraft;
  readonly index: number;
  readonly lone: boolean;
}

class Stretch extends Part<StretchView> {
  readonly #legend = el("legend");
  readonly #kind = new Picker();
  readonly #km = new Field();
  readonly #kmh = new Field();
  readonly #gd0 = new Field();
  readonly #board = el("input", { type: "checkbox" });
  readonly #remove = el("button", { type: "button", class: "button quiet" }, w("ground.remove"));

  protected override build(): void {
    this.#board.addEventListener("change", () => this.#change({ washboard: this.#board.checked }));
    this.#remove.addEventListener("click", () => this.act(stretchRemoved, this.view?.stretch.id ?? ""));
    this.append(el("fieldset", { class: "stack" }, this.#legend, this.#kind,
      el("div", { class: "fields" }, this.#km, this.#kmh, this.#gd0),
      el("div", { class: "row spread" }, el("label", { class: "tick" }, this.#board, w("ground.washboard")), this.#remove)));
  }

  #change(change: Partial<StretchDraft>): void {
    this.act(stretchChanged, { id: this.view?.stretch.id ?? "", change });
  }

  protected override show({ state, stretch, index, lone }: StretchView): void {
    const name = w("ground.stretch", { n: index + 1 });
    setText(this.#legend, name);
    this.#kind.view = { name: `ground.${stretch.id}.kind`, label: w("ground.what"), spoken: `${name}: ${w("ground.what")}`, value: stretch.kind, options: kinds() };
    for (const [key, field] of [["km", this.#km], ["kmh", this.#kmh], ["gd0", this.#gd0]] as const) {
      const id = `ground.${stretch.id}.${key}`;
      const view = fieldView(stretchFields[key], id, stretch[key], state.reading.faults.get(id), state.unit, state.tables);
      field.view = { ...view, spoken: `${name}: ${view.label}`, range: key === "km" ? null : view.range };
    }
    setHidden(this.#gd0, stretch.kind !== "typed");
    if (this.#board.checked !== stretch.washboard) this.#board.checked = stretch.washboard;
    setHidden(this.#remove, lone);
    setAttr(this.#remove, "aria-label", w("ground.removeOf", { n: index + 1 }));
  }
}

define("rs-stretch", Stretch);
define("rs-ground", Ground);
