// A wheel that phones have put on several bikes while they were apart: where is it?

import { type Double, doublesIn, keptChanges, type Slot, undoneChanges } from "../../book/wheels/swap.ts";
import { describeRecord, type Teller } from "../../book/value/record_words.ts";
import type { RecordState } from "../../log/op/merge.ts";
import { el } from "../../ui/el.ts";
import { keyed } from "../../ui/keyed.ts";
import { Outcome } from "../../ui/outcome.ts";
import { define, Part, setHidden, setText } from "../../ui/part.ts";
import type { Ctx } from "../../ui/screen.ts";
import { w } from "../../words/index.ts";
import { attempt } from "../shared/follow.ts";

interface Asked {
  readonly title: string;
  readonly places: readonly { readonly key: string; readonly label: string; readonly keep: () => void }[];
}

class DoublePart extends Part<Asked> {
  readonly #title = el("h2");
  readonly #places = el("div", { class: "stack answers" });

  protected override build(): void {
    this.append(el("section", { class: "card stack" }, this.#title, el("p", {}, w("double.ask")), this.#places));
  }

  protected override show({ title, places }: Asked): void {
    setText(this.#title, title);
    keyed(this.#places, places, ({ key }) => key, () => el("button", { type: "button", class: "button big" }), (button, { label, keep }) => {
      setText(button, label);
      button.onclick = keep;
    });
  }
}

export class Doubles {
  readonly #ctx: Ctx;
  readonly #outcome = new Outcome();
  readonly #cards = el("div", { class: "stack" });
  readonly node = el("div", { class: "stack" }, this.#outcome, this.#cards);

  constructor(ctx: Ctx) {
    this.#ctx = ctx;
  }

  // show asks about every such wheel, and gives how many there are.
  show(bikes: readonly RecordState[], teller: Teller): number {
    const doubles = doublesIn(bikes);
    keyed(this.#cards, doubles, ({ wheel }) => wheel, () => new DoublePart(), (part, double) => {
      const wheel = teller.find(double.wheel);
      part.view = {
        title: wheel === undefined ? w("recValue.unknown") : describeRecord(wheel, { ...teller, placeOf: () => "" }),
        places: double.slots.map((slot) => ({ key: `${slot.bike.rec}/${slot.side}`, label: placeWords(slot, teller), keep: () => void this.#keep(double, slot, teller) })),
      };
    });
    setHidden(this.#cards, doubles.length === 0);
    return doubles.length;
  }

  async #keep(double: Double, slot: Slot, teller: Teller): Promise<void> {
    const { book } = this.#ctx;
    const changes = keptChanges(double, slot);
    let after: readonly RecordState[] = [];
    const failed = await attempt(this.#ctx, async () => {
      after = await book.save(changes);
    });
    const undo = async (): Promise<void> => {
      const trouble = await attempt(this.#ctx, () => book.save(undoneChanges(changes, after)));
      this.#outcome.view = { words: trouble, failed: trouble !== "" };
    };
    this.#outcome.view = failed === "" ? { words: w("double.done", { place: placeWords(slot, teller) }), undo: () => void undo() } : { words: failed, failed: true };
  }
}

function placeWords({ bike, side }: Slot, teller: Teller): string {
  return w(`recPlace.${side}`, { bike: teller.nameOf(bike.rec) });
}

define("rs-double", DoublePart);
