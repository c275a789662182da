// What the pages to print share: the ways there and back, the button, and what they are made from.

import "./print.css";
import { type PressureDraft, readDraft } from "../../../book/pressure/draft.ts";
import { partKinds } from "../../../book/pressure/opened.ts";
import { restated } from "../../../book/pressure/restate.ts";
import { tables, type Tables } from "../../../book/pressure/tables.ts";
import { type Result, resultOf, type TeamBike, type TeamBook } from "../../../book/pressure/team_view.ts";
import { learnedQuestion, shifted } from "../../../book/pressure/learned.ts";
import type { RecordState } from "../../../log/op/merge.ts";
import { el } from "../../../ui/el.ts";
import type { Ctx } from "../../../ui/screen.ts";
import { w } from "../../../words/index.ts";

// asker asks for a bike's pressures, with what its rider's notes speak for.
export function asker({ calc }: Pick<Ctx, "calc">, notes: Paper["book"]["notes"]): (bike: Pick<TeamBike, "draft" | "reading">) => Promise<Result> {
  return async ({ draft, reading }) => {
    const { body } = reading;
    if (body === undefined) return { refused: w("wheel.cannot") };
    const question = draft.plain ? undefined : learnedQuestion(notes, draft.links["bike"], body);
    const learned = question === undefined ? undefined : (await calc.ask("shift", question)).answer;
    const asked = shifted(reading, learned).body ?? body;
    return resultOf(asked, await calc.ask("pressure", asked));
  };
}

// printWays leads from the Pressure screen to what can be printed.
export function printWays(): HTMLElement {
  return el("div", { class: "stack print-ways" },
    el("h3", {}, w("print.title")), el("p", { class: "small quiet" }, w("print.hint")),
    el("div", { class: "row" },
      el("a", { class: "button", href: "#/pressure/card" }, w("print.card")),
      el("a", { class: "button", href: "#/pressure/team" }, w("print.team"))));
}

// openPrint sets the heading and the way back.
export function openPrint(ctx: Ctx, title: string): void {
  ctx.heading(title);
  ctx.head.append(el("nav", { class: "print-back", "aria-label": w("print.back") },
    el("a", { class: "button quiet", href: "#/pressure" }, el("span", { "aria-hidden": "true" }, "‹"), w("place.pressure"))));
}

export function printButton(): HTMLButtonElement {
  return el("button", { type: "button", class: "button primary", on: { click: () => print() } }, w("print.button"));
}

export function nothingYet(): HTMLElement {
  return el("div", { class: "card stack" }, el("p", {}, w("print.none")), el("p", {}, el("a", { class: "button", href: "#/pressure" }, w("print.go"))));
}

export interface Paper {
  readonly book: TeamBook;
  readonly today: PressureDraft; // as it is open on the Pressure screen, at Home: paper is made before the way to the start
  readonly tables: Tables;
}

// paperOf reads what is printed from: the records, and the draft for today's ground and weather.
export async function paperOf({ book, drafts, settings }: Ctx): Promise<Paper> {
  await book.ready;
  const [bikes, notes, trials, parts, stored] = await Promise.all([
    book.all("bike"), book.all("note"), book.all("trial"), Promise.all(partKinds.map((kind) => book.all(kind))), drafts.load("pressure"),
  ]);
  const known = new Map<string, RecordState>(parts.flat().map((state) => [state.rec, state]));
  const who = { me: book.me, device: book.device };
  return { book: { bikes, find: (rec) => known.get(rec), notes: [...notes, ...trials], who }, today: { ...restated(readDraft(stored), settings.units), here: "set" }, tables };
}

const rest = 250; // ms between two looks while much arrives at once

// follow calls again when the book or a setting changes, until the screen closes.
export function follow(ctx: Ctx, again: () => void): void {
  let timer: ReturnType<typeof setTimeout> | undefined;
  const soon = (): void => {
    clearTimeout(timer);
    timer = setTimeout(again, rest);
  };
  ctx.closed.addEventListener("abort", ctx.book.on(soon));
  ctx.closed.addEventListener("abort", ctx.drafts.follow("pressure", soon));
  ctx.closed.addEventListener("abort", () => clearTimeout(timer));
  ctx.onSettings(soon);
}
