// What a walk-around comes to: the calculator is asked, of this walk alone for its entry, and of the bike with the walk ended.

import { readyRequest, type ReadyAnswer, type ReadyView, readyView } from "../../book/checks/ready_view.ts";
import { countOf, type Item, itemsOf, type Walk } from "../../book/checks/walk.ts";
import { dayOf } from "../../book/wheels/measure_days.ts";
import type { Ctx } from "../../ui/screen.ts";
import { arrivalsOf } from "../shared/arrivals.ts";
import { readyBook } from "../shared/ready.ts";

// outcomeOf is what this walk alone has shown.
export async function outcomeOf({ calc }: Ctx, walk: Walk): Promise<ReadyAnswer["state"]> {
  const today = dayOf(Date.now());
  const items = itemsOf(walk);
  const found = items.flatMap(({ id, severity }) => (severity === undefined ? [] : [{ kind: "finding", id, severity, day: today, thing: walk.bike } as const]));
  try {
    const { answer } = await calc.ask("ready", { bike: { id: walk.bike }, today, events: [...found, ended(walk, items, today)] });
    return answer?.state ?? "care";
  } catch {
    return "care"; // the safe side
  }
}

// endingOf is the bike's state as it will be once the walk is ended.
export async function endingOf(ctx: Ctx, walk: Walk, items: readonly Item[], more: number): Promise<ReadyView | undefined> {
  const book = await readyBook(ctx);
  const bike = book.find(walk.bike);
  if (bike === undefined) return undefined;
  const today = dayOf(Date.now());
  const request = readyRequest(bike, book.find, book.events, today);
  const events = [...(request.events ?? []), ...(await arrivalsOf(ctx, bike, book)), ended(walk, items, today)];
  try {
    const { answer } = await ctx.calc.ask("ready", { ...request, events });
    return answer === undefined ? undefined : readyView(answer, walk.bike, book.find, Date.now(), more);
  } catch {
    return undefined;
  }
}

function ended({ bike, moment }: Walk, items: readonly Item[], day: string): { readonly kind: "walk"; readonly bike: string; readonly moment: Walk["moment"]; readonly day: string; readonly at: number; readonly asked: number; readonly looked: number; readonly ended: true } {
  return { kind: "walk", bike, moment, day, at: Date.now(), ...countOf(items), ended: true };
}
