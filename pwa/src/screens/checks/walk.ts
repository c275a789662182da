// The walk-around: six stations in walking order. What is answered is kept at once, so that it can be broken off and gone
// on with; the last answer gives the outcome.

import "./checks.css";
import { buildOf, historyOf } from "../../book/checks/build.ts";
import { type Ask, type Found, isDone, itemsOf, type Moment, moments, readWalk, type Station, stationOpened, stations, stationSeen, type Walk, withFound } from "../../book/checks/walk.ts";
import { asMeasured } from "../../book/checks/walk_measure.ts";
import { textOf, walkChanges } from "../../book/checks/walk_save.ts";
import { StorageTrouble } from "../../log/db/idb.ts";
import { newRec } from "../../log/book_log.ts";
import type { RecordState } from "../../log/op/merge.ts";
import { isId } from "../../log/op/op.ts";
import { el } from "../../ui/el.ts";
import { keyed } from "../../ui/keyed.ts";
import { openPage } from "../../ui/page.ts";
import { listen, setHidden, setText } from "../../ui/part.ts";
import type { Ctx } from "../../ui/screen.ts";
import { PhotoTrouble, shrunk } from "../../ui/shrink.ts";
import { w } from "../../words/index.ts";
import { attempt } from "../shared/follow.ts";
import { foundAway, foundChanged, foundDone, foundPhoto } from "./found_form.ts";
import { Ending, walkChanged, walkFinished, walkPutAway } from "./ending.ts";
import { askFound, stationAgain, stationOk, StationPart, stationSkip } from "./station.ts";
import { TurnGuide } from "./turn.ts";

export const walkDraft = (bike: string): string => `walk/${bike}`;

export function walk(host: HTMLElement, ctx: Ctx): void {
  const [, bike = "", moment = ""] = ctx.path;
  const of = moments.find((each) => each === moment);
  if (isId(bike) && of !== undefined) void new WalkDesk(host, ctx).open(bike, of);
  else location.replace("#/checks");
}

class WalkDesk {
  readonly #ctx: Ctx;
  readonly #page = el("div", { class: "stack" });
  readonly #waiting = el("p", { class: "notice care" }, w("checks.waiting"));
  readonly #stations = el("div", { class: "stack" });
  readonly #ending = new Ending();
  readonly #parts = new Map<string, RecordState>();
  #walk: Walk | undefined;
  #writing = ""; // the ask whose finding is being written
  #photoFault = "";

