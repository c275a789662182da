// Everything in the book as one file: out to wherever the person wants it, and back in.

import "../../ui/pick.css";
import "./copies.css";
import { reasonOf } from "../../book/settings/rejected_view.ts";
import type { BadLine, ImportResult } from "../../log/sync/transfer.ts";
import { el } from "../../ui/el.ts";
import { define, Part, setHidden, setText } from "../../ui/part.ts";
import type { Ctx } from "../../ui/screen.ts";
import { w } from "../../words/index.ts";
import { attempt } from "../shared/follow.ts";
import { type Handed, handOver } from "../../ui/hand_over.ts";

interface CopiesView {
  readonly words: string;
  readonly bad: readonly BadLine[];
  readonly otherBook: string; // the file's, when it is another
  readonly busy: boolean;
}

const quiet: CopiesView = { words: "", bad: [], otherBook: "", busy: false };
const listed = 20; // bad lines that are named one by one

class CopiesCard extends Part<CopiesView> {
  ctx: Ctx | undefined;
  readonly #save = el("button", { type: "button", class: "button", on: { click: () => void this.#out() } }, w("copies.save"));
  readonly #file = el("input", { type: "file", accept: ".txt,.ndjson,.jsonl,.json,text/plain", on: { change: () => void this.#in() } });
  readonly #words = el("p", { role: "status" });
  readonly #bad = el("ul");
  readonly #other = el("button", { type: "button", class: "button", on: { click: () => void this.#openOther() } }, w("copies.openOther"));

  protected override build(): void {
    this.append(el("section", { class: "card stack" },
      el("h2", {}, w("copies.title")), el("p", { class: "quiet" }, w("copies.intro")),
      el("div", { class: "row" }, this.#save, el("label", { class: "button pick" }, w("copies.bring"), this.#file)),
      this.#words, this.#bad, this.#other));
    this.view = quiet;
  }

  protected override show({ words, bad, otherBook, busy }: CopiesView): void {
    setText(this.#words, words);
    const lines = bad.slice(0, listed).map(({ line, code }) => w("copies.badLine", { line, reason: reasonOf(code) }));
    if (bad.length > listed) lines.push(w("copies.badMore", { n: bad.length - listed }));
    this.#bad.replaceChildren(...lines.map((line) => el("li", {}, line)));
    setHidden(this.#bad, bad.length === 0);
    setHidden(this.#other, otherBook === "");
    this.#save.disabled = busy;
    this.#file.disabled = busy;
  }

  async #out(): Promise<void> {
    const { ctx } = this;
    if (ctx === undefined) return;
    this.view = { ...quiet, words: w("copies.saving"), busy: true };
    let handed: Handed = "kept";
    let name = "";
    const failed = await attempt(ctx, async () => {
      const file = await ctx.book.exportFile();
      name = file.name;
      handed = await handOver(file);
    });
    this.view = { ...quiet, words: failed === "" ? handedWords(handed, name) : failed };
  }

  async #in(): Promise<void> {
    const [{ ctx }, file] = [this, this.#file.files?.[0]];
    if (ctx === undefined || file === undefined) return;
    this.view = { ...quiet, words: w("copies.reading"), busy: true };
    let result: ImportResult | undefined;
    const failed = await attempt(ctx, async () => (result = await ctx.book.importFile(file)));
    this.#file.value = ""; // so that the same file can be chosen again
    this.view = failed === "" && result !== undefined ? resultView(result) : { ...quiet, words: failed };
  }

  async #openOther(): Promise<void> {
    const { ctx, view } = this;
    if (ctx === undefined || view === undefined) return;
    const failed = await attempt(ctx, () => ctx.book.takeBook(view.otherBook));
    if (failed === "") location.reload();
    else this.view = { ...view, words: failed };
  }
}

function handedWords(handed: Handed, name: string): string {
  switch (handed) {
    case "shared": return w("copies.shared");
    case "saved": return w("copies.saved", { name });
    case "kept": return w("copies.kept");
  }
}

function resultView(result: ImportResult): CopiesView {
  switch (result.kind) {
    case "read": return { ...quiet, words: w("copies.read", { fresh: result.stored.length, known: result.known, bad: result.bad.length }), bad: result.bad };
    case "not_ours": return { ...quiet, words: w("copies.notOurs") };
    case "newer": return { ...quiet, words: w("copies.newer") };
    case "other_book": return { ...quiet, words: w("copies.otherBook"), otherBook: result.book };
  }
}

export function copiesCard(ctx: Ctx): HTMLElement {
  const card = new CopiesCard();
  card.ctx = ctx;
  return card;
}

define("rs-copies", CopiesCard);
