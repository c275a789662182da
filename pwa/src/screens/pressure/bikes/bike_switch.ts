// Puts the open bike aside, with what is typed on it, and opens another: from the book, a new one, a copy, or a friend's.

import { emptyDraft, type PressureDraft, readDraft } from "../../../book/pressure/draft.ts";
import { restated } from "../../../book/pressure/restate.ts";
import type { Ctx } from "../../../ui/screen.ts";
import { w } from "../../../words/index.ts";
import type { Entries } from "../entries.ts";
import type { Holder, Records } from "../records.ts";
import { Setups } from "./setups.ts";

export class BikeSwitch {
  readonly #ctx: Ctx;
  readonly #holder: Holder;
  readonly #records: Records;
  readonly #entries: Entries;
  readonly #setups: Setups;

  constructor(ctx: Ctx, holder: Holder, records: Records, entries: Entries) {
    this.#ctx = ctx;
    this.#holder = holder;
    this.#records = records;
    this.#entries = entries;
    this.#setups = new Setups(ctx.book);
  }

  // open opens a bike of the book; "" starts a new one. False when it is open already.
  async open(rec: string): Promise<boolean> {
    const left = await this.#putAside();
    if (left === rec && rec !== "") return false;
    const { draft, name } = this.#holder;
    const stored = rec === "" ? undefined : await this.#ctx.drafts.load(`${name}/${rec}`);
    const bike = this.#entries.bike(rec);
    const next = stored !== undefined ? readDraft(stored)
      : bike === undefined ? { ...emptyDraft, ground: draft.ground, groundBy: draft.groundBy } : await this.#records.opened(bike, draft);
    this.#holder.draft = restated(next, draft.unit);
    await this.#records.look();
    void this.#ctx.drafts.save(name, this.#holder.draft);
    return true;
  }

  // copy makes another bike of what the screen shows. Rider, gauge and pump stay the same; the rest gets records of its own.
  async copy(): Promise<void> {
    await this.#putAside();
    const { draft, name } = this.#holder;
    const shared = /^(person|gauge|pump)$/;
    const links = Object.fromEntries(Object.entries(draft.links).filter(([role]) => shared.test(role)));
    const based = Object.fromEntries(Object.entries(draft.based).filter(([key]) => shared.test(key.split("/")[0] ?? "")));
    this.#holder.draft = { ...draft, links, based, bike: w("bikes.copied", { name: draft.bike || w("head.bike") }) };
    void this.#ctx.drafts.save(name, this.#holder.draft);
    await this.#records.now();
  }

  share(draft: PressureDraft): Promise<void> {
    return this.#setups.share(draft);
  }

  // bring opens the bike of a friend's file; false when it is no such file.
  async bring(file: File): Promise<boolean> {
    const bike = await this.#setups.bring(file);
    await this.#entries.look();
    return bike !== undefined && this.open(bike);
  }

  async #putAside(): Promise<string | undefined> {
    await this.#records.now();
    const { draft, name } = this.#holder;
    const left = draft.links["bike"];
    if (left !== undefined) await this.#ctx.drafts.save(`${name}/${left}`, draft);
    return left;
  }
}
