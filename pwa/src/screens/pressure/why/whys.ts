// The reasons of both wheels, one at a time: what is open in one stays open while the other is looked at.

import type { Side } from "../../../book/pressure/answer.ts";
import { type Answered, whyViews } from "../../../book/pressure/reasons.ts";
import { define, Part } from "../../../ui/part.ts";
import { Why } from "./why.ts";

export interface WhysView {
  readonly side: Side;
  readonly answered: Answered | undefined;
}

export class Whys extends Part<WhysView> {
  readonly #pages: Readonly<Record<Side, Why>> = { front: new Why(), rear: new Why() };

  protected override build(): void {}

  protected override show({ side, answered }: WhysView): void {
    const page = this.#pages[side];
    if (this.firstChild !== page) this.replaceChildren(page);
    const view = answered === undefined ? undefined : whyViews(answered).find((each) => each.side === side);
    if (view !== undefined) page.view = view;
  }
}

define("rs-whys", Whys);
