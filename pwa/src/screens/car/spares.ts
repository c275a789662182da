// The spares: wheels with a name to call out and a place in the car, and the whole bikes on the roof.

import "./car.css";
import type { Fleet } from "../../book/car/fleet.ts";
import type { Loan } from "../../book/car/lent.ts";
import { textIn } from "../../book/car/known.ts";
import { spareChanges } from "../../book/car/moves.ts";
import { sides } from "../../book/pressure/answer.ts";
import { clockWords } from "../../book/value/when.ts";
import { newRec } from "../../log/book_log.ts";
import type { RecordState } from "../../log/op/merge.ts";
import { chosen } from "../../ui/choice.ts";
import { el } from "../../ui/el.ts";
import { keyed } from "../../ui/keyed.ts";
import { Outcome } from "../../ui/outcome.ts";
import { openPage } from "../../ui/page.ts";
import { listen, setHidden } from "../../ui/part.ts";
import { Picker } from "../../ui/picker.ts";
import type { Ctx } from "../../ui/screen.ts";
import { showWay, way } from "../../ui/way.ts";
import { w } from "../../words/index.ts";
import { attempt, follow } from "../shared/follow.ts";
import { fleetNow } from "./car_book.ts";

class Spares {
  readonly #ctx: Ctx;
  readonly #outcome = new Outcome();
  readonly #list = el("ul", { class: "unmarked ways" });
  readonly #none = el("p", {}, w("car.noSpares"));
  readonly #wheel = new Picker();
  readonly #name = el("input", { class: "entry", type: "text", maxlength: 60, autocomplete: "off", id: "spare-name" });
  readonly #place = el("input", { class: "entry", type: "text", maxlength: 60, autocomplete: "off", id: "spare-place" });
  readonly #bare = el("input", { type: "checkbox" });
  readonly #form: HTMLElement;
  readonly #noWheels = el("p", { class: "quiet" }, w("spares.noWheels"));
  readonly #again: () => Promise<void>;
  #free: readonly RecordState[] = [];
  #chosen = "";

  constructor(host: HTMLElement, ctx: Ctx) {
    this.#ctx = ctx;
    openPage(ctx, w("spares.title"), { href: "#/car", words: w("place.car") });
    this.#form = el("div", { class: "stack" }, this.#wheel, el("div", {}, el("label", { for: "spare-name" }, w("spares.name")), this.#name),
      el("div", {}, el("label", { for: "spare-place" }, w("spares.place")), this.#place), el("label", { class: "row" }, this.#bare, w("spares.bare")),
      el("p", {}, el("button", { type: "button", class: "button primary", on: { click: () => void this.#add() } }, w("spares.add"))));
    host.append(el("div", { class: "stack car" }, this.#outcome, this.#none, el("section", { class: "card" }, this.#list),
      el("section", { class: "card stack" }, el("h2", {}, w("spares.add")), this.#noWheels, this.#form)));
    listen(host, chosen, ({ value }) => (this.#chosen = value), ctx.closed);
    this.#again = follow(ctx, () => this.#look(), (words) => (this.#outcome.view = { words, failed: true }));
  }

  async #look(): Promise<void> {
    const { book } = this.#ctx;
    const [fleet, wheels, bikes] = await Promise.all([fleetNow(this.#ctx), book.all("wheel"), book.all("bike")]);
    if (this.#ctx.closed.aborted) return;
    const taken = new Set([...fleet.spares.map(({ wheel }) => wheel?.rec), ...bikes.flatMap((bike) => sides.map((side) => textIn(bike, side)))]);
    this.#free = wheels.filter(({ rec }) => !taken.has(rec));
    setHidden(this.#none, fleet.spares.length + fleet.bikes.length > 0);
    setHidden(this.#form, this.#free.length === 0);
    setHidden(this.#noWheels, this.#free.length > 0);
    this.#wheel.view = {
      name: "wheel", label: w("spares.wheel"), spoken: w("spares.wheel"), value: this.#chosen,
      options: [{ value: "", label: "" }, ...this.#free.map((wheel) => ({ value: wheel.rec, label: textIn(wheel, "name") || w("recKind.wheel") }))],
    };
    this.#show(fleet);
  }

  #show({ spares, bikes, riders }: Fleet): void {
    const where = (place: string, loan: Loan | undefined): string => {
      if (loan === undefined) return place;
      const who = riders.find(({ bike }) => bike.rec === loan.bike);
      const clock = clockWords(loan.at, Date.now());
      return who === undefined ? w("spares.outUnknown", { clock }) : w("spares.out", { who: who.number || who.name, clock });
    };
    const lines = [
      ...spares.map(({ rec, wheel, name, place, loan }) => ({ rec: wheel?.rec ?? rec, name, where: where(place, loan) })),
      ...bikes.map(({ bike, name, place, loan }) => ({ rec: bike.rec, name, where: where(place, loan) })),
    ];
    keyed(this.#list, lines, ({ rec }) => rec, () => way(), (node, each) => showWay(node, `#/wheels/${each.rec}`, each.name, each.where));
  }

  async #add(): Promise<void> {
    const wheel = this.#free.find(({ rec }) => rec === this.#chosen);
    if (wheel === undefined) {
      this.#outcome.view = { words: w("spares.choose"), failed: true };
      return;
    }
    const name = this.#name.value.trim() || textIn(wheel, "name");
    const { book } = this.#ctx;
    const failed = await attempt(this.#ctx, async () => {
      const [spare] = await book.save(spareChanges(wheel, name, this.#place.value.trim(), this.#bare.checked, newRec));
      const undo = (): void => void attempt(this.#ctx, async () => spare !== undefined && book.remove(spare)).then(() => this.#again());
      this.#outcome.view = { words: w("spares.added", { spare: name }), undo };
      for (const input of [this.#name, this.#place]) input.value = "";
      this.#bare.checked = false;
      this.#chosen = "";
    });
    if (failed !== "") this.#outcome.view = { words: failed, failed: true };
    await this.#again();
  }
}

export function spares(host: HTMLElement, ctx: Ctx): void {
  new Spares(host, ctx);
}
