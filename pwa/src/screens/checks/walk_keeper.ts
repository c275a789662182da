// Keeps a walk-around: the draft at once, and in the book the check when it is begun, each finding the moment it is made, each
// measured value when the typing rests.

import { type Parts, partsOf, sideOf, thingOf } from "../../book/checks/rows.ts";
import { begunChange, endedChange, foundChange, measuredChanges, millimetres, type Outcome, photoChange } from "../../book/checks/walk_save.ts";
import { type Ask, stations, type Value, type Walk, walkDraft } from "../../book/checks/walk.ts";
import { buildOf } from "../../book/checks/build.ts";
import { dayOf } from "../../book/wheels/measure_days.ts";
import type { Change } from "../../log/book_log.ts";
import type { RecordState } from "../../log/op/merge.ts";
import type { Ctx } from "../../ui/screen.ts";
import { attempt } from "../shared/follow.ts";

const rest = 600; // ms without a key until an edit counts as made

type Make = () => readonly Change[];

export class WalkKeeper {
  readonly #ctx: Ctx;
  readonly #failed: (words: string) => void;
  readonly #known = new Map<string, RecordState>();
  readonly #pending = new Map<string, Make>();
  #timer: ReturnType<typeof setTimeout> | undefined;
  #work: Promise<unknown> = Promise.resolve();

  constructor(ctx: Ctx, failed: (words: string) => void) {
    this.#ctx = ctx;
    this.#failed = failed;
    ctx.closed.addEventListener("abort", () => void this.flush());
    document.addEventListener("visibilitychange", () => void this.flush(), { signal: ctx.closed });
  }

  readonly find = (rec: string): RecordState | undefined => this.#known.get(rec);

  // load reads the bikes with their parts.
  async load(): Promise<void> {
    const { book } = this.#ctx;
    await book.ready;
    for (const kind of ["bike", "wheel", "tyre", "measure", "finding", "check"]) for (const state of await book.all(kind)) this.#known.set(state.rec, state);
  }

  measures(): readonly RecordState[] {
    return [...this.#known.values()].filter(({ kind }) => kind === "measure");
  }

  parts(bike: string): Parts {
    const state = this.find(bike);
    return state === undefined ? { bike, wheel: () => "", tyre: () => "" } : partsOf(state, this.find);
  }

  draft(walk: Walk): void {
    void this.#ctx.drafts.save(walkDraft(walk.bike, walk.moment), walk);
  }

  // begin notes that the walk was begun, once.
  begin(walk: Walk): void {
    if (this.find(walk.check) === undefined) this.#soon(walk.check, () => (this.find(walk.check) === undefined ? [begunChange(walk)] : []), true);
  }

  // missing brings into the book what the draft has and the book has not: the app was closed in between.
  missing(walk: Walk): void {
    for (const [id, found] of Object.entries(walk.found)) if (this.find(found.rec) === undefined) this.finding(walk, id);
    for (const ask of walk.asked) if (walk.values[ask.id]?.verdict) this.value(walk, ask);
  }

  // finding keeps what was found at a row.
  finding(walk: Walk, id: string, at = Date.now()): void {
    const found = walk.found[id];
    const station = stations.find((each) => id.startsWith(`${each}.`));
    if (found === undefined || station === undefined) return;
    const fresh = this.find(found.rec) === undefined;
    this.#soon(found.rec, () => {
      const photos = found.photos.filter(({ rec }) => this.find(rec) === undefined).map((photo) => photoChange(walk, found, photo, at));
      return [foundChange(walk, { id: id as Ask["id"], station }, found, this.parts(walk.bike), at, this.find(found.rec)), ...photos];
    }, fresh || found.photos.some(({ rec }) => this.find(rec) === undefined));
  }

  // value keeps what was measured at a row.
  value(walk: Walk, ask: Ask): void {
    const value = walk.values[ask.id];
    const mm = value === undefined ? undefined : millimetres(value.text);
    if (value === undefined || mm === undefined) return;
    this.#soon(value.rec, () => measuredChanges(walk, ask, value.rec, mm, this.parts(walk.bike), Date.now(), this.find, this.find(value.rec)), false);
  }

  // away takes records out of the book again.
  async away(...recs: readonly string[]): Promise<readonly RecordState[]> {
    for (const rec of recs) this.#pending.delete(rec);
    await this.#work;
    const states = recs.flatMap((rec) => this.find(rec) ?? []);
    const failed = await attempt(this.#ctx, () => this.#ctx.book.remove(...states));
    if (failed !== "") this.#failed(failed);
    for (const rec of recs) this.#known.delete(rec);
    return states;
  }

  // judge asks how bad a measured value is.
  async judge(walk: Walk, { id, measure }: Ask, text: string): Promise<Value["verdict"]> {
    const mm = millimetres(text);
    if (mm === undefined || measure === null) return "";
    const side = sideOf(id);
    const today = dayOf(Date.now());
    const event = { kind: "measured", thing: thingOf(id, this.parts(walk.bike)), what: measure, mm, day: today, ...(side !== undefined && { side }) } as const;
    try {
      const { answer } = await this.#ctx.calc.ask("ready", { bike: { id: walk.bike, ...buildOf(this.find(walk.bike), this.find) }, today, events: [event] });
      return answer === undefined ? "" : (answer.reasons.find(({ code }) => code === "measured")?.severity ?? "fine");
    } catch {
      return "";
    }
  }

  // end notes what was looked at, and lays the draft down: all or nothing. "" means that it is saved.
  async end(walk: Walk, outcome: Outcome): Promise<string> {
    await this.flush();
    return attempt(this.#ctx, () => this.#ctx.book.save([endedChange(walk, outcome, Date.now(), this.find(walk.check))], { name: walkDraft(walk.bike, walk.moment), value: null }));
  }

  // flush writes what waits, and resolves when all is in the book.
  flush(): Promise<unknown> {
    clearTimeout(this.#timer);
    return (this.#work = this.#work.then(() => this.#write()));
  }

  #soon(rec: string, make: Make, now: boolean): void {
    this.#pending.set(rec, make);
    clearTimeout(this.#timer);
    if (now) void this.flush();
    else this.#timer = setTimeout(() => void this.flush(), rest);
  }

  async #write(): Promise<void> {
    const waiting = [...this.#pending];
    this.#pending.clear();
    const changes = waiting.flatMap(([, make]) => make()).filter(({ set }) => Object.keys(set).length > 0);
    if (changes.length === 0) return;
    const failed = await attempt(this.#ctx, async () => {
      for (const state of await this.#ctx.book.save(changes)) this.#known.set(state.rec, state);
    });
    if (failed === "") return;
    for (const [rec, make] of waiting) if (!this.#pending.has(rec)) this.#pending.set(rec, make);
    this.#failed(failed);
  }
}
