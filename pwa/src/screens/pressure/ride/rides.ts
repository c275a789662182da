// Notes what a rider says after the ride, tells how much it moves the next answer, and takes it back.

import { movedWords, noneTold, readRideTold, type Ridden, rideChanges, rideNoteOf, type RideTold, saysNothing, setForRide, shiftWords } from "../../../book/pressure/after_ride.ts";
import { type PressureAnswer, type Side, sides } from "../../../book/pressure/answer.ts";
import { shiftOf, rideNotes } from "../../../book/pressure/shift.ts";
import type { Answers, Name, Requests } from "../../../contract/contract.ts";
import { newRec } from "../../../log/book_log.ts";
import type { RecordState } from "../../../log/op/merge.ts";
import { listen } from "../../../ui/part.ts";
import type { Ctx } from "../../../ui/screen.ts";
import { w } from "../../../words/index.ts";
import { type AfterRideView, rideAnswered, rideTakenBack, rideTold } from "./after_ride.ts";
import type { Lender, Lent } from "../lent.ts";

const draftName = "after-ride";

export class Rides {
  readonly #ctx: Pick<Ctx, "calc" | "book" | "drafts">;
  readonly #from: Lender;
  #entries: readonly RecordState[] = []; // what can be taken back
  #bike = ""; // on which bike
  #done = "";
  #told = noneTold; // of which bike, and what

  constructor(host: HTMLElement, ctx: Pick<Ctx, "calc" | "book" | "drafts" | "closed">, from: Lender) {
    this.#ctx = ctx;
    this.#from = from;
    listen(host, rideAnswered, (told) => this.#keep(told), ctx.closed);
    listen(host, rideTold, (told) => void this.#save(told), ctx.closed);
    listen(host, rideTakenBack, () => void this.#takeBack(), ctx.closed);
    const take = (stored: unknown): void => {
      this.#told = readRideTold(stored);
      from.show();
    };
    void ctx.drafts.load(draftName).then(take);
    ctx.closed.addEventListener("abort", ctx.drafts.follow(draftName, take));
  }

  view({ draft, notes }: Lent): AfterRideView {
    const moved = shiftWords(shiftOf(rideNotes(notes, draft.links["bike"])));
    const here = this.#bike === draft.links["bike"];
    return { moved, done: here ? this.#done : "", undoable: here && this.#entries.length > 0, told: this.#told.bike === bikeOf(draft) ? this.#told.told : noneTold.told };
  }

  // forget drops what was chosen and not saved, when it was of this bike.
  forget(bike: string | undefined): void {
    if (this.#told.bike === bike) this.#keep(noneTold.told);
  }

  // keep holds what was chosen for the open bike until it is saved, also over a restart.
  #keep(told: RideTold): void {
    this.#told = { bike: bikeOf(this.#from.lend().draft), told };
    void this.#ctx.drafts.save(draftName, this.#told);
  }

  #say(words: string): void {
    this.#done = words;
    this.#bike = this.#from.lend().draft.links["bike"] ?? "";
    this.#from.show();
  }

  async #save(told: RideTold): Promise<void> {
    try {
      await this.#from.settle();
      const lent = this.#from.lend();
      const { draft } = lent;
      const before = rideNotes(lent.notes, draft.links["bike"]);
      const ridden = await this.#ridden(lent, shiftOf(before).by);
      const added = sides.filter((side) => !saysNothing(told[side])).map((side) => rideNoteOf(told[side], ridden[side], draft));
      const [old, next] = [shiftOf(before), shiftOf([...before, ...added])];
      this.#entries = await this.#ctx.book.save(rideChanges(told, ridden, draft, next.by, newRec));
      this.#keep(noneTold.told);
      const moved = next.notes === old.notes ? "" : await this.#moved(lent, old.by, next.by);
      this.#say(moved === "" ? w("ride.savedOnly") : w("ride.saved", { moved }));
    } catch {
      this.#say(w("ride.refused"));
    }
  }

  // ridden is what is known of that ride: the setting noted for it, or else what was advised; and custom, unshifted.
  async #ridden(lent: Lent, shift: number): Promise<Readonly<Record<Side, Ridden>>> {
    const [plain, advised] = [await this.#answer(lent, 0), await this.#answer(lent, shift)];
    const found: Record<Side, Ridden> = { front: {}, rear: {} };
    for (const side of sides) {
      const question = setForRide(side, lent.draft, lent.sets, lent.reading, Date.now());
      const ridden = (question === undefined ? undefined : (await this.#ask("air", question))?.kpa) ?? advised?.[side].at_ride_kpa;
      const custom = plain?.[side].custom_kpa;
      found[side] = { ...(ridden != null && { ridden }), ...(custom != null && { custom }) };
    }
    return found;
  }

  async #moved(lent: Lent, from: number, to: number): Promise<string> {
    const [before, after] = [await this.#answer(lent, from), await this.#answer(lent, to)];
    return before === undefined || after === undefined ? "" : movedWords(before, after, lent.unit);
  }

  async #answer({ reading }: Lent, shift: number): Promise<PressureAnswer | undefined> {
    if (reading.body === undefined) return undefined;
    return this.#ask("pressure", { ...reading.body, shift });
  }

  // ask is undefined where no sums run: what was said is noted all the same.
  async #ask<N extends Name>(name: N, body: Requests[N]): Promise<Answers[N] | undefined> {
    try {
      return (await this.#ctx.calc.ask(name, body)).answer;
    } catch {
      return undefined;
    }
  }

  async #takeBack(): Promise<void> {
    const entries = this.#entries;
    this.#entries = [];
    try {
      await this.#ctx.book.remove(...entries);
      this.#say(w("ride.taken"));
    } catch {
      this.#entries = entries;
      this.#say(w("ride.refused"));
    }
  }
}

function bikeOf(draft: Lent["draft"]): string {
  return draft.links["bike"] ?? "";
}
