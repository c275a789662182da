// Will it go on: the grade on the face, the drawing and the millimetres behind "Why", and the measures with the rim drawn.

import { roomView } from "../../../book/fit/room_view.ts";
import { type FieldId } from "../../../book/fit/fit_asks.ts";
import { nameOf } from "../../../book/fit/gate_view.ts";
import { valueOf } from "../../../log/op/merge.ts";
import { el } from "../../../ui/el.ts";
import { keyed } from "../../../ui/keyed.ts";
import { setHidden, setText } from "../../../ui/part.ts";
import type { Ctx } from "../../../ui/screen.ts";
import { w } from "../../../words/index.ts";
import { fixed, plain } from "../../../words/number.ts";
import { edgeMm, type FitBook } from "./fit_book.ts";
import { RecordSheet } from "./pair.ts";
import { section, type SectionMeasures } from "./section_draw.ts";
import { sideView } from "./side_draw.ts";

const usual = { a: 21, g: 6, well: 3.5 }; // mm, for a drawing of a rim that nobody measured

type Say = (words: string, undo?: () => Promise<unknown>, failed?: boolean) => void;

export class RoomCard {
  readonly node: HTMLElement;
  readonly #grade = el("p", { class: "grade" });
  readonly #text = el("p");
  readonly #lines = el("ul", { class: "stack" });
  readonly #side = el("figure");
  readonly #why = el("details", { class: "why" }, el("summary", {}, w("fit.why")), el("div", { class: "stack" }, this.#side, this.#lines, el("p", { class: "small quiet" }, w("fit.whyNot"))));
  readonly #figure = el("figure");
  readonly #example = el("p", { class: "small quiet" }, w("fit.asExample"));
  readonly #wheel: RecordSheet;
  readonly #tyre: RecordSheet;
  readonly #measures: HTMLDetailsElement;
  #drawn = "";

  constructor(ctx: Ctx, again: () => void, say: Say) {
    this.#wheel = new RecordSheet(ctx, "wheel", "fit-measured", again, say);
    this.#tyre = new RecordSheet(ctx, "tyre", "fit-measured", again, say);
    this.#measures = el("details", { class: "measures" }, el("summary", {}, w("fit.measures")),
      el("div", { class: "stack" }, el("p", {}, w("fit.measuresIntro")), this.#figure, this.#example, this.#wheel.node, this.#tyre.node));
    this.node = el("section", { class: "card stack" }, el("h2", {}, w("fit.room")), el("p", { class: "quiet" }, w("fit.roomIntro")),
      el("div", { role: "status" }, this.#grade, this.#text), this.#why, this.#measures);
  }

  async show(at: FitBook): Promise<void> {
    this.#verdict(at);
    this.#draw(at);
    await this.#wheel.show(at.wheel, ["flange_mm", "well_depth_mm", "tape_layers", "tape_mm", "valve_width_mm", "valve_height_mm", "well_width_mm"], at);
    await this.#tyre.show(at.tyre, ["bead_undersize_mm", "bead_mm"], at);
  }

  #verdict(at: FitBook): void {
    const { room, fault } = at;
    const insert = valueOf(at.wheel, "setup") === "insert";
    const view = insert || room === undefined ? undefined : roomView(room);
    setText(this.#grade, view?.title ?? "");
    this.#grade.className = view === undefined ? "grade" : `grade ${view.grade === "not_like_this" ? "care" : ""}`;
    setHidden(this.#grade, view === undefined);
    setText(this.#text, view?.text ?? (insert ? w("fit.insert") : fault === "" ? w("fit.notMeasured") : w("fit.cannot", { field: nameOf(fieldOf(fault)) })));
    setHidden(this.#why, view === undefined);
    keyed(this.#lines, view?.why ?? [], (words) => words, () => el("li"), setText);
  }

  // draw makes the drawings anew when a measure has changed.
  #draw(at: FitBook): void {
    const { room, fitting } = at;
    const number = (field: string): number | undefined => {
      const value = valueOf(at.wheel, field);
      return typeof value === "number" && value > 0 ? value : undefined;
    };
    const a = number("inner_mm") ?? usual.a;
    const known = "request" in fitting && room !== undefined;
    const measures: SectionMeasures = {
      a, g: known ? fitting.request.flange_mm : usual.g, well: known ? fitting.request.well_depth_mm : usual.well, h: known ? room.depth_mm : usual.well - 0.3,
      l1: Math.min(number("well_width_mm") ?? a * 0.36, a * 0.8), hook: valueOf(at.wheel, "profile") === "hooked",
    };
    const off = room?.free_arc_mm.finish_at_valve ?? 0;
    const drawn = JSON.stringify([measures, off, known, edgeMm(at)]);
    if (drawn === this.#drawn) return;
    this.#drawn = drawn;
    this.#figure.replaceChildren(section(measures, known ? w("fit.section", { a: plain(a), g: plain(measures.g), h: fixed(measures.h, 2) }) : w("fit.sectionNone")));
    setHidden(this.#example, known);
    if (!known) return this.#side.replaceChildren();
    const label = off > 0 ? w("fit.sideView", { mm: fixed(off, 0) }) : w("fit.sideNone");
    this.#side.replaceChildren(sideView({ edgeMm: edgeMm(at), floorMm: fitting.request.bead_seat_mm / 2 - room.depth_mm, offMm: off }, label, w("fit.stillOff", { mm: fixed(off, 0) })));
  }
}

const ofTyre = ["bead_undersize_mm", "bead_mm"];

function fieldOf(fault: string): FieldId {
  return `${ofTyre.includes(fault) ? "tyre" : "wheel"}.${fault}`;
}
