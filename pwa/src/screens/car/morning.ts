// The morning list: what to pump each spare to, and every rider's start pressures, on one page to print.

import "./car.css";
import "./morning.css";
import type { Fleet, SpareWheel } from "../../book/car/fleet.ts";
import { whoWords } from "../../book/car/load.ts";
import { type Airs, gaugeOf } from "../../book/car/morning.ts";
import { type MorningLine, morningLine } from "../../book/car/morning_view.ts";
import { pumpedChanges } from "../../book/car/moves.ts";
import { type Side, sides } from "../../book/pressure/answer.ts";
import { read } from "../../book/pressure/request.ts";
import { conditionsOf, teamRow } from "../../book/pressure/team_view.ts";
import { whenWords } from "../../book/value/when.ts";
import { newRec } from "../../log/book_log.ts";
import { el } from "../../ui/el.ts";
import { keyed } from "../../ui/keyed.ts";
import { Outcome } from "../../ui/outcome.ts";
import { openPage } from "../../ui/page.ts";
import { setAttr, setHidden, setText } from "../../ui/part.ts";
import type { Ctx } from "../../ui/screen.ts";
import { facts, w } from "../../words/index.ts";
import { attempt, follow } from "../shared/follow.ts";
import { paperOf, printButton } from "../shared/paper.ts";
import { fleetNow } from "./car_book.ts";
import { MorningSums, type RiderSum, type SpareSum } from "./morning_sums.ts";

class Morning {
  readonly #ctx: Ctx;
  readonly #outcome = new Outcome();
  readonly #progress = el("progress", { "aria-label": w("morning.title") });
  readonly #state = el("p", { class: "small quiet", role: "status" });
  readonly #none = el("p", {}, w("car.noSpares"));
  readonly #weather = el("p");
  readonly #ground = el("p", { class: "small" });
  readonly #spares = el("ul", { class: "unmarked morning-spares" });
  readonly #all = el("button", { type: "button", class: "button", on: { click: () => void this.#pumped(this.#open()) } }, w("morning.pumpedAll"));
  readonly #ridersTitle = el("h2");
  readonly #riders = el("ul", { class: "unmarked morning-riders" });
  readonly #made = el("p", { class: "small made" });
  readonly #again: () => Promise<void>;
  #airs: Airs | undefined;
  #sums = new Map<string, SpareSum>();
  #round = 0;

