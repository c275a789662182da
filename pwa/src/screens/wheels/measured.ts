// The card of a record's page: what was measured on it, when, and what to measure again.

import { type MeasuredGroup, measuredGroups } from "../../book/wheels/measure_view.ts";
import type { RecordState } from "../../log/op/merge.ts";
import { el } from "../../ui/el.ts";
import { keyed } from "../../ui/keyed.ts";
import { Outcome } from "../../ui/outcome.ts";
import { setHidden } from "../../ui/part.ts";
import type { Ctx } from "../../ui/screen.ts";
import { w } from "../../words/index.ts";
import { follow } from "../shared/follow.ts";
import { takesAway } from "./measure_drop.ts";
import { MeasuredPart } from "./measured_part.ts";

// MeasureBook is what a page about measurements knows of the book.
export interface MeasureBook {
  readonly state: RecordState | undefined;
  readonly entries: readonly RecordState[];
  readonly wheels: readonly RecordState[];
  readonly bikes: readonly RecordState[];
  readonly groups: readonly MeasuredGroup[];
}

// readMeasures reads a record with its measurements.
export async function readMeasures(ctx: Ctx, rec: string): Promise<MeasureBook> {
  const { book, settings } = ctx;
  await book.ready;
  const [state, entries, wheels, bikes, tyres] = await Promise.all([book.get(rec), book.all("measure"), book.all("wheel"), book.all("bike"), book.all("tyre")]);
  const known = new Map([...wheels, ...tyres].map((each) => [each.rec, each]));
  const open = state === undefined || state.deleted || state.erased ? undefined : state;
  const groups = open === undefined ? [] : measuredGroups({ state: open, entries, find: (other) => known.get(other), unit: settings.units, now: Date.now() });
  return { state: open, entries, wheels, bikes, groups };
}

// measuredCard shows what was measured on a record, and keeps itself up to date until the page closes.
export function measuredCard(ctx: Ctx, rec: string): HTMLElement {
  const list = el("div", { class: "measures" });
  const outcome = new Outcome();
  const card = el("section", { class: "card stack", hidden: true }, el("h2", {}, w("measured.title")), outcome, list,
    el("p", {}, el("a", { class: "button quiet flush", href: "#/wheels/guide" }, w("measured.guide"))));
  const look = async (): Promise<void> => {
    const { groups } = await readMeasures(ctx, rec);
    if (ctx.closed.aborted) return;
    setHidden(card, groups.length === 0);
    keyed(list, groups, ({ what }) => what, () => new MeasuredPart(), (part, group) => (part.view = { group, link: true }));
  };
  const again = follow(ctx, look, (words) => {
    setHidden(card, false);
    outcome.view = { words, failed: true };
  });
  takesAway(ctx, list, outcome, rec, again);
  return card;
}
