// Whether the bike or wheel that a page is about may be ridden: looked at again whenever the book changes.

import { bikeName } from "../../book/pressure/bikes.ts";
import type { ReadyView } from "../../book/checks/ready_view.ts";
import { slotsOf } from "../../book/wheels/swap.ts";
import type { Ctx } from "../../ui/screen.ts";
import { w } from "../../words/index.ts";
import { follow } from "./follow.ts";
import { adoptWalk, readyBook, readyOf, wheelReadyOf } from "./ready.ts";
import { ReadyCard, ReadyLine } from "./ready_part.ts";

// toChecks is where the checks of a bike are.
export const toChecks = (bike: string): string => `#/checks/of/${bike}`;

export class ReadyHere {
  readonly card = new ReadyCard();
  readonly line = new ReadyLine();
  readonly #ctx: Ctx;
  readonly #again: () => Promise<void>;
  #rec = "";

  // The card is hidden while there is nothing to stop or to care about; the line stands always.
  constructor(ctx: Ctx) {
    this.#ctx = ctx;
    this.card.hidden = true;
    this.line.hidden = true;
    this.#again = follow(ctx, () => this.#look(), () => undefined);
  }

  // at says which bike or wheel the page is about; "" for none.
  at(rec: string): void {
    if (this.#rec === rec) return;
    this.#rec = rec;
    void this.#again();
  }

  async #look(): Promise<void> {
    const rec = this.#rec;
    if (rec === "") return this.#show(undefined, "", "");
    await adoptWalk(this.#ctx, rec);
    const book = await readyBook(this.#ctx);
    const state = book.find(rec);
    if (state === undefined || (state.kind !== "bike" && state.kind !== "wheel")) return this.#show(undefined, "", "");
    if (state.kind === "bike") return this.#show(await readyOf(this.#ctx, book, state), rec, "");
    const own = await wheelReadyOf(this.#ctx, book, state);
    const [slot] = slotsOf(book.lists.bike, rec);
    if (slot === undefined || own?.state === "stop" || own?.state === "care") return this.#show(own, slot?.bike.rec ?? "", "");
    this.#show(await readyOf(this.#ctx, book, slot.bike), slot.bike.rec, bikeName(slot.bike) || w("head.bike"));
  }

  #show(ready: ReadyView | undefined, bike: string, of: string): void {
    if (this.#ctx.closed.aborted) return;
    this.card.view = { ready, of, quietWhenFine: true };
    this.line.view = { ready, of, href: bike === "" ? "#/checks" : toChecks(bike) };
  }
}
