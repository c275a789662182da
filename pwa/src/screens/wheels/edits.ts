// Edits of one thing: what is typed is kept at once, and becomes part of the book when the person rests or leaves the
// field. What cannot be stays in its field with the reason.

import { fieldWords } from "../../book/value/kind_words.ts";
import { swapChanges, undoneChanges } from "../../book/wheels/swap.ts";
import type { Typing } from "../../book/wheels/thing_view.ts";
import { readTyped } from "../../book/value/typed_value.ts";
import type { Change } from "../../log/book_log.ts";
import { isObject, sameValue } from "../../log/op/json.ts";
import { type RecordState, valueOf } from "../../log/op/merge.ts";
import { chosen } from "../../ui/choice.ts";
import { typed } from "../../ui/field.ts";
import { listen } from "../../ui/part.ts";
import type { Ctx } from "../../ui/screen.ts";
import { w } from "../../words/index.ts";
import { attempt } from "../shared/follow.ts";

const rest = 1200; // ms without a key until an edit counts as made

type Say = (words: string, undo?: () => Promise<unknown>, failed?: boolean) => void;

export class Edits implements Typing {
  readonly texts = new Map<string, string>();
  readonly faults = new Map<string, string>();
  readonly #ctx: Ctx;
  readonly #draft: string;
  readonly #show: () => void;
  readonly #say: Say;
  #state: RecordState | undefined;
  #bikes: readonly RecordState[] = [];
  #timer: ReturnType<typeof setTimeout> | undefined;
  #work: Promise<unknown> = Promise.resolve();

  constructor(host: HTMLElement, ctx: Ctx, rec: string, show: () => void, say: Say, draft = `thing/${rec}`) {
    this.#ctx = ctx;
    this.#draft = draft;
    this.#show = show;
    this.#say = say;
    listen(host, typed, ({ id, text }) => this.#type(id, text), ctx.closed);
    listen(host, chosen, ({ name, value }) => this.#choose(name, value), ctx.closed);
    host.addEventListener("focusout", () => this.#now(), { signal: ctx.closed });
    document.addEventListener("visibilitychange", () => this.#now(), { signal: ctx.closed });
    ctx.closed.addEventListener("abort", () => this.#now());
  }

  // load brings back what was typed and could not be saved before the app was closed.
  async load(): Promise<void> {
    const stored = await this.#ctx.drafts.load(this.#draft);
    if (!isObject(stored as never)) return;
    for (const [id, text] of Object.entries(stored as Record<string, unknown>)) if (typeof text === "string") this.texts.set(id, text);
    if (this.texts.size > 0) this.#soon();
  }

  // know takes what the book says now.
  know(state: RecordState | undefined, bikes: readonly RecordState[]): void {
    this.#state = state;
    this.#bikes = bikes;
  }

  #type(id: string, text: string): void {
    this.texts.set(id, text);
    this.faults.delete(id);
    this.#keep();
    this.#show();
    this.#soon();
  }

  #choose(id: string, value: string): void {
    this.texts.set(id, value);
    this.#keep();
    this.#now();
  }

  #keep(): void {
    void this.#ctx.drafts.save(this.#draft, Object.fromEntries(this.texts));
  }

  #soon(): void {
    clearTimeout(this.#timer);
    this.#timer = setTimeout(() => this.#now(), rest);
  }

  // now makes edits of what was typed, one after the other.
  #now(): void {
    clearTimeout(this.#timer);
    if (this.texts.size === 0) return;
    this.#work = this.#work.then(async () => {
      for (const [id, text] of [...this.texts]) await this.#make(id, text);
      if (!this.#ctx.closed.aborted) this.#show();
    });
  }

  async #make(id: string, text: string): Promise<void> {
    const state = this.#state;
    const field = id.slice(id.indexOf(".") + 1);
    if (state === undefined || this.texts.get(id) !== text) return;
    const read = readTyped(state.kind, field, text, this.#ctx.settings.units);
    if ("fault" in read) {
      this.faults.set(id, read.fault);
      return;
    }
    this.faults.delete(id);
    const moved = state.kind === "bike" && (field === "front" || field === "rear");
    const changes = sameValue(valueOf(state, field) ?? null, read.value) ? []
      : moved ? swapChanges(this.#bikes, state, field, text.trim())
      : [{ rec: state.rec, kind: state.kind, set: { [field]: read.value, ...(field === "measured_mm" && { measured_at: Date.now() }) }, shown: state }];
    const failed = changes.length === 0 ? "" : await this.#save(changes, moved && changes.length > 1 ? w("things.swapped") : w("things.saved", { field: fieldWords(state.kind, field) }));
    if (failed !== "") return this.#say(failed, undefined, true);
    if (this.texts.get(id) === text) this.texts.delete(id);
    this.#keep();
  }

  async #save(changes: readonly Change[], words: string): Promise<string> {
    const { book } = this.#ctx;
    let after: readonly RecordState[] = [];
    const failed = await attempt(this.#ctx, async () => {
      after = await book.save(changes);
    });
    this.#state = after.find(({ rec }) => rec === this.#state?.rec) ?? this.#state;
    if (failed === "") this.#say(words, () => book.save(undoneChanges(changes, after)));
    return failed;
  }
}
