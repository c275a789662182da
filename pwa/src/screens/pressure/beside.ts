// What works beside the answer: notes after the ride, and other widths.

import type { Ctx } from "../../ui/screen.ts";
import type { AfterRideView } from "./ride/after_ride.ts";
import type { Lender } from "./lent.ts";
import { Rides } from "./ride/rides.ts";
import { WidthDesk } from "./setup/width_desk.ts";
import type { WidthsView } from "./setup/widths.ts";

export interface BesideView {
  readonly ride: AfterRideView;
  readonly widths: WidthsView;
}

export class Beside {
  readonly #from: Lender;
  readonly #rides: Rides;
  readonly #widths: WidthDesk;

  constructor(host: HTMLElement, ctx: Ctx, from: Lender) {
    this.#from = from;
    this.#rides = new Rides(host, ctx, from);
    this.#widths = new WidthDesk(host, ctx, from);
  }

  forget(bike: string | undefined): void {
    this.#rides.forget(bike);
  }

  view(): BesideView {
    const lent = this.#from.lend();
    return { ride: this.#rides.view(lent), widths: this.#widths.view(lent) };
  }
}
