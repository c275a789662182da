// What to take along: a choice at once, then a better one while the calculator goes on looking.

import "./car.css";
import type { Fleet, Rider } from "../../book/car/fleet.ts";
import { coverRequest, loadView, type State, steps, weights, whoWords } from "../../book/car/load.ts";
import type { CoverAnswer } from "../../contract/contract.ts";
import { el } from "../../ui/el.ts";
import { keyed } from "../../ui/keyed.ts";
import { openPage } from "../../ui/page.ts";
import { setHidden, setText } from "../../ui/part.ts";
import type { Ctx } from "../../ui/screen.ts";
import { w } from "../../words/index.ts";
import { printButton } from "../shared/paper.ts";
import { follow } from "../shared/follow.ts";
import { fleetNow } from "./car_book.ts";
import { stoppedSpares } from "./verdicts.ts";

const choice = "car-load"; // the draft that keeps places and weights

class LoadPage {
  readonly #ctx: Ctx;
  readonly #places = el("input", { class: "entry", type: "number", inputmode: "numeric", min: 1, max: 400, id: "load-places", on: { change: () => this.#choose() } });
  readonly #sum = el("p", { role: "status" });
  readonly #stop = el("button", { type: "button", class: "button", on: { click: () => this.#end() } }, w("load.stop"));
  readonly #progress = el("progress", { "aria-label": w("load.title"), max: steps.length });
  readonly #wheels = el("ul", { class: "unmarked stack" });
  readonly #left = el("ul");
  readonly #without = el("section", { class: "card stack" }, el("h2", {}, w("load.left")), this.#left);
  readonly #leaders = el("div", { class: "row" });
  #fleet: Fleet | undefined;
  #weights: Record<string, number> = {};
  #load: CoverAnswer | undefined;
  #round = 0;

  constructor(host: HTMLElement, ctx: Ctx) {
    this.#ctx = ctx;
    openPage(ctx, w("load.title"), { href: "#/car", words: w("place.car") });
    host.append(el("div", { class: "stack car" }, el("div", { class: "row noprint" }, printButton()),
      el("section", { class: "card stack" }, el("div", { class: "noprint" }, el("label", { for: "load-places" }, w("load.places")), this.#places), this.#sum, el("div", { class: "row" }, this.#progress, this.#stop), el("h2", {}, w("load.take")), this.#wheels),
      this.#without,
      el("details", { class: "card fold" }, el("summary", {}, w("load.leaders")), el("div", { class: "stack" }, el("p", { class: "small quiet" }, w("load.leadersWhy")), this.#leaders))));
    this.#places.value = "12";
    follow(ctx, () => this.#read(), (words) => setText(this.#sum, words));
  }

  async #read(): Promise<void> {
    const [fleet, kept] = await Promise.all([fleetNow(this.#ctx), this.#ctx.drafts.load(choice)]);
    if (this.#ctx.closed.aborted) return;
    this.#fleet = fleet;
    if (typeof kept === "object" && kept !== null && this.#round === 0) {
      const { places, weights: counted } = kept as { places?: unknown; weights?: unknown };
      if (typeof places === "number") this.#places.value = String(places);
      if (typeof counted === "object" && counted !== null) this.#weights = { ...(counted as Record<string, number>) };
    }
    this.#showLeaders(fleet.riders);
    await this.#search(fleet);
  }

  #showLeaders(riders: readonly Rider[]): void {
    keyed(this.#leaders, riders, ({ bike }) => bike.rec, ({ bike }) => el("button", { type: "button", class: "button", on: { click: () => this.#weigh(bike.rec) } }), (node, rider) => {
      const n = this.#weights[rider.bike.rec] ?? 1;
      const who = whoWords(rider) || rider.bikeName;
      setText(node, n === 1 ? w("load.once", { who }) : w("load.weight", { who, n }));
    });
  }

  #weigh(rec: string): void {
    const at = weights.indexOf(this.#weights[rec] ?? 1);
    this.#weights = { ...this.#weights, [rec]: weights[(at + 1) % weights.length] ?? 1 };
    this.#choose();
  }

  #choose(): void {
    void this.#ctx.drafts.save(choice, { places: this.#count(), weights: this.#weights });
    if (this.#fleet === undefined) return;
    this.#showLeaders(this.#fleet.riders);
    void this.#search(this.#fleet);
  }

  #count(): number {
    const typed = Math.round(Number(this.#places.value));
    return Number.isFinite(typed) ? Math.min(400, Math.max(0, typed)) : 0;
  }

  // search asks with more effort each time, until the choice is proved, or the person stops it, or something changed.
  async #search(fleet: Fleet): Promise<void> {
    const round = ++this.#round;
    const stopped = await stoppedSpares(this.#ctx, fleet);
    for (const [n, effort] of steps.entries()) {
      if (round !== this.#round || this.#ctx.closed.aborted) return;
      const { answer } = await this.#ctx.calc.ask("cover", coverRequest(fleet, stopped, ({ bike }) => this.#weights[bike.rec] ?? 1, this.#count(), effort));
      if (round !== this.#round || this.#ctx.closed.aborted || answer === undefined) return;
      this.#load = answer;
      this.#show(this.#load.exact ? "exact" : n + 1 < steps.length ? "looking" : "stopped", fleet, n + 1);
      if (this.#load.exact) return;
    }
  }

  #end(): void {
    this.#round++;
    if (this.#fleet !== undefined) this.#show("stopped", this.#fleet, steps.length);
  }

  #show(state: State, fleet: Fleet, done: number): void {
    if (this.#load === undefined) return;
    const view = loadView(this.#load, state, fleet, Date.now());
    setText(this.#sum, view.sum);
    this.#progress.value = done;
    setHidden(this.#stop, state !== "looking");
    setHidden(this.#progress, state !== "looking");
    keyed(this.#wheels, view.wheels, ({ rec }) => rec, () => el("li"), (node, { name, place }) => setText(node, place === "" ? name : w("car.named", { spare: name, place })));
    keyed(this.#left, view.left, ({ key }) => key, () => el("li"), (node, { rider, why }) => setText(node, w("event.badCell", { column: rider, why })));
    setHidden(this.#without, view.left.length === 0);
  }
}

export function load(host: HTMLElement, ctx: Ctx): void {
  new LoadPage(host, ctx);
}