  constructor(host: HTMLElement, ctx: Ctx) {
    this.#ctx = ctx;
    openPage(ctx, w("morning.title"), { href: "#/car", words: w("place.car") });
    host.append(el("div", { class: "stack car morning" },
      el("div", { class: "row noprint" }, printButton(), this.#progress, this.#state), el("div", { class: "noprint" }, this.#outcome), this.#none,
      el("div", {}, this.#weather, this.#ground, this.#made), el("p", { class: "small quiet noprint" }, w("morning.why")),
      el("section", { class: "stack" }, el("h2", {}, w("morning.spares")), this.#spares, el("p", { class: "noprint" }, this.#all)),
      el("section", { class: "stack" }, this.#ridersTitle, this.#riders), el("p", { class: "small" }, w("morning.note"))));
    this.#again = follow(ctx, () => this.#look(), (words) => (this.#outcome.view = { words, failed: true }));
    ctx.closed.addEventListener("abort", ctx.drafts.follow("pressure", () => void this.#again()));
  }

  async #look(): Promise<void> {
    const round = ++this.#round;
    const over = (): boolean => round !== this.#round || this.#ctx.closed.aborted;
    const [fleet, { book, today, tables }] = await Promise.all([fleetNow(this.#ctx), paperOf(this.#ctx)]);
    if (over()) return;
    this.#airs = { book, today, tables, unit: this.#ctx.settings.units };
    setHidden(this.#none, fleet.spares.length > 0);
    setText(this.#made, w("print.made", { when: whenWords(Date.now(), Date.now()) }));
    const sums = new MorningSums(this.#ctx, fleet, this.#airs, over);
    const fresh = new Map<string, SpareSum>();
    const of = fleet.spares.filter(({ loan }) => loan === undefined).length + fleet.riders.length;
    await sums.spares((sum) => {
      fresh.set(sum.spare.rec, sum);
      this.#tell(fresh.size, of);
    });
    if (over()) return;
    this.#sums = fresh;
    this.#show();
    await this.#riderRows(fleet, sums, fresh.size, of);
  }

  async #riderRows(fleet: Fleet, sums: MorningSums, before: number, of: number): Promise<void> {
    const rows: RiderSum[] = [];
    await sums.riders((sum) => {
      rows.push(sum);
      this.#tell(before + rows.length, of);
    });
    if (rows.length < fleet.riders.length || this.#ctx.closed.aborted) return;
    this.#tell(of, of);
    this.#showRiders(rows);
  }

  #tell(done: number, of: number): void {
    this.#progress.max = of;
    this.#progress.value = done;
    setHidden(this.#progress, done >= of);
    setText(this.#state, done >= of ? "" : w("morning.progress", { done, of }));
  }

  #lines(): readonly MorningLine[] {
    return [...this.#sums.values()].map((sum) => morningLine(sum, this.#ctx.settings.units, Date.now()));
  }

  #show(): void {
    const lines = this.#lines();
    keyed(this.#spares, lines, ({ rec }) => rec, ({ rec }) => spareLine(() => void this.#pumped([rec])), (node, line) => {
      const [name, number, facts, deed] = node.children;
      if (name !== undefined) setText(name, line.name);
      if (number !== undefined) setText(number, line.told);
      if (facts !== undefined) setText(facts, line.facts);
      const [noted, button] = deed?.children ?? [];
      if (noted !== undefined) setText(noted, line.noted);
      if (!(button instanceof HTMLElement)) return;
      setHidden(button, line.number === "" || line.noted !== "");
      setAttr(button, "aria-label", w("morning.pumpedSpoken", { spare: line.name, p: line.told }));
    });
    setHidden(this.#all, this.#open().length < 2);
  }

  #open(): readonly string[] {
    return this.#lines().filter(({ number, noted }) => number !== "" && noted === "").map(({ rec }) => rec);
  }

  // pumped notes it as a wheel that was set: every screen then expects the same of it.
  async #pumped(recs: readonly string[]): Promise<void> {
    const airs = this.#airs;
    if (airs === undefined) return;
    const { error, rec: by } = gaugeOf(airs);
    const values = read(airs.today, airs.unit, airs.tables).values;
    const [c, m] = [values.get("set.c") ?? 20, values.get("set.m") ?? 0];
    const todo = recs.flatMap((rec) => this.#sums.get(rec) ?? []).filter(({ shared }) => shared !== undefined);
    const change = (spare: SpareWheel, gauge: number) => pumpedChanges(spare, { gauge, error, c, m, by }, newRec, Date.now());
    const { book } = this.#ctx;
    const failed = await attempt(this.#ctx, async () => {
      const saved = await book.save(todo.flatMap(({ spare, shared }) => change(spare, shared?.told.kpa ?? 0)));
      const undo = (): void => void attempt(this.#ctx, async () => book.remove(...saved)).then(() => this.#again());
      const [one] = todo;
      const told = this.#lines().find(({ rec }) => rec === one?.spare.rec)?.told ?? "";
      this.#outcome.view = { words: todo.length === 1 && one !== undefined ? w("morning.done", { spare: one.spare.name, p: told }) : w("morning.doneAll", { n: todo.length }), undo };
    });
    if (failed !== "") this.#outcome.view = { words: failed, failed: true };
    await this.#again();
  }

  #showRiders(rows: readonly RiderSum[]): void {
    const unit = this.#ctx.settings.units;
    const now = Date.now();
    const [first] = rows.flatMap(({ bike, result }) => ("kept" in result ? [{ bike, kept: result.kept }] : []));
    const { weather, ground } = first === undefined ? { weather: "", ground: "" } : conditionsOf(first.bike, first.kept, unit, now);
    setText(this.#ridersTitle, w("morning.riders", { unit: w(`unit.${unit}`) }));
    setText(this.#weather, weather);
    setText(this.#ground, ground);
    keyed(this.#riders, rows, ({ bike }) => bike.rec, () => el("li", {}, el("span", { class: "named" }), el("span"), el("span", { class: "small" })), (node, sum) => {
      const row = teamRow(sum.bike, sum.result, unit, now);
      const [who, numbers, why] = node.children;
      const number = (side: Side): string => w("team.whyOne", { side: w(`side.${side}`), why: row.cells[side].number || w("wheel.none") });
      const warned = sum.ready?.state === "stop" || sum.ready?.state === "care" ? sum.ready.line : "";
      if (who !== undefined) setText(who, whoWords(sum.rider) || row.name);
      if (numbers !== undefined) setText(numbers, row.shared === "" ? facts(sides.map(number)) : row.shared);
      if (why !== undefined) setText(why, warned);
    });
  }
}

function spareLine(pumped: () => void): HTMLLIElement {
  return el("li", { class: "card" }, el("span", { class: "named" }), el("strong", { class: "morning-number" }), el("span", { class: "small" }),
    el("span", { class: "morning-deed noprint" }, el("span", { class: "small quiet" }), el("button", { type: "button", class: "button", on: { click: pumped } }, w("morning.pumped"))));
}

export function morning(host: HTMLElement, ctx: Ctx): void {
  new Morning(host, ctx);
}
