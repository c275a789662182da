// The team list: start pressures for all riders on one page to print. Bikes are asked for one after the other, in the
// calculator's worker, so that the page stays alive.

import "./team.css";
import { isObject, type Side, sides } from "../../../book/pressure/answer.ts";
import { conditionsOf, type Result, type TeamBike, teamBikes, teamRow, type TeamRow } from "../../../book/pressure/team_view.ts";
import { whenWords } from "../../../book/value/when.ts";
import { el } from "../../../ui/el.ts";
import { keyed } from "../../../ui/keyed.ts";
import { setHidden, setText } from "../../../ui/part.ts";
import type { RecordState } from "../../../log/op/merge.ts";
import type { Ctx } from "../../../ui/screen.ts";
import { w } from "../../../words/index.ts";
import type { ReadyView } from "../../../book/checks/ready_view.ts";
import { readyOfAll } from "../../shared/ready.ts";
import { asker, paperOf, printButton } from "../../shared/paper.ts";
import { follow, nothingYet, openPrint } from "./print.ts";

const choiceName = "pressure-team"; // the draft that keeps which bikes are left out

export class Team {
  readonly #ctx: Ctx;
  readonly #results = new Map<string, Result>(); // by bike, since the last look at the book
  readonly #print = printButton();
  readonly #progress = el("progress", { "aria-label": w("print.team") });
  readonly #state = el("p", { class: "small quiet", role: "status" });
  readonly #weather = el("p");
  readonly #age = el("p", { class: "small" });
  readonly #ground = el("p", { class: "small" });
  readonly #made = el("p", { class: "small made" });
  readonly #head = el("tr");
  readonly #body = el("tbody");
  readonly #table = el("table", { class: "team" }, el("caption", {}, w("team.caption")), el("thead", {}, this.#head), this.#body);
  readonly #list = el("div", { class: "stack" });
  readonly #nobody = el("p", {}, w("team.nobody"));
  readonly #page: HTMLElement;
  readonly #empty = nothingYet();
  #bikes: readonly TeamBike[] = [];
  #notes: readonly RecordState[] = []; // after rides
  #off: ReadonlySet<string> = new Set();
  #states: ReadonlyMap<string, ReadyView> = new Map();
  #round = 0; // a newer look ends the older one's asking

