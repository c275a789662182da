// What is done to today's ground: stretches changed, added, moved, taken away; grounds kept and used again; and undone.

import type { PressureDraft, StretchDraft } from "../../../book/pressure/draft.ts";
import { partEdit, stretchAddition, stretchEdit, stretchMove, stretchRemoval } from "../../../book/pressure/edits.ts";
import { groundEdit } from "../../../book/pressure/grounds.ts";
import { valueOf } from "../../../log/op/merge.ts";
import { listen } from "../../../ui/part.ts";
import { w } from "../../../words/index.ts";
import type { Entries } from "../entries.ts";
import { groundUndone, stretchAdded, stretchChanged, stretchMoved, stretchRemoved } from "./ground.ts";
import { groundKept, groundUsed } from "./kept_grounds.ts";

const undoFor = 10_000; // ms

export interface GroundMeans {
  readonly draft: () => PressureDraft;
  readonly change: (change: Partial<PressureDraft>) => void;
  readonly show: () => void;
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
