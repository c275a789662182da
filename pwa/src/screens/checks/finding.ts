// One finding: what it was, where, its photos beside those of the same thing on other days, and closing it.

import "./checks.css";
import type { Picture } from "../../book/checks/walk.ts";
import { dayOf } from "../../book/wheels/measure_days.ts";
import { alike, photosOf, severityOf, stationOf, textOf } from "../../book/checks/walk_save.ts";
import { dayWords } from "../../book/value/when.ts";
import { newRec } from "../../log/book_log.ts";
import { type RecordState, valueOf } from "../../log/op/merge.ts";
import { el } from "../../ui/el.ts";
import { LongEntry } from "../../ui/entry.ts";
import { typed } from "../../ui/field.ts";
import { keyed } from "../../ui/keyed.ts";
import { openPage } from "../../ui/page.ts";
import { listen, setHidden, setText } from "../../ui/part.ts";
import type { Ctx } from "../../ui/screen.ts";
import { w } from "../../words/index.ts";
import { attempt, follow } from "../shared/follow.ts";
import { badWords } from "./bad.ts";
import { Photos } from "./photos.ts";

export function finding(host: HTMLElement, ctx: Ctx): void {
  const [, rec = ""] = ctx.path;
  openPage(ctx, w("recKind.finding"), { href: "#/checks", words: w("place.checks") });
  const what = el("p", {}, el("strong"));
  const where = el("p", { class: "quiet" });
  const state = el("p");
  const flat = el("a", { class: "button", hidden: true }, w("fit.afterFlat"));
  const days = el("div", { class: "stack" });
  const done = new LongEntry();
  const failed = el("p", { class: "fault", role: "alert" });
  const form = el("form", { class: "card stack" }, done, failed, el("p", {}, el("button", { type: "submit", class: "button primary" }, w("checks.closeIt"))));
  let text = "";
  const show = (fault = ""): void => {
    done.view = { id: "done", label: w("checks.close"), text, fault };
  };
  show();
  listen(host, typed, (change) => {
    text = change.text;
    void ctx.drafts.save(`close/${rec}`, text);
    show();
  }, ctx.closed);
  void ctx.drafts.load(`close/${rec}`).then((stored) => {
    if (typeof stored === "string" && text === "") text = stored;
    show();
  });
  const page = el("div", { class: "stack looking" });
  page.append(el("section", { class: "card stack" }, what, where, state, el("p", {}, flat)), el("section", { class: "card stack" }, el("h2", {}, w("checks.compare")), days), form);
  host.append(page);

  const look = follow(ctx, async () => {
    await ctx.book.ready;
    const [found, findings, closed, photos] = await Promise.all([ctx.book.get(rec), ctx.book.all("finding"), ctx.book.all("finding_closed"), ctx.book.all("photo")]);
    if (ctx.closed.aborted || found === undefined) return;
    page.classList.remove("looking");
    const ending = closed.find((entry) => valueOf(entry, "finding") === rec);
    setText(what.firstElementChild ?? what, textOf(found, "words"));
    setText(where, factsOf(found));
    setText(state, ending === undefined ? badWords(severityOf(found)) : w("checks.isClosed", { when: dayWords(textOf(ending, "day"), Date.now()), done: textOf(ending, "done") }));
    setHidden(form, ending !== undefined);
    const wheel = ending === undefined ? await tyresWheel(ctx, found) : "";
    if (ctx.closed.aborted) return;
    flat.href = `#/wheels/fit/${wheel}`;
    setHidden(flat, wheel === "");
    const known = new Map(photos.map((photo) => [photo.rec, photo]));
    keyed(days, alike(findings, found), (each) => each.rec, () => new Day(), (day, each) => day.show(each, each.rec === rec, pictures(each, known), ctx));
  }, (words) => setText(failed, words));

  form.addEventListener("submit", (event) => {
    event.preventDefault();
    void close();
  });
  const close = async (): Promise<void> => {
    if (text.trim() === "") return show(w("checks.closeEmpty"));
    const found = await ctx.book.get(rec);
    const trouble = await attempt(ctx, () => ctx.book.save([{ rec: newRec(), kind: "finding_closed", set: { finding: rec, bike: textOf(found, "bike"), day: dayOf(Date.now()), done: text.trim() } }]));
    setText(failed, trouble);
    if (trouble === "") void ctx.drafts.save(`close/${rec}`, "");
    await look();
  };
}

const ofTyre = ["tyre", "pressure", "cuts", "hidden", "casing", "bead_rim", "bead_line", "valve", "valve_leans", "sealant", "insert"];

// tyresWheel is the wheel whose tyre a finding is about; "" where it is about something else, or nobody knows the wheel.
async function tyresWheel({ book }: Ctx, found: RecordState): Promise<string> {
  const item = textOf(found, "item");
  if (!ofTyre.includes(item.slice(item.indexOf(".") + 1))) return "";
  const thing = textOf(found, "thing");
  return (await book.all("wheel")).find((wheel) => wheel.rec === thing || (thing !== "" && textOf(wheel, "tyre") === thing))?.rec ?? "";
}

// factsOf: "Front wheel · 4 o'clock, left · 1.2 mm".
function factsOf(found: RecordState): string {
  const [clock, mm, side] = [valueOf(found, "clock"), valueOf(found, "mm"), textOf(found, "side")];
  const station = stationOf(found);
  return [
    station === ("" as never) ? "" : w(`checks.station.${station}`),
    typeof clock === "number" ? w("checks.clockAt", { n: clock }) : "",
    side === "left" || side === "right" ? w(`checks.sideOf.${side}`) : "",
    typeof mm === "number" ? w("recValue.with", { n: mm, unit: w("unit.mm") }) : "",
    dayWords(textOf(found, "day"), Date.now()),
  ].filter((words) => words !== "").join(" · ");
}

function pictures(found: RecordState, known: ReadonlyMap<string, RecordState>): readonly Picture[] {
  return photosOf(found).flatMap((rec): Picture[] => {
    const photo = known.get(rec);
    const [sha256, width, height] = [valueOf(photo, "sha256"), valueOf(photo, "width"), valueOf(photo, "height")];
    return typeof sha256 === "string" ? [{ rec, sha256, width: Number(width ?? 1), height: Number(height ?? 1) }] : [];
  });
}

class Day extends HTMLElement {
  readonly #title = el("h3");
  readonly #photos = new Photos();
  readonly #none = el("p", { class: "small quiet" }, w("checks.noPhotos"));

  show(found: RecordState, here: boolean, photos: readonly Picture[], ctx: Ctx): void {
    if (!this.contains(this.#title)) this.append(this.#title, this.#photos, this.#none);
    setText(this.#title, `${dayWords(textOf(found, "day"), Date.now())} · ${badWords(severityOf(found))}${here ? "" : ` · ${textOf(found, "words")}`}`);
    this.#photos.view = { photos, picture: (sha256) => ctx.sync.getPhoto(sha256), away: false };
    setHidden(this.#none, photos.length > 0);
  }
}

customElements.define("rs-finding-day", Day);
