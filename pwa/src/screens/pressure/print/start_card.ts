// The start card: the open bike's pressures for the pocket or the top tube, ready to be printed and cut out.

import "./start_card.css";
import type { PressureAnswer } from "../../../book/pressure/answer.ts";
import { cardView, type CardView, type CardWheel, otherQuestion, others } from "../../../book/pressure/card_view.ts";
import { read, type RequestBody } from "../../../book/pressure/request.ts";
import { type TeamBike, teamBikes } from "../../../book/pressure/team_view.ts";
import { whenWords } from "../../../book/value/when.ts";
import { el } from "../../../ui/el.ts";
import type { Ctx } from "../../../ui/screen.ts";
import { w } from "../../../words/index.ts";
import type { ReadyView } from "../../../book/checks/ready_view.ts";
import { readyOfAll } from "../../shared/ready.ts";
import { asker, type Paper, paperOf, printButton } from "../../shared/paper.ts";
import { follow, nothingYet, openPrint } from "./print.ts";

export class Card {
  readonly #ctx: Ctx;
  readonly #host: HTMLElement;
  readonly #print = printButton();
  #round = 0;

  constructor(host: HTMLElement, ctx: Ctx) {
    this.#ctx = ctx;
    this.#host = host;
    openPrint(ctx, w("print.card"));
    follow(ctx, () => this.#again());
    this.#again();
  }

  #again(): void {
    void this.#look().catch((error: unknown) => this.#ctx.trouble(error));
  }

  async #look(): Promise<void> {
    const round = ++this.#round;
    const unit = this.#ctx.settings.units;
    const overtaken = (): boolean => round !== this.#round || this.#ctx.closed.aborted;
    const paper = await paperOf(this.#ctx);
    if (overtaken()) return;
    if (!paper.today.started) return this.#host.replaceChildren(nothingYet());
    const bike = openBike(paper, unit);
    const result = bike.reading.body === undefined ? undefined : await asker(this.#ctx, paper.book.notes)(bike).catch(() => ({ refused: w("wheel.oldCalc") }));
    if (overtaken()) return;
    const ready = (await readyOfAll(this.#ctx, bike.rec === "" ? [] : [bike.rec])).get(bike.rec);
    if (overtaken()) return;
    const kept = result !== undefined && "kept" in result ? result.kept : undefined;
    const broken = result !== undefined && "refused" in result ? result.refused : "";
    const show = (answers: readonly (PressureAnswer | undefined)[], done: boolean): void => this.#show(cardView(bike, kept, answers, broken, unit, Date.now()), ready, done);
    show([], kept === undefined);
    if (kept === undefined || bike.reading.body === undefined) return;
    const answers = await this.#askOthers(kept.question);
    if (!overtaken()) show(answers, true);
  }

  async #askOthers(body: RequestBody): Promise<readonly (PressureAnswer | undefined)[]> {
    const answers: (PressureAnswer | undefined)[] = [];
    for (const other of others) {
      answers.push(await this.#ask(otherQuestion(body, other))); // beyond the calculator's bounds there is no row
    }
    return answers;
  }

  async #ask(body: RequestBody): Promise<PressureAnswer | undefined> {
    return this.#ctx.calc.ask("pressure", body).then(({ answer }) => answer, () => undefined);
  }

  #show(view: CardView, ready: ReadyView | undefined, done: boolean): void {
    this.#print.disabled = !done;
    this.#host.replaceChildren(el("div", { class: "stack" }, el("div", { class: "row noprint" }, this.#print), cardNode(view, ready)));
  }
}

// openBike is the bike on the Pressure screen; it need not be in the book yet.
function openBike({ book, today, tables }: Paper, unit: Ctx["settings"]["units"]): TeamBike {
  const known = teamBikes(book, today, unit, tables).find(({ rec }) => rec === today.links["bike"]);
  return known ?? { rec: "", name: today.bike || w("head.bike"), rider: "", draft: today, reading: read(today, unit, tables) };
}

function cardNode(view: CardView, ready: ReadyView | undefined): HTMLElement {
  const now = Date.now();
  const small = (words: string): HTMLElement | undefined => (words === "" ? undefined : el("p", { class: "small" }, words));
  return el("article", { class: "start-card" },
    el("header", {}, el("h2", {}, view.name), small(view.rider), ready === undefined ? undefined : el("p", { class: `ready ${ready.state}` }, el("strong", {}, ready.line))),
    el("div", { class: "both" }, ...view.wheels.map(wheelNode)),
    el("div", {}, el("p", {}, view.weather), small(view.ground), small(view.age)),
    view.notices.length === 0 ? undefined : el("ul", {}, ...view.notices.map((words) => el("li", { class: "small" }, words))),
    view.rows.length === 0 ? undefined : otherTable(view),
    el("footer", { class: "small" }, el("p", {}, w("card.caution")), el("p", {}, w("print.made", { when: whenWords(now, now) }))));
}

function wheelNode({ title, number, unit, why, atStart, limits }: CardWheel): HTMLElement {
  if (number === "") return el("section", {}, el("h3", {}, title), el("p", { class: "none" }, w("wheel.none")), el("p", { class: "small" }, why));
  return el("section", {}, el("h3", {}, title),
    el("p", {}, el("span", { class: "number" }, number), " ", el("span", {}, unit, " ", w("wheel.gauge"))),
    atStart === "" ? undefined : el("p", { class: "small" }, atStart),
    limits === "" ? undefined : el("p", { class: "small" }, limits));
}

function otherTable({ rows }: CardView): HTMLElement {
  const cell = ({ number, act }: CardView["rows"][number]["cells"]["front"]): HTMLElement => el("td", {}, el("strong", {}, number), " ", act);
  return el("table", {}, el("caption", {}, w("card.else")),
    el("thead", {}, el("tr", {}, ...[w("card.start"), w("side.front"), w("side.rear")].map((words) => el("th", { scope: "col" }, words)))),
    el("tbody", {}, ...rows.map(({ start, cells }) => el("tr", {}, el("th", { scope: "row" }, start), cell(cells.front), cell(cells.rear)))));
}
