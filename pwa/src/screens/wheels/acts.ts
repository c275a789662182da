// What can be done with a thing as a whole: the same again, out of use, deleted; and where its history is told.

import { isIndoors } from "../../book/checks/indoors.ts";
import { copyOf } from "../../book/wheels/copy_thing.ts";
import { newRec } from "../../log/book_log.ts";
import { type RecordState, valueOf } from "../../log/op/merge.ts";
import { el } from "../../ui/el.ts";
import { setAttr, setHidden, setText } from "../../ui/part.ts";
import type { Ctx } from "../../ui/screen.ts";
import { w } from "../../words/index.ts";
import { attempt } from "../shared/follow.ts";

type Say = (words: string, undo?: () => Promise<unknown>, failed?: boolean) => void;
type Find = (rec: string) => RecordState | undefined;

const canRetire = ["bike", "wheel", "tyre"];
const canCopy = ["bike", "wheel", "tyre"] as const;

export class Acts {
  readonly node: HTMLElement;
  readonly #ctx: Ctx;
  readonly #say: Say;
  readonly #copy = press(() => void this.#copyIt());
  readonly #retire = press(() => void this.#retireIt());
  readonly #indoors = press(() => void this.#indoorsIt());
  readonly #delete = press(() => void this.#deleteIt());
  readonly #restore = press(() => void this.#restoreIt(), w("records.restore"));
  readonly #history = el("a", { class: "button quiet flush" }, w("things.history"));
  readonly #checks = el("a", { class: "button quiet flush" }, w("checks.history"));
  readonly #erase = el("a", { class: "button quiet flush" }, w("things.erase"));
  #state: RecordState | undefined;
  #find: Find = () => undefined;

  constructor(ctx: Ctx, say: Say) {
    this.#ctx = ctx;
    this.#say = say;
    this.node = el("section", { class: "card stack" },
      el("div", { class: "row" }, this.#copy, this.#indoors, this.#retire, this.#delete, this.#restore),
      el("div", { class: "row" }, this.#history, this.#checks, this.#erase));
  }

  show(state: RecordState, find: Find): void {
    this.#state = state;
    this.#find = find;
    const retired = valueOf(state, "retired") === true;
    const copies = canCopy.find((kind) => kind === state.kind);
    if (copies !== undefined) setText(this.#copy, w(`things.copy.${copies}`));
    setText(this.#retire, retired ? w("things.back") : w("things.retire"));
    setText(this.#indoors, isIndoors(state) ? w("things.outdoors") : w("things.indoors"));
    setText(this.#delete, w("things.delete"));
    setHidden(this.#copy, state.deleted || copies === undefined);
    setHidden(this.#retire, state.deleted || !canRetire.includes(state.kind));
    setHidden(this.#indoors, state.deleted || (state.kind !== "bike" && state.kind !== "wheel"));
    setHidden(this.#delete, state.deleted);
    setHidden(this.#restore, !state.deleted);
    setHidden(this.#erase, state.kind !== "person");
    setHidden(this.#checks, state.kind !== "bike" && state.kind !== "wheel");
    setAttr(this.#checks, "href", `#/checks/history/${state.rec}`);
    setAttr(this.#history, "href", `#/settings/history/${state.rec}`);
    setAttr(this.#erase, "href", `#/wheels/erase/${state.rec}`);
  }

  async #copyIt(): Promise<void> {
    const state = this.#state;
    if (state === undefined) return;
    const { rec, changes } = copyOf(state, this.#find, newRec);
    if (await this.#try(() => this.#ctx.book.save(changes), "")) location.hash = `#/wheels/${rec}`;
  }

  async #retireIt(): Promise<void> {
    await this.#turn("retired", w("things.retired"), w("things.isBack"));
  }

  async #indoorsIt(): Promise<void> {
    await this.#turn("indoors", w("things.isIndoors"), w("things.isOutdoors"));
  }

  // turn sets a mark, or takes it away.
  async #turn(field: "retired" | "indoors", words: string, unsaid: string): Promise<void> {
    const state = this.#state;
    if (state === undefined) return;
    const { book } = this.#ctx;
    const now = valueOf(state, field) !== true;
    const change = { rec: state.rec, kind: state.kind };
    let after: RecordState | undefined;
    await this.#try(async () => {
      [after] = await book.save([{ ...change, set: { [field]: now }, shown: state }]);
    }, now ? words : unsaid, () => book.save([{ ...change, set: { [field]: !now }, ...(after && { shown: after }) }]));
  }

  async #deleteIt(): Promise<void> {
    const state = this.#state;
    if (state === undefined) return;
    const { book } = this.#ctx;
    await this.#try(() => book.remove(state), w("things.deleted"), async () => {
      const now = await book.get(state.rec);
      if (now !== undefined) await book.restore(now);
    });
  }

  async #restoreIt(): Promise<void> {
    const state = this.#state;
    if (state !== undefined) await this.#try(() => this.#ctx.book.restore(state), w("history.isRestored"));
  }

  async #try(work: () => Promise<unknown>, words: string, undo?: () => Promise<unknown>): Promise<boolean> {
    const failed = await attempt(this.#ctx, work);
    this.#say(failed || words, failed === "" ? undo : undefined, failed !== "");
    return failed === "";
  }
}

function press(click: () => void, words = ""): HTMLButtonElement {
  return el("button", { type: "button", class: "button", on: { click } }, words);
}
