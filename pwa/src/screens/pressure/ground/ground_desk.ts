// What is done to today's ground: stretches changed, added, moved, taken away; grounds kept and used again; and undone.

import type { PressureDraft, StretchDraft } from "../../../book/pressure/draft.ts";
import { partEdit, stretchAddition, stretchEdit, stretchMove, stretchRemoval } from "../../../book/pressure/edits.ts";
import { groundEdit } from "../../../book/pressure/grounds.ts";
import type { PressureAnswer } from "../../../book/pressure/answer.ts";
import type { RequestBody } from "../../../book/pressure/request.ts";
import type { PressureUnit } from "../../../book/value/quantity.ts";
import type { Change } from "../../../log/book_log.ts";
import { valueOf } from "../../../log/op/merge.ts";
import { listen } from "../../../ui/part.ts";
import type { Ctx } from "../../../ui/screen.ts";
import { w } from "../../../words/index.ts";
import { learn } from "../../../words/locale.ts";
import type { Entries } from "../entries.ts";
import { type Further, furtherWanted, groundUndone, stretchAdded, stretchChanged, stretchMoved, stretchRemoved } from "./ground.ts";
import { groundKept, groundUsed } from "./kept_grounds.ts";

const undoFor = 10_000; // ms

// FurtherMeans is what measuring the ground and reading a course are lent.
export interface FurtherMeans {
  readonly draft: () => PressureDraft;
  readonly sums: () => { readonly body: RequestBody | undefined; readonly answer: PressureAnswer | undefined };
  readonly calc: Ctx["calc"];
  readonly unit: () => PressureUnit;
  readonly closed: AbortSignal;
  readonly use: (id: string, stretch: Partial<StretchDraft>) => void;
  readonly keep: (change: Change, name: string) => Promise<boolean>;
  readonly day: (edit: Partial<PressureDraft>, said: string) => void; // a whole day's ground and altitudes
}

export interface GroundMeans {
  readonly draft: () => PressureDraft;
  readonly change: (change: Partial<PressureDraft>) => void;
  readonly show: () => void;
  readonly lent: () => Pick<FurtherMeans, "sums" | "calc" | "unit" | "closed">;
  readonly trouble: (error: unknown) => void;
}

export class GroundDesk {
  readonly #entries: Entries;
  readonly #means: GroundMeans;
  #undo: { readonly ground: readonly StretchDraft[]; readonly words: string } | undefined;
  #timer: ReturnType<typeof setTimeout> | undefined;

  constructor(entries: Entries, means: GroundMeans) {
    this.#entries = entries;
    this.#means = means;
  }

  // said is what was just done, "" when nothing can be undone.
  get said(): string {
    return this.#undo?.words ?? "";
  }

  hear(host: HTMLElement, closed: AbortSignal): void {
    listen(host, stretchChanged, ({ id, change }) => this.stretch(id, change), closed);
    listen(host, stretchAdded, () => this.#add(), closed);
    listen(host, stretchRemoved, (id) => this.#remove(id), closed);
    listen(host, stretchMoved, ({ id, to }) => this.#means.change(stretchMove(this.#means.draft(), id, to)), closed);
    listen(host, groundUndone, () => this.#undone(true), closed);
    listen(host, groundKept, (name) => void this.#keep(name), closed);
    listen(host, furtherWanted, ({ which, host: into }) => void this.#further(which, into).catch((error: unknown) => this.#means.trouble(error)), closed);
    listen(host, groundUsed, (rec) => this.#use(rec), closed);
    closed.addEventListener("abort", () => clearTimeout(this.#timer));
  }

  // typed takes a stretch's field: a length in percent moves the others' kilometres.
  typed(id: string, name: string, text: string): void {
    const draft = this.#means.draft();
    this.#means.change(name === "km" && draft.groundBy === "share" && draft.ground.length > 1 ? partEdit(draft, id, text) : stretchEdit(draft, id, { [name]: text }));
  }

  stretch(id: string, change: Partial<StretchDraft>): void {
    this.#means.change(stretchEdit(this.#means.draft(), id, change));
  }

  // further fetches what comes with a script of its own, and its words.
  async #further(which: Further, host: HTMLElement): Promise<void> {
    const [{ begin }] = await Promise.all([which === "measure" ? import("../measure/measure.ts") : import("../course/course.ts"), learn("later")]);
    begin(host, {
      ...this.#means.lent(), draft: this.#means.draft,
      use: (id, stretch) => this.stretch(id, stretch),
      keep: (change, name) => this.#entries.keepMeasured(change, name).then(async (kept) => {
        await this.#entries.look();
        this.#means.show();
        return kept;
      }),
      day: (edit, said) => {
        this.#tell(said);
        this.#means.change(edit);
      },
    });
  }

  #add(): void {
    const id = crypto.getRandomValues(new Uint32Array(1))[0]?.toString(36) ?? "";
    this.#means.change(stretchAddition(this.#means.draft(), `s${id}`));
  }

  #remove(id: string): void {
    const removal = stretchRemoval(this.#means.draft(), id);
    if (removal === undefined) return;
    this.#tell(w("ground.removed", { n: removal.n }));
    this.#means.change(removal.edit);
  }

  async #keep(name: string): Promise<void> {
    if (await this.#entries.keepGround(this.#means.draft(), name)) this.#tell(w("ground.isKept", { name }));
    await this.#entries.look();
    this.#means.show();
  }

  #use(rec: string): void {
    const kept = this.#entries.grounds.find((each) => each.rec === rec);
    const edit = kept === undefined ? undefined : groundEdit(kept);
    if (edit === undefined) return;
    this.#tell(w("ground.isUsed", { name: String(valueOf(kept, "name")) }));
    this.#means.change(edit);
  }

  // tell says what was done, with the way back for a while.
  #tell(words: string): void {
    this.#undo = { ground: this.#means.draft().ground, words };
    clearTimeout(this.#timer);
    this.#timer = setTimeout(() => this.#undone(false), undoFor);
  }

  #undone(restore: boolean): void {
    const undo = this.#undo;
    this.#undo = undefined;
    clearTimeout(this.#timer);
    if (restore && undo !== undefined) this.#means.change({ ground: undo.ground });
    else this.#means.show();
  }
}
