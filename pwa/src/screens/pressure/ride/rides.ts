// Notes what a rider says after the ride, tells how much it moves the next answer, and takes it back.

import { airOf, movedWords, noneTold, readRideTold, type Ridden, rideChanges, type RideTold, saysNothing, shiftWords, uncounted } from "../../../book/pressure/after_ride.ts";
import { type PressureAnswer, type Side, sides } from "../../../book/pressure/answer.ts";
import { noteOf, setForRide } from "../../../book/pressure/ride_due.ts";
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

  view({ draft, sets, notes, learned }: Lent): AfterRideView {
    const here = this.#bike === draft.links["bike"];
    const settings = sides.map((side) => setForRide(side, draft, sets, Date.now()));
    const never = settings.every((each) => each === undefined);
    const again = settings.some((each) => each !== undefined && noteOf(each, notes) !== undefined);
    return {
      moved: [shiftWords(learned), ...uncounted(learned)].filter((each) => each !== ""), done: here ? this.#done : "", undoable: here && this.#entries.length > 0,
      told: this.#told.bike === bikeOf(draft) ? this.#told.told : noneTold.told, remark: never ? w("ride.neverSet") : again ? w("ride.again") : "",
    };
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
    this.#bike = bikeOf(this.#from.lend().draft);
    this.#from.show();
  }

  async #save(told: RideTold): Promise<void> {
    try {
      await this.#from.settle();
      const lent = this.#from.lend();
      const ridden = await this.#ridden(lent);
      const second = sides.some((side) => !saysNothing(told[side]) && ridden[side].setting !== undefined && noteOf(ridden[side].setting, lent.notes) !== undefined);
      this.#entries = await this.#ctx.book.save(rideChanges(told, ridden, lent.draft, lent.notes, newRec));
      this.#keep(noneTold.told);
      const before = lent.answer;
      const after = await this.#from.renew();
      this.#say(this.#words(told, ridden, second, before, after, lent));
    } catch {
      this.#say(w("ride.refused"));
    }
  }

  #words(told: RideTold, ridden: Readonly<Record<Side, Ridden>>, second: boolean, before: PressureAnswer | undefined, after: PressureAnswer | undefined, lent: Lent): string {
    const unknown = sides.every((side) => saysNothing(told[side]) || ridden[side].kpa === undefined);
    if (unknown || before === undefined || after === undefined) return w("ride.savedOnly");
    const moved = movedWords(before, after, lent.unit);
    return second ? w("ride.replaced", { moved }) : w("ride.saved", { moved });
  }

  // ridden is what is known of that ride: the setting noted for it, carried to the ride's air.
  async #ridden(lent: Lent): Promise<Readonly<Record<Side, Ridden>>> {
    const one = async (side: Side): Promise<Ridden> => {
      const setting = setForRide(side, lent.draft, lent.sets, Date.now());
      const question = airOf(setting, lent.reading);
      const kpa = question === undefined ? undefined : (await this.#ctx.calc.ask("air", question)).answer?.kpa;
      return { ...(setting && { setting }), ...(kpa !== undefined && { kpa }) };
    };
    return { front: await one("front"), rear: await one("rear") };
  }

  async #takeBack(): Promise<void> {
    const entries = this.#entries;
    this.#entries = [];
    try {
      await this.#ctx.book.remove(...entries);
      await this.#from.renew();
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
