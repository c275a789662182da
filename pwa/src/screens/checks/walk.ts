// The walk-around, one station after the other. What is answered is kept at once, so that it can be broken off and gone on with;
// after the last station it says whether the bike may be ridden.

import "./checks.css";
import { buildOf } from "../../book/checks/build.ts";
import { trainersIn } from "../../book/checks/indoors.ts";
import { historyOf } from "../../book/checks/past.ts";
import type { ReadyView } from "../../book/checks/ready_view.ts";
import { renewed, askedNow, type Ask, type Found, isDone, itemsOf, type Moment, moments, readWalk, restOpened, rowSkipped, type Station, stationOpened, stationSeen, stationsOf, type Walk, walkDraft, withFound, withValue } from "../../book/checks/walk.ts";
import { millimetres, outcomes } from "../../book/checks/walk_save.ts";
import { StorageTrouble } from "../../log/db/idb.ts";
import { newRec } from "../../log/book_log.ts";
import { isId } from "../../log/op/op.ts";
import { el } from "../../ui/el.ts";
import { typed } from "../../ui/field.ts";
import { Outcome } from "../../ui/outcome.ts";
import { openPage } from "../../ui/page.ts";
import { listen, setHidden, setText } from "../../ui/part.ts";
import type { Ctx } from "../../ui/screen.ts";
import { PhotoTrouble, shrunk } from "../../ui/shrink.ts";
import { w } from "../../words/index.ts";
import { adoptWalk } from "../shared/ready.ts";
import { askFound, askSkipped } from "./ask.ts";
import { discarding } from "./discard.ts";
import { Ending, walkChanged, walkFinished } from "./ending.ts";
import { foundAway, foundChanged, foundDone, foundPhoto } from "./found_form.ts";
import { stationBack, stationOk, StationPart, stationRest, stationSkip } from "./station.ts";
import { TurnGuide } from "./turn.ts";
import { stationView } from "./walk_view.ts";
import { endingOf, outcomeOf } from "./walk_end.ts";
import { WalkKeeper } from "./walk_keeper.ts";

export function walk(host: HTMLElement, ctx: Ctx): void {
  const [, bike = "", moment = ""] = ctx.path;
  const of = moments.find((each) => each === moment);
  if (isId(bike) && of !== undefined) void new WalkDesk(host, ctx).open(bike, of);
  else location.replace("#/checks");
}

class WalkDesk {
  readonly #ctx: Ctx;
  readonly #keeper: WalkKeeper;
  readonly #page = el("div", { class: "stack" });
  readonly #waiting = el("p", { class: "notice care" }, w("checks.waiting"));
  readonly #said = new Outcome();
  readonly #station = new StationPart();
  readonly #ending = new Ending();
  readonly #discard: HTMLElement;
  #walk: Walk | undefined;
  #at: Station | undefined; // the station on the screen; undefined at the end
  #writing = ""; // the ask whose finding is being written
  #photoFault = "";
  #turn = 0; // counts what is asked about the end

