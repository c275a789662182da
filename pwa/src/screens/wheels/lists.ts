// Lists as files: out for any spreadsheet, and back in, with a look at what a file would change before it does.

import "../../ui/pick.css";
import "./lists.css";
import { type Decimal, type ListKind, listKinds, type Shelf } from "../../book/wheels/lists/lists.ts";
import { type ListPlan, mostBytes, readList } from "../../book/wheels/lists/lists_read.ts";
import { undone } from "../../book/wheels/lists/lists_undo.ts";
import { listText } from "../../book/wheels/lists/lists_write.ts";
import { newRec } from "../../log/book_log.ts";
import type { RecordState } from "../../log/op/merge.ts";
import { Choice, chosen } from "../../ui/choice.ts";
import { el } from "../../ui/el.ts";
import { type Handed, handOver } from "../../ui/hand_over.ts";
import { Outcome } from "../../ui/outcome.ts";
import { openPage } from "../../ui/page.ts";
import { listen } from "../../ui/part.ts";
import { Picker } from "../../ui/picker.ts";
import type { Ctx } from "../../ui/screen.ts";
import { w } from "../../words/index.ts";
import { plain } from "../../words/number.ts";
import { attempt } from "../shared/follow.ts";
import { ColumnList, rulesCard } from "./lists_columns.ts";
import { ListPreview, listLeft, listTaken } from "./lists_preview.ts";

class Lists {
  readonly #ctx: Ctx;
  readonly #which = new Picker();
  readonly #decimals = new Choice();
  readonly #save = el("button", { type: "button", class: "button", on: { click: () => void this.#out() } }, w("list.save"));
  readonly #file = el("input", { type: "file", accept: ".csv,.txt,.tsv,text/csv,text/plain", on: { change: () => void this.#in() } });
  readonly #outcome = new Outcome();
  readonly #preview = new ListPreview();
  readonly #columns = new ColumnList();
  #kind: ListKind = "bike";
  #decimal: Decimal = plain(0.5).includes(",") ? "," : ".";

  constructor(host: HTMLElement, ctx: Ctx) {
    this.#ctx = ctx;
    openPage(ctx, w("list.title"), { href: "#/wheels", words: w("place.wheels") });
    host.append(el("div", { class: "stack" },
      el("section", { class: "card stack" }, el("p", { class: "quiet" }, w("list.intro")), this.#which, this.#decimals,
        el("p", { class: "small quiet" }, w("list.between")),
        el("div", { class: "row" }, this.#save, el("label", { class: "button pick" }, w("list.bring"), this.#file)), this.#outcome),
      this.#preview, this.#columns, rulesCard()));
    listen(host, chosen, ({ name, value }) => this.#choose(name, value), ctx.closed);
    listen(host, listTaken, (plan) => void this.#take(plan), ctx.closed);
    listen(host, listLeft, () => this.#leave(), ctx.closed);
    this.#show();
  }

  #show(): void {
    this.#which.view = { name: "list", label: w("list.which"), spoken: w("list.which"), value: this.#kind, options: listKinds.map((value) => ({ value, label: w(`list.of.${value}`) })) };
    this.#decimals.view = {
      name: "decimal", legend: w("list.decimal"), value: this.#decimal,
      options: [{ value: ".", label: w("list.point") }, { value: ",", label: w("list.comma") }],
    };
    this.#columns.view = this.#kind;
  }

  #choose(name: string, value: string): void {
    if (name === "decimal") this.#decimal = value === "," ? "," : ".";
    else if (name === "list") {
      this.#kind = listKinds.find((kind) => kind === value) ?? this.#kind;
      this.#preview.view = { plan: undefined, kind: this.#kind }; // a file is read against one list
    }
    this.#show();
  }

  async #shelf(): Promise<Shelf> {
    const { book } = this.#ctx;
    await book.ready;
    return { kind: this.#kind, states: await book.everything(), who: { me: book.me, device: book.device } };
  }

  async #out(): Promise<void> {
    this.#busy(true);
    let words = "";
    const failed = await attempt(this.#ctx, async () => {
      const text = listText(await this.#shelf(), this.#decimal);
      const name = `rimside-${this.#kind}-${new Date().toISOString().slice(0, 10)}.csv`;
      words = handedWords(await handOver(new File([text], name, { type: "text/csv" })), name);
    });
    this.#busy(false);
    this.#outcome.view = { words: failed || words, failed: failed !== "" };
  }

  async #in(): Promise<void> {
    const file = this.#file.files?.[0];
    if (file === undefined) return;
    this.#busy(true);
    const failed = await attempt(this.#ctx, async () => {
      // One byte over the bound is enough to refuse a file of any size.
      const bytes = new Uint8Array(await file.slice(0, mostBytes + 1).arrayBuffer());
      const shelf = await this.#shelf();
      const read = readList(bytes, shelf, newRec);
      this.#preview.view = { plan: "refused" in read ? undefined : read, kind: shelf.kind };
      this.#outcome.view = "refused" in read ? { words: read.refused, failed: true } : { words: "" };
    });
    this.#file.value = ""; // so that the same file can be chosen again
    this.#busy(false);
    if (failed !== "") this.#outcome.view = { words: failed, failed: true };
    else if (!this.#preview.hidden) this.#preview.arrive();
  }

  #leave(): void {
    this.#preview.view = { plan: undefined, kind: this.#kind };
    this.#outcome.view = { words: w("list.left") };
    this.#file.focus();
  }

  async #take(plan: ListPlan): Promise<void> {
    this.#busy(true);
    let states: readonly RecordState[] = [];
    const failed = await attempt(this.#ctx, async () => (states = await this.#ctx.book.save(plan.changes)));
    this.#busy(false);
    if (failed !== "") {
      this.#outcome.view = { words: failed, failed: true };
      return;
    }
    this.#preview.view = { plan: undefined, kind: this.#kind };
    this.#outcome.view = { words: w("list.taken", { fresh: plan.fresh, changed: plan.changed }), undo: () => void this.#undo(plan, states) };
    this.#file.focus();
  }

  async #undo({ changes }: ListPlan, states: readonly RecordState[]): Promise<void> {
    const added = new Set(changes.filter(({ shown }) => shown === undefined).map(({ rec }) => rec));
    const { book } = this.#ctx;
    const failed = await attempt(this.#ctx, async () => {
      const back = undone(changes, states);
      if (back.length > 0) await book.save(back);
      await book.remove(...states.filter(({ rec }) => added.has(rec)));
    });
    this.#outcome.view = failed === "" ? { words: w("list.undone") } : { words: failed, failed: true };
  }

  #busy(busy: boolean): void {
    this.#save.disabled = busy;
    this.#file.disabled = busy;
    if (busy) this.#outcome.view = { words: w("list.working") };
  }
}

function handedWords(handed: Handed, name: string): string {
  switch (handed) {
    case "shared": return w("list.shared");
    case "saved": return w("list.saved", { name });
    case "kept": return w("list.kept");
  }
}

export function lists(host: HTMLElement, ctx: Ctx): void {
  new Lists(host, ctx);
}
