// What was looked at, found and done on a bike or a wheel, the newest first.

import "./checks.css";
import { bikeName } from "../../book/pressure/bikes.ts";
import { pastOf, severityOf, textOf } from "../../book/checks/walk_save.ts";
import { swapsOf } from "../../book/checks/swaps.ts";
import { dayOf } from "../../book/wheels/measure_days.ts";
import { dayWords } from "../../book/value/when.ts";
import { type RecordState, valueOf } from "../../log/op/merge.ts";
import { el } from "../../ui/el.ts";
import { keyed } from "../../ui/keyed.ts";
import { openPage } from "../../ui/page.ts";
import { setHidden, setText } from "../../ui/part.ts";
import type { Ctx } from "../../ui/screen.ts";
import { showWay, way } from "../../ui/way.ts";
import { facts, w } from "../../words/index.ts";
import { follow } from "../shared/follow.ts";
import { badWords } from "./bad.ts";

const atFirst = 60; // lines
const atOnce = 200;

export function history(host: HTMLElement, ctx: Ctx): void {
  const [, bike = ""] = ctx.path;
  openPage(ctx, w("checks.history"), { href: "#/checks", words: w("place.checks") });
  const none = el("p", {}, w("checks.historyNone"));
  const list = el("ol", { class: "unmarked ways" });
  const more = el("button", { type: "button", class: "button quiet flush" });
  const page = el("div", { class: "stack looking" }, el("section", { class: "card" }, none, list, more));
  let most = atFirst;
  host.append(page);
  const look = follow(ctx, async () => {
    await ctx.book.ready;
    const [checks, findings, closed, of] = await Promise.all([ctx.book.all("check"), ctx.book.all("finding"), ctx.book.all("finding_closed"), ctx.book.get(bike)]);
    if (ctx.closed.aborted) return;
    page.classList.remove("looking");
    ctx.heading(`${w("checks.history")} · ${bikeName(of) || (of?.kind === "wheel" ? w("recKind.wheel") : w("head.bike"))}`);
    const lines = [...pastOf(checks, findings, closed, bike).map(lineOf), ...(await swapLines(ctx, bike))].sort((a, b) => b.at - a.at);
    if (ctx.closed.aborted) return;
    setHidden(none, lines.length > 0);
    setHidden(more, lines.length <= most);
    setText(more, w("things.more", { n: lines.length - most }));
    keyed(list, lines.slice(0, most), ({ key }) => key, () => way(), (node, { href, words, day }) => showWay(node, href, words, dayWords(day, Date.now())));
  }, (words) => setText(none, words));
  more.addEventListener("click", () => {
    most += atOnce;
    void look();
  });
}

interface Line {
  readonly key: string;
  readonly at: number;
  readonly day: string;
  readonly href: string;
  readonly words: string;
}

function lineOf(entry: RecordState): Line {
  const [href, words] = told(entry);
  return { key: entry.rec, at: entry.newest, day: textOf(entry, "day") || dayOf(entry.newest), href, words };
}

// swapLines tell which wheels went into a bike and came out of it; of a wheel, on which bikes it has been.
async function swapLines({ book }: Ctx, rec: string): Promise<readonly Line[]> {
  const [bikes, wheels] = await Promise.all([book.all("bike"), book.all("wheel")]);
  const asked = bikes.some((bike) => bike.rec === rec) ? bikes.filter((bike) => bike.rec === rec) : bikes;
  const all = await Promise.all(asked.map(async (bike) => swapsOf(bike.rec, await book.history(bike.rec))));
  const nameOf = (of: string): string => textOf(wheels.find((each) => each.rec === of), "name") || w("checks.aWheel");
  return all.flat().filter(({ bike, wheel }) => bike === rec || wheel === rec).map(({ key, at, bike, side, wheel, into }): Line => {
    const end = facts([bikeName(bikes.find((each) => each.rec === bike)) || w("head.bike"), w(`ready.end.${side}`)]);
    return { key, at, day: dayOf(at), href: `#/wheels/${wheel}`, words: w(into ? "checks.swapIn" : "checks.swapOut", { wheel: nameOf(wheel), end }) };
  });
}

// told gives a line its words and where it leads.
function told(entry: RecordState): readonly [href: string, words: string] {
  if (entry.kind === "finding") return [`#/checks/finding/${entry.rec}`, `${textOf(entry, "words")} · ${badWords(severityOf(entry))}`];
  if (entry.kind === "finding_closed") return [`#/checks/finding/${textOf(entry, "finding")}`, `${w("recKind.finding_closed")}: ${textOf(entry, "done")}`];
  const [moment, outcome] = [valueOf(entry, "moment"), valueOf(entry, "outcome")];
  const words = [typeof moment === "string" ? w(`checks.moment.${moment}` as "checks.moment.start") : "", typeof outcome === "string" ? w(`checks.outcome.${outcome}` as "checks.outcome.do_not_ride") : ""];
  return [`#/settings/history/${entry.rec}`, words.filter((each) => each !== undefined && each !== "").join(": ")];
}