  constructor(host: HTMLElement, ctx: Ctx) {
    this.#ctx = ctx;
    openPage(ctx, w("place.checks"), { href: "#/checks", words: w("place.checks") });
    setHidden(this.#waiting, true);
    host.append(this.#page);
    const on = <D>(name: Parameters<typeof listen<D>>[1], hear: (detail: D) => void): void => void listen(host, name, hear, ctx.closed);
    on(stationOk, (station) => this.#seen(station, "ok"));
    on(stationSkip, (station) => this.#seen(station, "skipped"));
    on(stationAgain, (station) => this.#change((walk) => stationOpened(walk, station)));
    on(askFound, (ask) => this.#write(ask));
    on(foundChanged, ({ ask, change }) => this.#found(ask, change));
    on(foundDone, () => this.#write(""));
    on(foundAway, (ask) => {
      this.#writing = "";
      this.#change((walk) => withFound(walk, ask, undefined));
    });
    on(foundPhoto, ({ ask, file }) => void this.#photo(ask, file));
    on(walkFinished, () => void this.#finish());
    on(walkPutAway, () => void this.#putAway());
    on(walkChanged, () => this.#stationPart(stations[0])?.toTitle());
  }

  async open(bike: string, moment: Moment): Promise<void> {
    const { book, drafts } = this.#ctx;
    await book.ready;
    for (const kind of ["bike", "wheel", "tyre"]) for (const state of await book.all(kind)) this.#parts.set(state.rec, state);
    const stored = readWalk(await drafts.load(walkDraft(bike)));
    this.#walk = stored?.moment === moment && stored.asked.length > 0 ? stored : await this.#begin(bike, moment);
    if (this.#ctx.closed.aborted) return;
    this.#ctx.heading(w(`checks.moment.${moment}`));
    this.#page.append(this.#waiting, ...(this.#asksBeads() ? [new TurnGuide()] : []), this.#stations, this.#ending);
    this.#show();
  }

  async #begin(bike: string, moment: Moment): Promise<Walk> {
    const find = (rec: string): RecordState | undefined => this.#parts.get(rec);
    let asked: readonly Ask[] = [];
    try {
      const { answer } = await this.#ctx.calc.ask("checks", { bike: buildOf(find(bike), find), moment, history: await historyOf(this.#ctx.book, bike) });
      asked = answer ?? [];
    } catch {
      // told by the notice
    }
    return { bike, moment, check: newRec(), started: Date.now(), asked, seen: {}, found: {} };
  }

  #asksBeads(): boolean {
    return this.#walk?.asked.some(({ id }) => id.includes("bead")) ?? false;
  }

  #change(change: (walk: Walk) => Walk): void {
    if (this.#walk === undefined) return;
    this.#walk = change(this.#walk);
    void this.#ctx.drafts.save(walkDraft(this.#walk.bike), this.#walk);
    this.#show();
  }

  // seen answers for a station, and goes on to the next that is open.
  #seen(station: Station, state: "ok" | "skipped"): void {
    this.#writing = "";
    this.#change((walk) => stationSeen(walk, station, state));
    const next = stations.find((each) => this.#walk !== undefined && !isDone(this.#walk, each));
    if (next === undefined) this.#ending.toOutcome();
    else this.#stationPart(next)?.toTitle();
  }

  #stationPart(station: Station): StationPart | undefined {
    return [...this.#stations.children].find((part): part is StationPart => part instanceof StationPart && part.view?.station === station);
  }

  #write(ask: string): void {
    this.#photoFault = "";
    this.#writing = this.#writing === ask ? "" : ask;
    if (ask !== "" && this.#walk?.found[ask] === undefined) this.#found(ask, {});
    else this.#show();
  }

  #found(ask: string, change: Partial<Found>): void {
    this.#change((walk) => {
      const before = walk.found[ask] ?? { rec: newRec(), severity: walk.asked.find(({ id }) => id === ask)?.worst, words: "", clock: 0, side: "", mm: "", photos: [] };
      const next = { ...before, ...change };
      return withFound(walk, ask, change.mm === undefined ? next : asMeasured(walk.asked.find(({ id }) => id === ask), next));
    });
  }

  async #photo(ask: string, file: File): Promise<void> {
    try {
      const { blob, width, height } = await shrunk(file);
      const sha256 = await this.#ctx.sync.putPhoto(blob);
      this.#photoFault = "";
      this.#found(ask, { photos: [...(this.#walk?.found[ask]?.photos ?? []), { rec: newRec(), sha256, width, height }] });
    } catch (error) {
      const fault = error instanceof PhotoTrouble ? error.fault : error instanceof StorageTrouble ? error.code : "unreadable";
      this.#photoFault = w(`checks.photoFault.${fault}`);
      this.#show();
    }
  }

  async #finish(): Promise<void> {
    const walk = this.#walk;
    if (walk === undefined) return;
    const bike = this.#parts.get(walk.bike);
    const wheels = { front: textOf(bike, "front"), rear: textOf(bike, "rear") };
    const failed = await attempt(this.#ctx, () => this.#ctx.book.save(walkChanges(walk, wheels, Date.now()), { name: walkDraft(walk.bike), value: null }));
    if (failed === "") location.hash = "#/checks";
    else this.#ending.fail(failed);
  }

  async #putAway(): Promise<void> {
    if (this.#walk === undefined) return;
    await this.#ctx.drafts.save(walkDraft(this.#walk.bike), null);
    location.hash = "#/checks";
  }

  #show(): void {
    const walk = this.#walk;
    if (walk === undefined || this.#ctx.closed.aborted) return;
    setHidden(this.#waiting, walk.asked.length > 0);
    const items = itemsOf(walk);
    const here = stations.filter((station) => walk.asked.some((ask) => ask.station === station));
    keyed(this.#stations, here, (station) => station, () => new StationPart(), (part, station) => {
      const asks = walk.asked.filter((ask) => ask.station === station);
      part.view = {
        station, n: stations.indexOf(station) + 1, done: isDone(walk, station) && !asks.some(({ id }) => id === this.#writing),
        skipped: asks.some(({ id }) => walk.seen[id] === "skipped" && walk.found[id] === undefined),
        asks: asks.map((ask) => ({ ask, found: walk.found[ask.id], form: ask.id === this.#writing ? this.#form(ask, walk) : undefined })),
      };
    });
    setHidden(this.#ending, walk.asked.length === 0);
    this.#ending.view = { walk, items };
    setText(this.#waiting, w("checks.waiting"));
  }

  #form(ask: Ask, walk: Walk): NonNullable<NonNullable<StationPart["view"]>["asks"][number]["form"]> | undefined {
    const found = walk.found[ask.id];
    if (found === undefined) return undefined;
    return { ask: ask.id, title: ask.title, found, wheel: ask.station.endsWith("_wheel"), photoFault: this.#photoFault, picture: (sha256) => this.#ctx.sync.getPhoto(sha256) };
  }
}
