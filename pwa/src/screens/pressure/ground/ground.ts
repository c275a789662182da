// Today's ground: a strip that shows its stones, and a stretch of ground in each row.

import type { StretchDraft } from "../../../book/pressure/draft.ts";
import { partTexts } from "../../../book/pressure/edits.ts";
import { fieldView } from "../../../book/pressure/field_view.ts";
import { groundKinds, lengthField, stretchFields } from "../../../book/pressure/fields.ts";
import type { GroundLine } from "../../../book/pressure/grounds.ts";
import { Choice } from "../../../ui/choice.ts";
import { dragged } from "../../../ui/drag.ts";
import { el } from "../../../ui/el.ts";
import { Field } from "../../../ui/field.ts";
import { keyed } from "../../../ui/keyed.ts";
import { actName, define, Part, setAttr, setHidden, setText } from "../../../ui/part.ts";
import { Picker } from "../../../ui/picker.ts";
import { w } from "../../../words/index.ts";
import { GroundStrip } from "./ground_strip.ts";
import type { InputState } from "../setup/inputs.ts";
import { KeptGrounds } from "./kept_grounds.ts";

export interface StretchChange {
  readonly id: string;
  readonly change: Partial<StretchDraft>;
}

export const stretchChanged = actName<StretchChange>("rs-stretch-changed");
export const stretchAdded = actName<undefined>("rs-stretch-added");
export const stretchMoved = actName<{ readonly id: string; readonly to: number }>("rs-stretch-moved");
export const stretchRemoved = actName<string>("rs-stretch-removed");
export const furtherWanted = actName<{ readonly which: Further; readonly host: HTMLElement }>("rs-ground-further"); // to be put into this host
export const groundUndone = actName<undefined>("rs-ground-undone");

// What comes with a script of its own, when it is wanted.
export type Further = "measure" | "course";

export interface GroundView {
  readonly state: InputState;
  readonly undo: string; // what was just done to the ground, in words; "" when nothing can be undone
  readonly kept: readonly GroundLine[];
}

const kinds = (): { value: string; label: string }[] => [...groundKinds, "typed" as const].map((value) => ({ value, label: w(`kind.${value}`) }));

