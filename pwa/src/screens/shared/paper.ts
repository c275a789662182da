// What printed pages are made from, wherever they stand: the records, today's ground and weather, and each bike's pressures.

import "./print.css";
import { type PressureDraft, readDraft } from "../../book/pressure/draft.ts";
import { learnedQuestion, shifted } from "../../book/pressure/learned.ts";
import { partKinds } from "../../book/pressure/opened.ts";
import { restated } from "../../book/pressure/restate.ts";
import { tables, type Tables } from "../../book/pressure/tables.ts";
import { type Result, resultOf, type TeamBike, type TeamBook } from "../../book/pressure/team_view.ts";
import type { RecordState } from "../../log/op/merge.ts";
import { el } from "../../ui/el.ts";
import type { Ctx } from "../../ui/screen.ts";
import { w } from "../../words/index.ts";

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

export function printButton(): HTMLButtonElement {
  return el("button", { type: "button", class: "button primary", on: { click: () => print() } }, w("print.button"));
}
