// What the screen shows of the book beside the open bike: its bikes, what was set, what was noted; and the entries that a
// person adds here.

import { type BikeLine, bikeLines, newest } from "../../book/pressure/bikes.ts";
import type { PressureDraft } from "../../book/pressure/draft.ts";
import type { PressureUnit } from "../../book/value/quantity.ts";
import { groundChange } from "../../book/pressure/grounds.ts";
import { lastSetWords, sameChanges, setChanges, type SetFacts } from "../../book/pressure/sets.ts";
import { noteLines } from "../../book/wheels/notes.ts";
import { type Change, newRec } from "../../log/book_log.ts";
import type { RecordState } from "../../log/op/merge.ts";
import type { Ctx } from "../../ui/screen.ts";
import { w } from "../../words/index.ts";
import type { NoteLine } from "./ride/noted.ts";

const undoFor = 10_000; // ms

export class Entries {
  readonly #book: Ctx["book"];
  readonly #changed: () => void;
  #bikes: readonly RecordState[] = [];
  #sets: readonly RecordState[] = [];
  #notes: readonly RecordState[] = [];
  #trials: readonly RecordState[] = [];
  #grounds: readonly RecordState[] = [];
  #done: { readonly entries: readonly RecordState[]; readonly words: string } | undefined;
  #timer: ReturnType<typeof setTimeout> | undefined;

  constructor(book: Ctx["book"], changed: () => void) {
    this.#book = book;
    this.#changed = changed;
  }

  async look(): Promise<void> {
    const [bikes, sets, notes, grounds, trials] = await Promise.all([
      this.#book.all("bike"), this.#book.all("pressure_set"), this.#book.all("note"), this.#book.all("ground"), this.#book.all("trial"),
    ]);
    this.#grounds = grounds;
    this.#trials = trials;
    this.#bikes = bikes;
    this.#sets = sets;
    this.#notes = notes;
  }

  get newest(): RecordState | undefined {
    return newest(this.#bikes);
  }

  bike(rec: string): RecordState | undefined {
    return this.#bikes.find((each) => each.rec === rec);
  }

  bikes(draft: PressureDraft): readonly BikeLine[] {
    return bikeLines(this.#bikes, draft.links["bike"]);
  }

  get notes(): readonly RecordState[] {
    return this.#notes;
  }

  // taught is what moves the next numbers: notes after rides, and trials.
  get taught(): readonly RecordState[] {
    return [...this.#notes, ...this.#trials];
  }

  get sets(): readonly RecordState[] {
    return this.#sets;
  }

  view(draft: PressureDraft, unit: PressureUnit, now: number): { readonly last: string; readonly notes: readonly NoteLine[]; readonly done: string } {
    return { last: lastSetWords(this.#sets, draft, unit, now), notes: noteLines(this.#notes, draft.links["bike"], now), done: this.#done?.words ?? "" };
  }

  get grounds(): readonly RecordState[] {
    return this.#grounds;
  }

  keepGround(draft: PressureDraft, name: string): Promise<boolean> {
    return this.#add([groundChange(draft, name, newRec)], w("ground.isKept", { name }));
  }

  keepMeasured(change: Change, name: string): Promise<boolean> {
    return this.#add([change], w("ground.isKept", { name }));
  }

  // sameAgain notes that both wheels were set to what they were set to last.
  sameAgain(facts: SetFacts): Promise<boolean> {
    return this.#add(sameChanges(facts, this.#sets, newRec), w("set.done"));
  }

  // setIt notes what the wheels were set to; false when there is nothing to note or the phone refuses.
  setIt(facts: SetFacts): Promise<boolean> {
    const changes = setChanges(facts, newRec);
    return this.#add(changes, changes.length === 1 ? w("set.doneOne", { side: w(`side.${facts.which[0] ?? "front"}`) }) : w("set.done"));
  }

  note(draft: PressureDraft, text: string): Promise<boolean> {
    const bike = draft.links["bike"];
    return this.#add(bike === undefined ? [] : [{ rec: newRec(), kind: "note", set: { bike, note: text } }], w("notes.done"));
  }

  async #add(changes: readonly Change[], words: string): Promise<boolean> {
    if (changes.length === 0) return false;
    try {
      const entries = await this.#book.save(changes);
      this.#done = { entries, words };
      clearTimeout(this.#timer);
      this.#timer = setTimeout(() => this.#forget(), undoFor);
      return true;
    } catch {
      return false; // the status line tells
    }
  }

  async undo(): Promise<void> {
    const entries = this.#done?.entries ?? [];
    this.#forget();
    await this.#book.remove(...entries);
  }

  #forget(): void {
    clearTimeout(this.#timer);
    this.#done = undefined;
    this.#changed();
  }

  stop(): void {
    clearTimeout(this.#timer);
  }
}