  constructor(host: HTMLElement, ctx: Ctx) {
    this.#ctx = ctx;
    openPrint(ctx, w("print.team"));
    const all = el("button", { type: "button", class: "button", on: { click: () => this.#choose(new Set()) } }, w("team.all"));
    const none = el("button", { type: "button", class: "button", on: { click: () => this.#choose(new Set(this.#bikes.map(({ rec }) => rec))) } }, w("team.clear"));
    this.#page = el("div", { class: "stack team-page" },
      el("div", { class: "row noprint" }, this.#print, this.#progress, this.#state),
      el("div", { class: "sheet stack" }, el("div", {}, this.#weather, this.#ground, this.#age, this.#made), this.#table, this.#nobody),
      el("details", { class: "card fold noprint" }, el("summary", {}, w("team.choose")), el("div", { class: "stack" }, el("div", { class: "row" }, all, none), this.#list)));
    setHidden(this.#page, true);
    setHidden(this.#empty, true);
    host.append(this.#page, this.#empty);
    follow(ctx, () => this.#again());
    this.#again();
  }

  #again(): void {
    void this.#look().catch((error: unknown) => this.#ctx.trouble(error));
  }

  async #look(): Promise<void> {
    const round = ++this.#round;
    const [paper, choice] = await Promise.all([paperOf(this.#ctx), this.#ctx.drafts.load(choiceName)]);
    if (round !== this.#round || this.#ctx.closed.aborted) return;
    this.#results.clear();
    this.#notes = paper.book.notes;
    this.#bikes = teamBikes(paper.book, paper.today, this.#ctx.settings.units, paper.tables);
    const off = isObject(choice) ? choice["off"] : undefined;
    this.#off = new Set(Array.isArray(off) ? off.filter((rec) => typeof rec === "string") : []);
    this.#show();
    await this.#ask();
    const states = await readyOfAll(this.#ctx, this.#chosen().map(({ rec }) => rec));
    if (this.#ctx.closed.aborted) return;
    this.#states = states;
    this.#show();
  }

  #choose(off: ReadonlySet<string>): void {
    this.#off = off;
    void this.#ctx.drafts.save(choiceName, { off: [...off] });
    this.#show();
    void this.#ask();
  }

  #chosen(): readonly TeamBike[] {
    return this.#bikes.filter(({ rec }) => !this.#off.has(rec));
  }

  // ask goes through the chosen bikes. What was answered before costs nothing.
  async #ask(): Promise<void> {
    const round = ++this.#round;
    for (const bike of this.#chosen()) {
      if (bike.reading.body === undefined) continue;
      if (this.#results.has(bike.rec)) continue;
      const result = await asker(this.#ctx, this.#notes)(bike).catch(() => ({ refused: w("wheel.oldCalc") }));
      if (round !== this.#round || this.#ctx.closed.aborted) return;
      this.#results.set(bike.rec, result);
      this.#show();
    }
  }

  #result({ rec, reading }: TeamBike): Result | undefined {
    return reading.body === undefined ? undefined : this.#results.get(rec);
  }

  #show(): void {
    const { settings } = this.#ctx;
    const now = Date.now();
    const chosen = this.#chosen();
    const waiting = chosen.filter((bike) => bike.reading.body !== undefined && this.#result(bike) === undefined).length;
    setHidden(this.#page, this.#bikes.length === 0);
    setHidden(this.#empty, this.#bikes.length > 0);
    this.#progress.max = Math.max(1, chosen.length);
    this.#progress.value = chosen.length - waiting;
    setHidden(this.#progress, waiting === 0);
    this.#print.disabled = waiting > 0 || chosen.length === 0;
    setText(this.#state, waiting > 0 ? w("team.progress", { done: chosen.length - waiting, total: chosen.length }) : chosen.length === 1 ? w("team.readyOne") : w("team.ready", { total: chosen.length }));
    this.#conditions(now);
    const unit = w(`unit.${settings.units}`);
    const heads = [w("team.bike"), w("team.rider"), w("team.unit", { side: w("side.front"), unit }), w("team.unit", { side: w("side.rear"), unit })];
    this.#head.replaceChildren(...heads.map((words, n) => el("th", { scope: "col", class: n > 1 ? "gauge" : "" }, words)));
    setHidden(this.#table, chosen.length === 0);
    setHidden(this.#nobody, chosen.length > 0);
    this.#body.replaceChildren(...chosen.flatMap((bike) => rowNodes(teamRow(bike, this.#result(bike), settings.units, now), this.#states.get(bike.rec))));
    keyed(this.#list, this.#bikes, ({ rec }) => rec, ({ rec }) => this.#tick(rec), (node, bike) => {
      const box = node.querySelector("input");
      const words = node.querySelector("span");
      if (box !== null && box.checked === this.#off.has(bike.rec)) box.checked = !this.#off.has(bike.rec);
      if (words !== null) setText(words, bike.rider === "" ? bike.name : `${bike.name}, ${bike.rider}`);
    });
  }

  #conditions(now: number): void {
    for (const bike of this.#chosen()) {
      const result = this.#result(bike);
      if (result === undefined || !("kept" in result)) continue;
      const { weather, age, ground } = conditionsOf(bike, result.kept, this.#ctx.settings.units, now);
      setText(this.#weather, weather);
      setText(this.#age, age);
      setHidden(this.#age, age === "");
      setText(this.#ground, ground);
      setText(this.#made, w("print.made", { when: whenWords(now, now) }));
      return;
    }
  }

  #tick(rec: string): HTMLElement {
    const box = el("input", { type: "checkbox" });
    box.addEventListener("change", () => {
      const off = new Set(this.#off);
      if (box.checked) off.delete(rec);
      else off.add(rec);
      this.#choose(off);
    });
    return el("label", { class: "tick" }, box, el("span"));
  }
}

// rowNodes are a bike's numbers and, where one is missing, a line below that tells why.
function rowNodes({ name, rider, cells, shared }: TeamRow, ready: ReadyView | undefined): readonly HTMLTableRowElement[] {
  const number = (side: Side): HTMLElement => (cells[side].number === "" ? el("td", { class: "none" }, w("wheel.none")) : el("td", { class: "gauge" }, cells[side].number));
  const row = el("tr", {}, el("th", { scope: "row" }, name, ...(ready === undefined ? [] : [el("div", { class: `small ready ${ready.state}` }, ready.line)])), el("td", {}, rider), number("front"), number("rear"));
  const whys = shared !== "" ? [shared]
    : sides.filter((side) => cells[side].number === "").map((side) => w("team.whyOne", { side: w(`side.${side}`), why: cells[side].why }));
  if (whys.length === 0) return [row];
  row.classList.add("explained");
  const why = el("td", { class: "why" }, whys.join(" "));
  why.colSpan = columns;
  return [row, el("tr", {}, why)];
}

const columns = 4;