  constructor(host: HTMLElement, ctx: Ctx) {
    this.#ctx = ctx;
    this.#keeper = new WalkKeeper(ctx, (words) => (this.#said.view = { words, failed: true }));
    this.#discard = discarding(ctx, () => this.#walk, this.#keeper);
    openPage(ctx, w("place.checks"), { href: "#/checks", words: w("place.checks") });
    setHidden(this.#waiting, true);
    host.append(this.#page);
    const on = <D>(name: Parameters<typeof listen<D>>[1], hear: (detail: D) => void): void => void listen(host, name, hear, ctx.closed);
    on(stationOk, (station) => this.#seen(station, "ok"));
    on(stationSkip, (station) => this.#seen(station, "skipped"));
    on(stationBack, (station) => this.#to(this.#before(station)));
    on(stationRest, (station) => this.#change((walk) => restOpened(walk, station)));
    on(askFound, (ask) => this.#write(ask));
    on(askSkipped, (ask) => this.#change((walk) => rowSkipped(walk, ask)));
    on(typed, ({ id, text }) => void this.#value(id, text));
    on(foundChanged, ({ ask, change }) => this.#found(ask, change));
    on(foundDone, () => this.#write(""));
    on(foundAway, (ask) => void this.#away(ask));
    on(foundPhoto, ({ ask, file }) => void this.#photo(ask, file));
    on(walkFinished, () => void this.#finish());
    on(walkChanged, () => this.#walk && this.#to(stationsOf(this.#walk)[0]));
  }

  async open(bike: string, moment: Moment): Promise<void> {
    await adoptWalk(this.#ctx, bike);
    await this.#keeper.load();
    const stored = readWalk(await this.#ctx.drafts.load(walkDraft(bike, moment)));
    const asked = await this.#asked(bike, moment);
    const going = stored !== undefined && stored.asked.length > 0;
    this.#walk = going ? renewed(stored, asked) : { bike, moment, check: newRec(), started: Date.now(), asked, seen: {}, found: {}, values: {}, opened: [] };
    if (this.#ctx.closed.aborted) return;
    if (going) this.#keeper.missing(this.#walk);
    if (moment === "crash" || moment === "arrival") this.#begin(this.#walk); // saying so tells of the crash or the journey
    this.#ctx.heading(w(`checks.moment.${moment}`));
    this.#page.append(this.#waiting, this.#said, ...(this.#asksBeads() ? [new TurnGuide()] : []), this.#station, this.#ending, this.#discard);
    this.#at = this.#nextOpen();
    this.#show();
  }

  async #asked(bike: string, moment: Moment): Promise<readonly Ask[]> {
    const { find } = this.#keeper;
    const { book } = this.#ctx;
    try {
      const trainers = trainersIn(await book.all("bike"), await book.all("wheel"));
      const { answer } = await this.#ctx.calc.ask("checks", { bike: buildOf(find(bike), find, trainers), moment, history: await historyOf(book, bike) });
      return answer ?? [];
    } catch {
      return []; // told by the notice
    }
  }

  #begin(walk: Walk): void {
    if (walk.asked.length === 0) return;
    this.#keeper.draft(walk);
    this.#keeper.begin(walk);
  }

  #asksBeads(): boolean {
    return this.#walk?.asked.some(({ id }) => id.includes("bead")) ?? false;
  }

  #change(change: (walk: Walk) => Walk): void {
    if (this.#walk === undefined) return;
    this.#walk = change(this.#walk);
    this.#begin(this.#walk);
    this.#show();
  }

  #nextOpen(): Station | undefined {
    const { at, walk } = { at: this.#at, walk: this.#walk };
    if (walk === undefined) return undefined;
    const all = stationsOf(walk);
    const after = at === undefined ? all : all.slice(all.indexOf(at) + 1);
    return [...after, ...all].find((station) => !isDone(walk, station));
  }

  #before(station: Station): Station | undefined {
    const all = this.#walk === undefined ? [] : stationsOf(this.#walk);
    return all[all.indexOf(station) - 1];
  }

  // seen answers for a station, and goes on to the next that is open.
  #seen(station: Station, state: "ok" | "skipped"): void {
    this.#writing = "";
    void this.#keeper.flush();
    this.#change((walk) => stationSeen(walk, station, state));
    this.#to(this.#nextOpen());
  }

  #to(station: Station | undefined): void {
    this.#at = station;
    if (station !== undefined && this.#walk !== undefined && isDone(this.#walk, station)) this.#change((walk) => stationOpened(walk, station));
    else this.#show();
    if (station === undefined) this.#ending.toOutcome();
    else this.#station.toTitle();
  }

  #write(ask: string): void {
    this.#photoFault = "";
    this.#writing = this.#writing === ask ? "" : ask;
    if (ask !== "" && this.#walk?.found[ask] === undefined) this.#found(ask, {});
    else {
      if (ask === "") void this.#keeper.flush();
      this.#show();
    }
  }

  #found(ask: string, change: Partial<Found>): void {
    this.#change((walk) => {
      const before = walk.found[ask] ?? { rec: newRec(), severity: walk.asked.find(({ id }) => id === ask)?.worst, words: "", clock: 0, side: "", mm: "", photos: [] };
      return withFound(walk, ask, { ...before, ...change });
    });
    if (this.#walk !== undefined) this.#keeper.finding(this.#walk, ask);
  }

  async #away(ask: string): Promise<void> {
    const found = this.#walk?.found[ask];
    this.#writing = "";
    this.#change((walk) => withFound(walk, ask, undefined));
    if (found === undefined) return;
    const gone = await this.#keeper.away(found.rec, ...found.photos.map(({ rec }) => rec));
    const undo = async (): Promise<void> => {
      for (const state of gone) {
        const now = await this.#ctx.book.get(state.rec);
        if (now !== undefined) await this.#ctx.book.restore(now);
      }
      await this.#keeper.load();
      this.#change((walk) => withFound(walk, ask, found));
    };
    this.#said.view = { words: w("checks.takenAway"), undo: () => void undo() };
  }

  // value takes what is typed at a row, and says at once what it means.
  async #value(field: string, text: string): Promise<void> {
    const ask = this.#walk?.asked.find(({ id }) => field === `${id}.value`);
    const walk = this.#walk;
    if (ask === undefined || walk === undefined) return;
    const rec = walk.values[ask.id]?.rec ?? newRec();
    if (text.trim() === "") {
      this.#change((before) => withValue(before, ask.id, undefined));
      return void this.#keeper.away(rec);
    }
    this.#change((before) => withValue(before, ask.id, { rec, text, verdict: "" }));
    const verdict = await this.#keeper.judge(walk, ask, text);
    if (this.#walk?.values[ask.id]?.text !== text || millimetres(text) === undefined) return;
    this.#change((before) => withValue(before, ask.id, { rec, text, verdict }));
    this.#keeper.value(this.#walk, ask);
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
    await this.#keeper.flush();
    const failed = await this.#keeper.end(walk, outcomes[await outcomeOf(this.#ctx, walk)]);
    if (failed === "") location.hash = "#/checks";
    else this.#ending.fail(failed);
  }

  #show(): void {
    const walk = this.#walk;
    if (walk === undefined || this.#ctx.closed.aborted) return;
    const at = this.#at;
    setHidden(this.#waiting, walk.asked.length > 0);
    setText(this.#waiting, w("checks.waiting"));
    setHidden(this.#station, at === undefined || walk.asked.length === 0);
    setHidden(this.#ending, at !== undefined || walk.asked.length === 0);
    const empty = Object.keys(walk.seen).length + Object.keys(walk.found).length + Object.keys(walk.values).length === 0;
    setHidden(this.#discard, empty && this.#keeper.find(walk.check) === undefined);
    if (at !== undefined) {
      const { parts, find } = { parts: this.#keeper.parts(walk.bike), find: this.#keeper.find };
      this.#station.view = stationView(walk, at, { writing: this.#writing, photoFault: this.#photoFault, picture: (sha256) => this.#ctx.sync.getPhoto(sha256), parts, find, measures: this.#keeper.measures(), now: Date.now() });
    } else void this.#end(walk);
  }

  // end asks what the bike's state will be once this walk is ended.
  async #end(walk: Walk): Promise<void> {
    const turn = ++this.#turn;
    await this.#keeper.flush();
    const ready: ReadyView | undefined = await endingOf(this.#ctx, walk, itemsOf(walk), walk.asked.length - askedNow(walk).length);
    if (turn === this.#turn && !this.#ctx.closed.aborted) this.#ending.view = { walk, ready };
  }
}
