// Everything in the book as one file: out to wherever the person wants it, and back in.

import "../../ui/pick.css";
import "./copies.css";
import { reasonOf } from "../../book/settings/rejected_view.ts";
import { copyReminder } from "../../book/settings/copy_age.ts";
import type { BadLine, ImportResult } from "../../log/sync/transfer.ts";
import { el } from "../../ui/el.ts";
import { define, Part, setHidden, setText } from "../../ui/part.ts";
import type { Ctx } from "../../ui/screen.ts";
import { sentences, w } from "../../words/index.ts";
import { attempt, follow } from "../shared/follow.ts";
import type { Handed } from "../../ui/hand_over.ts";
import { handCopy } from "./hand_copy.ts";

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
  readonly #due = el("p", { class: "notice care" });
  readonly #words = el("p", { role: "status" });
  readonly #bad = el("ul");
  readonly #other = el("button", { type: "button", class: "button", on: { click: () => void this.#openOther() } }, w("copies.openOther"));

  protected override build(): void {
    this.append(el("section", { class: "card stack" },
      el("h2", {}, w("copies.title")), el("p", { class: "quiet" }, w("copies.intro")), this.#due,
      el("div", { class: "row" }, this.#save, el("label", { class: "button pick" }, w("copies.bring"), this.#file)),
      this.#words, this.#bad, this.#other));
    this.view = quiet;
    setHidden(this.#due, true);
  }

  // remind says when the book stands on this phone alone for too long.
  async remind(ctx: Ctx): Promise<void> {
    const since = await ctx.book.uncopiedSince();
    const words = copyReminder({ met: ctx.sync.state.lastMet !== undefined, since, now: Date.now() });
    setText(this.#due, words);
    setHidden(this.#due, words === "");
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
      ({ handed, name } = await handCopy(ctx.book));
    });
    if (failed === "") await this.remind(ctx);
    this.view = { ...quiet, words: failed === "" ? handedWords(handed, name) : failed };
  }

  async #in(): Promise<void> {
    const [{ ctx }, file] = [this, this.#file.files?.[0]];
    if (ctx === undefined || file === undefined) return;
    this.view = { ...quiet, words: w("copies.reading"), busy: true };
    let result: ImportResult & { readonly opens?: boolean } | undefined;
    const failed = await attempt(ctx, async () => (result = await ctx.book.bringBook(file)));
    this.#file.value = ""; // so that the same file can be chosen again
    if (failed === "" && result?.opens === true) {
      noteBrought(resultView(result));
      location.reload();
      return;
    }
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

function readWords({ stored, known, bad, records, photos }: ImportResult & { kind: "read" }): string {
  return sentences([
    w("copies.read", { fresh: stored.length, known, bad: bad.length }),
    ...(records > 0 ? [w("copies.records", { n: records })] : []),
    ...(photos > 0 ? [w("copies.photos", { n: photos })] : []),
  ]);
}

const brought = "rimside-brought"; // what is still to be said after the page was loaded anew

function noteBrought(view: CopiesView): void {
  try {
    sessionStorage.setItem(brought, JSON.stringify(view));
  } catch {
    // only the counts are not told
  }
}

function takeBrought(): CopiesView {
  try {
    const text = sessionStorage.getItem(brought);
    sessionStorage.removeItem(brought);
    return text === null ? quiet : { ...quiet, ...(JSON.parse(text) as Partial<CopiesView>) };
  } catch {
    return quiet;
  }
}

function resultView(result: ImportResult): CopiesView {
  switch (result.kind) {
    case "read": return { ...quiet, words: readWords(result), bad: result.bad };
    case "not_ours": return { ...quiet, words: w("copies.notOurs") };
    case "newer": return { ...quiet, words: w("copies.newer") };
    case "other_book": return { ...quiet, words: w("copies.otherBook"), otherBook: result.book };
  }
}

export function copiesCard(ctx: Ctx): HTMLElement {
  const card = new CopiesCard();
  card.ctx = ctx;
  card.view = takeBrought();
  const remind = (): void => void card.remind(ctx).catch(() => undefined); // the status line tells of a refusal
  follow(ctx, () => card.remind(ctx), remind);
  ctx.closed.addEventListener("abort", ctx.sync.on(remind));
  return card;
}

define("rs-copies", CopiesCard);