export class Ground extends Part<GroundView> {
  readonly #strip = new GroundStrip();
  readonly #list = el("div", { class: "stack" });
  readonly #by = new Choice();
  readonly #keep = new KeptGrounds();
  readonly #further = el("div", { class: "stack" });
  readonly #undone = el("p", { role: "status" });
  readonly #undo = el("div", { class: "row" }, this.#undone,
    el("button", { type: "button", class: "button", on: { click: () => this.act(groundUndone, undefined) } }, w("ground.undo")));

  protected override build(): void {
    const add = el("button", { type: "button", class: "button", on: { click: () => this.act(stretchAdded, undefined) } }, w("ground.add"));
    this.append(el("div", { class: "stack" }, this.#strip,
      el("p", { class: "small quiet" }, w("ground.hint")), this.#by, this.#list, this.#undo, add,
      el("div", { class: "row" }, ...(["measure", "course"] as const).map((which) => this.#wants(which))), this.#further, this.#keep));
    dragged(this.#list, (index) => this.view?.state.draft.ground[index]?.id, (id, to) => this.act(stretchMoved, { id, to }));
  }

  #wants(which: Further): HTMLElement {
    return el("button", { type: "button", class: "button", on: { click: () => this.act(furtherWanted, { which, host: this.#further }) } }, which === "measure" ? w("ground.measure") : w("ground.course"));
  }

  protected override show({ state, undo, kept }: GroundView): void {
    const { ground, groundBy } = state.draft;
    this.#strip.view = ground;
    this.#by.view = { name: "ground.by", legend: w("ground.by"), value: groundBy, options: (["km", "share"] as const).map((value) => ({ value, label: w(`groundBy.${value}`) })) };
    setHidden(this.#by, ground.length === 1);
    this.#keep.view = kept;
    const parts = partTexts(ground);
    keyed(this.#list, ground, (each) => each.id, () => new Stretch(), (node, stretch, index) => {
      node.view = { state, stretch, index, count: ground.length, part: parts[index] ?? "" };
    });
    setText(this.#undone, undo);
    setHidden(this.#undo, undo === "");
  }
}

interface StretchView {
  readonly state: InputState;
  readonly stretch: StretchDraft;
  readonly index: number;
  readonly count: number;
  readonly part: string; // its share of the day as it is shown
}

class Stretch extends Part<StretchView> {
  readonly #legend = el("legend");
  readonly #kind = new Picker();
  readonly #km = new Field();
  readonly #kmh = new Field();
  readonly #gd0 = new Field();
  readonly #board = el("input", { type: "checkbox" });
  readonly #remove = el("button", { type: "button", class: "button quiet" }, w("ground.remove"));
  readonly #earlier = this.#mover(-1, "↑");
  readonly #later = this.#mover(1, "↓");
  readonly #grip = el("span", { class: "grip", "aria-hidden": "true" }, "⠿");
  readonly #moves = el("div", { class: "row moves" }, this.#earlier, this.#later, this.#grip);

  #mover(by: number, sign: string): HTMLButtonElement {
    return el("button", { type: "button", class: "button", on: { click: () => this.act(stretchMoved, { id: this.view?.stretch.id ?? "", to: (this.view?.index ?? 0) + by }) } }, sign);
  }

  protected override build(): void {
    this.#board.addEventListener("change", () => this.#change({ washboard: this.#board.checked }));
    this.#remove.addEventListener("click", () => this.act(stretchRemoved, this.view?.stretch.id ?? ""));
    this.append(el("fieldset", { class: "stack" }, this.#legend, this.#moves, this.#kind,
      el("div", { class: "fields" }, this.#km, this.#kmh, this.#gd0),
      el("div", { class: "row spread" }, el("label", { class: "tick" }, this.#board, w("ground.washboard")), this.#remove)));
  }

  #change(change: Partial<StretchDraft>): void {
    this.act(stretchChanged, { id: this.view?.stretch.id ?? "", change });
  }

  protected override show({ state, stretch, index, count, part }: StretchView): void {
    const lone = count === 1;
    const name = w("ground.stretch", { n: index + 1 });
    setText(this.#legend, name);
    this.#kind.view = { name: `ground.${stretch.id}.kind`, label: w("ground.what"), spoken: `${name}: ${w("ground.what")}`, value: stretch.kind, options: kinds() };
    for (const [key, field] of [["km", this.#km], ["kmh", this.#kmh], ["gd0", this.#gd0]] as const) {
      const id = `ground.${stretch.id}.${key}`;
      const spec = key === "km" ? lengthField(state.draft.groundBy) : stretchFields[key];
      const text = key === "km" && state.draft.groundBy === "share" ? part : stretch[key];
      const view = fieldView(spec, id, text, state.reading.faults.get(id), state.unit, state.tables);
      const label = spec.id === "part" ? w("field.part") : view.label;
      field.view = { ...view, label, spoken: `${name}: ${label}`, range: key === "km" ? null : key === "gd0" && stretch.low !== undefined ? w("ground.measured", { low: stretch.low, high: stretch.high ?? "" }) : view.range };
    }
    setHidden(this.#gd0, stretch.kind !== "typed");
    if (this.#board.checked !== stretch.washboard) this.#board.checked = stretch.washboard;
    setHidden(this.#moves, lone);
    this.#earlier.disabled = index === 0;
    this.#later.disabled = index === count - 1;
    setAttr(this.#earlier, "aria-label", w("ground.earlier", { n: index + 1 }));
    setAttr(this.#later, "aria-label", w("ground.later", { n: index + 1 }));
    setHidden(this.#remove, lone);
    setAttr(this.#remove, "aria-label", w("ground.removeOf", { n: index + 1 }));
  }
}

define("rs-stretch", Stretch);
define("rs-ground", Ground);
