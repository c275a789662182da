// Tyre and rim, asked before the first step: which tyre goes on, what both say, and whether that may be.

import type { GateView } from "../../../book/fit/gate_view.ts";
import { textOf } from "../../../book/checks/walk_save.ts";
import { kindWords } from "../../../book/value/kind_words.ts";
import { shortNameOf } from "../../../book/value/record_words.ts";
import { askedOf } from "../../../book/wheels/thing_view.ts";
import { type RecordState, valueOf } from "../../../log/op/merge.ts";
import { chosen } from "../../../ui/choice.ts";
import { el } from "../../../ui/el.ts";
import { keyed } from "../../../ui/keyed.ts";
import { actName, define, listen, Part, setHidden, setText } from "../../../ui/part.ts";
import { Picker } from "../../../ui/picker.ts";
import type { Ctx } from "../../../ui/screen.ts";
import { w } from "../../../words/index.ts";
import { byName } from "../../../words/order.ts";
import { Form } from "../../shared/form.ts";
import { Edits } from "../edits.ts";
import type { FitBook } from "./fit_book.ts";

export const tyreChosen = actName<string>("rs-fit-tyre"); // a record, or "new"
type Say = (words: string, undo?: () => Promise<unknown>, failed?: boolean) => void;

// Sheet asks some fields of one record, which may change for another one.
export class RecordSheet {
  readonly node = el("div");
  readonly #ctx: Ctx;
  readonly #kind: "wheel" | "tyre";
  readonly #draft: string; // what is typed here and cannot be saved is kept apart
  readonly #say: Say;
  readonly #again: () => void;
  #form = new Form();
  #edits: Edits | undefined;
  #rec = "";

  constructor(ctx: Ctx, kind: "wheel" | "tyre", draft: string, again: () => void, say: Say) {
    this.#ctx = ctx;
    this.#kind = kind;
    this.#draft = draft;
    this.#again = again;
    this.#say = say;
  }

  async show(state: RecordState | undefined, fields: readonly string[], { teller, bikes }: FitBook): Promise<void> {
    setHidden(this.node, state === undefined);
    if (state === undefined) return;
    if (this.#rec !== state.rec) await this.#begin(state.rec);
    const edits = this.#edits;
    if (edits === undefined) return;
    edits.know(state, bikes);
    this.#form.view = fields.map((field) => askedOf(this.#kind, field, state, edits, teller, []));
  }

  async #begin(rec: string): Promise<void> {
    this.#rec = rec;
    this.#form = new Form();
    const title = kindWords(this.#kind);
    const host = el("div", { class: "stack", role: "group", "aria-label": title }, el("h3", {}, title), this.#form);
    this.node.replaceChildren(host);
    this.#edits = new Edits(host, this.#ctx, rec, this.#again, this.#say, `${this.#draft}/${rec}`);
    await this.#edits.load();
  }
}

export class PairCard {
  readonly node: HTMLElement;
  readonly #tyre = new Picker();
  readonly #tyreSheet: RecordSheet;
  readonly #wheelSheet: RecordSheet;
  readonly #hookless = el("p", { class: "notice care" }, w("fit.hookless"));
  readonly #gate = new Gate();
  readonly #printed: HTMLDetailsElement;
  #folded = false; // once at the start: what is known need not be asked again

  constructor(ctx: Ctx, again: () => void, say: Say) {
    this.#tyreSheet = new RecordSheet(ctx, "tyre", "fit-printed", again, say);
    this.#wheelSheet = new RecordSheet(ctx, "wheel", "fit-printed", again, say);
    this.#printed = el("details", { class: "measures" }, el("summary", {}, w("fit.printed")), el("div", { class: "stack" }, this.#tyreSheet.node, this.#wheelSheet.node));
    const pick = el("div", {}, this.#tyre);
    listen(pick, chosen, ({ value }, event) => {
      event.stopPropagation();
      if (value !== "") pick.dispatchEvent(new CustomEvent(tyreChosen, { detail: value, bubbles: true }));
    });
    this.node = el("section", { class: "card stack" }, el("h2", {}, w("fit.pair")), el("p", {}, w("fit.pairIntro")), pick, this.#gate, this.#hookless, this.#printed);
  }

  async show(at: FitBook): Promise<void> {
    const { wheel, tyre, tyres, seat } = at;
    const offered = tyres.filter((each) => valueOf(each, "retired") !== true || each.rec === tyre?.rec)
      .map((each) => ({ value: each.rec, label: labelOf(each, at) })).sort((a, b) => byName(a.label, b.label));
    this.#tyre.view = {
      name: "fit.tyre", label: w("fit.goesOn"), spoken: w("fit.goesOn"), value: tyre?.rec ?? "",
      options: [...(tyre === undefined ? [{ value: "", label: w("fit.noTyre") }] : []), ...offered, { value: "new", label: w("fit.newTyre") }],
    };
    const [tube, straight] = [valueOf(wheel, "setup") === "tube", valueOf(wheel, "profile") !== "hooked"];
    await this.#tyreSheet.show(tyre, ["label_mm", "max_kpa", ...(straight ? ["hookless_ok"] : []), ...(tube ? [] : ["tubeless_ok"]), "bead_seat_mm"], at);
    await this.#wheelSheet.show(wheel, ["setup", "profile", "inner_mm", "max_kpa", "bead_seat_mm", ...(asksTable(wheel, seat) ? ["table_min_label_mm"] : [])], at);
    setHidden(this.#hookless, !straight || tyre === undefined);
    if (!this.#folded || !at.gate.open) this.#printed.open = !at.gate.open;
    this.#folded = true;
    this.#gate.view = at.gate;
    setHidden(this.#gate, tyre === undefined);
  }
}

// asksTable: the narrowest tyre that the rim's maker lists is asked for where it decides, or was given.
function asksTable(wheel: RecordState | undefined, seat: FitBook["seat"]): boolean {
  return valueOf(wheel, "table_min_label_mm") !== undefined || seat?.refused === "ask_table_min" || seat?.refused === "hookless_too_narrow" || seat?.refused === "outside_rim_table";
}

function labelOf(tyre: RecordState, { teller, wheels }: FitBook): string {
  const [name, place] = [shortNameOf(tyre, teller), teller.placeOf(tyre.rec)];
  const on = wheels.find((wheel) => textOf(wheel, "tyre") === tyre.rec);
  const where = place || (on === undefined ? "" : teller.nameOf(on.rec));
  return where === "" ? name : w("things.at", { name, place: where });
}

// Gate says whether the first step may be taken, and why not.
export class Gate extends Part<GateView> {
  readonly #title = el("strong");
  readonly #lines = el("ul", { class: "unmarked stack" });
  readonly #box = el("div", { class: "notice stack", role: "status" }, this.#title, this.#lines);

  protected override build(): void {
    this.append(this.#box);
  }

  protected override show({ severity, title, lines }: GateView): void {
    this.#box.className = severity === "" ? "notice stack" : `notice stack ${severity}`;
    setText(this.#title, title);
    setHidden(this.#title, title === "");
    keyed(this.#lines, lines, (words) => words, () => el("li"), setText);
    setHidden(this.#lines, lines.length === 0);
  }
}

define("rs-fit-gate", Gate);
