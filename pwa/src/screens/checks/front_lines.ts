// What the front page of Checks says of what is due and of sweat, each in a line; "" where no sums run.

import { buildOf } from "../../book/checks/build.ts";
import { dueNow, dueSummary, dueView, intervalsOf } from "../../book/checks/due_view.ts";
import { historyOf } from "../../book/checks/past.ts";
import { trainersIn } from "../../book/checks/indoors.ts";
import { saltLog } from "../../book/checks/salt_view.ts";
import { textOf } from "../../book/checks/walk_save.ts";
import { dayOf } from "../../book/wheels/measure_days.ts";
import { dayWords } from "../../book/value/when.ts";
import type { Answers } from "../../contract/contract.ts";
import { type RecordState, valueOf } from "../../log/op/merge.ts";
import type { Ctx } from "../../ui/screen.ts";
import { w } from "../../words/index.ts";
import { fixed } from "../../words/number.ts";
import { askSalt } from "./salt_asks.ts";

// askDue asks what is due on a bike, with the intervals that were chosen.
export async function askDue({ book, calc }: Ctx, bike: RecordState): Promise<Answers["due"] | undefined> {
  const lists = await Promise.all(["bike", "wheel", "tyre", "setting"].map((kind) => book.all(kind)));
  const states = new Map(lists.flat().map((state) => [state.rec, state]));
  const { intervals } = intervalsOf(valueOf([...states.values()].find((each) => each.kind === "setting" && textOf(each, "name") === "intervals"), "value"));
  try {
    const { answer } = await calc.ask("due", { bike: buildOf(bike, (rec) => states.get(rec), trainersIn(lists[0] ?? [], lists[1] ?? [])), history: await historyOf(book, bike.rec), today: dayOf(Date.now()), ...(Object.keys(intervals).length > 0 && { intervals }) });
    return answer;
  } catch {
    return undefined;
  }
}

export async function dueLine(ctx: Ctx, bike: RecordState): Promise<{ readonly title: string; readonly line: string }> {
  const answer = await askDue(ctx, bike);
  if (answer === undefined) return { title: w("due.heading"), line: "" };
  const view = dueView(answer);
  return { title: w("due.count", { n: dueNow(view).length }), line: dueSummary(view) };
}

// sweatLine: the grams of the wheel that is to be washed first, and when.
export async function sweatLine(ctx: Ctx, bike: RecordState): Promise<string> {
  const { book } = ctx;
  const [rides, washes] = await Promise.all([book.all("ride"), book.all("wash")]);
  const log = saltLog([...rides, ...washes], bike.rec);
  if (log.length === 0) return "";
  const { answers: [first] } = await askSalt(ctx, bike, log);
  if (first === undefined) return "";
  return w("checks.sweatLine", { g: fixed(first.since_wash_g, 1), why: first.wash_due === "" ? w("salt.notDue") : w("salt.due", { day: dayWords(first.wash_due, Date.now()) }) });
}
