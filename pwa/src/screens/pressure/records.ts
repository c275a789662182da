// Ties the draft to the records of the book: an edit is written once it has come to rest, and what others changed
// appears unless it is being edited here.

import { type Role, roles } from "../../book/bind/bonds.ts";
import { commit, type States } from "../../book/bind/commit.ts";
import type { PressureDraft } from "../../book/pressure/draft.ts";
import { openedDraft, partKinds } from "../../book/pressure/opened.ts";
import { widthAge } from "../../book/wheels/measure_age.ts";
import type { Ages } from "../../book/pressure/screen_view.ts";
import type { Reading } from "../../book/pressure/request.ts";
import { take } from "../../book/bind/take.ts";
import { newRec } from "../../log/book_log.ts";
import type { RecordState } from "../../log/op/merge.ts";
import type { Ctx } from "../../ui/screen.ts";

// What the desk lends: its draft may change while something is being written.
export interface Holder {
  draft: PressureDraft;
  readonly read: () => Reading;
  readonly name: string; // of the stored draft
}

const rest = 1200; // ms without a key until an edit counts as made

export class Records {
  // settled ends when all that was left to write is written: another page of this screen begins with the draft that then stands.
  static settled: Promise<void> = Promise.resolve();
  readonly #book: Ctx["book"];
  readonly #holder: Holder;
  #states: States = {};
  #timer: ReturnType<typeof setTimeout> | undefined;
  #writing: Promise<void> | undefined;
  #turn = 0; // counts looks and edits

  constructor(book: Ctx["book"], holder: Holder) {
    this.#book = book;
    this.#holder = holder;
  }

  // look reads the records behind the draft; true when one of them changed the draft. The field that is being typed in
  // stays as it is.
  async look(typing = ""): Promise<boolean> {
    const turn = ++this.#turn;
    await this.#writing; // what is being written is behind the draft already
    const { links } = this.#holder.draft;
    const found = await Promise.all(roles.map(async (role) => [role, await this.#one(links[role])] as const));
    if (turn !== this.#turn) return false; // a newer look, or an edit, has overtaken this one
    this.#states = Object.fromEntries(found.filter((pair): pair is readonly [Role, RecordState] => pair[1] !== undefined));
    const before = this.#holder.draft;
    this.#holder.draft = take(before, this.#states, this.#book, typing);
    return this.#holder.draft !== before;
  }

  // ages tell how old the widths are that somebody measured.
  ages(now: number): Ages {
    return { front: widthAge(this.#states["front.tyre"], now), rear: widthAge(this.#states["rear.tyre"], now) };
  }

  #one(rec: string | undefined): Promise<RecordState | undefined> {
    return rec === undefined ? Promise.resolve(undefined) : this.#book.get(rec);
  }

  // concerns tells whether a record plays a role on this screen.
  concerns(recs: ReadonlySet<string>): boolean {
    return recs.size === 0 || Object.values(this.#holder.draft.links).some((rec) => recs.has(rec));
  }

  // soon writes the edits when the person rests.
  soon(): void {
    clearTimeout(this.#timer);
    this.#timer = setTimeout(() => void this.now(), rest);
  }

  // now writes them at once. It never rejects: a phone that refuses is told by the status line, and the next edit tries
  // again.
  now(): Promise<void> {
    clearTimeout(this.#timer);
    const after = this.#writing ?? Promise.resolve();
    const writing = after.then(() => this.#write());
    this.#writing = writing;
    Records.settled = writing;
    return writing;
  }

  async #write(): Promise<void> {
    const holder = this.#holder;
    const before = holder.draft;
    if (!before.started) return;
    const { draft, changes } = commit(before, holder.read(), this.#states, Date.now(), newRec);
    if (changes.length === 0) {
      holder.draft = draft;
      return;
    }
    holder.draft = draft;
    this.#turn++;
    try {
      // The newest draft goes to the disk with the edits, whatever was typed in between.
      const states = await this.#book.save(changes, { name: holder.name, get value() { return holder.draft; } });
      this.#remember(states);
      const made = before.links["person"] === undefined ? draft.links["person"] : undefined;
      if (this.#book.me === "" && made !== undefined) await this.#book.setMe(made); // the first rider made here is whose phone this is
    } catch {
      holder.draft = { ...holder.draft, links: before.links, based: before.based };
    }
  }

  #remember(states: readonly RecordState[]): void {
    const { links } = this.#holder.draft;
    for (const state of states) {
      const role = roles.find((each) => links[each] === state.rec);
      if (role !== undefined) this.#states = { ...this.#states, [role]: state };
    }
  }

  // opened is the draft of another bike of the book: what is known of today stays.
  async opened(bike: RecordState, today: PressureDraft): Promise<PressureDraft> {
    const known = new Map<string, RecordState>();
    for (const kind of partKinds) {
      for (const state of await this.#book.all(kind)) known.set(state.rec, state);
    }
    return openedDraft(bike, (rec) => known.get(rec), today);
  }

  stop(): void {
    clearTimeout(this.#timer);
  }
}
