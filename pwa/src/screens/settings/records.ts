// The page of everything in the book, by kind. Each record leads to its history; what was deleted can be restored.

import "./records.css";
import { type KindList, kindLists, type RecordLine } from "../../book/settings/record_list.ts";
import type { RecordState } from "../../log/op/merge.ts";
import { el } from "../../ui/el.ts";
import { keyed } from "../../ui/keyed.ts";
import { define, Part, setAttr, setHidden, setText } from "../../ui/part.ts";
import type { Ctx } from "../../ui/screen.ts";
import { w } from "../../words/index.ts";
import { attempt, follow, tellerFor } from "../shared/follow.ts";
import { Outcome } from "../../ui/outcome.ts";
import { historyOf, openPage } from "./page.ts";

const atFirst = 8; // records of a kind
const atOnce = 40; // more of them

interface ListView {
  readonly list: KindList;
  readonly restore: (line: RecordLine) => void;
  readonly more: () => void;
}

class KindPart extends Part<ListView> {
  readonly #title = el("h2");
  readonly #lines = el("ul", { class: "unmarked" });
  readonly #more = el("button", { type: "button", class: "button quiet flush" }, w("records.more"));

  protected override build(): void {
    this.append(el("section", { class: "card" }, this.#title, this.#lines, this.#more));
  }

  protected override show({ list, restore, more }: ListView): void {
    setText(this.#title, w("records.kind", { kind: list.title, n: list.total }));
    keyed(this.#lines, list.lines, (line) => line.rec, makeLine, (node, line) => node.show(line, restore));
    setHidden(this.#more, list.lines.length >= list.total);
    setAttr(this.#more, "aria-label", w("records.moreOf", { kind: list.title }));
    this.#more.onclick = more;
  }
}

interface LineNode extends HTMLLIElement {
  show: (line: RecordLine, restore: (line: RecordLine) => void) => void;
}

function makeLine(): LineNode {
  const name = el("span");
  const mark = el("span", { class: "quiet small" });
  const link = el("a", { class: "way" }, name, mark);
  const button = el("button", { type: "button", class: "button" }, w("records.restore"));
  const node = el("li", {}, link, button);
  const show = (line: RecordLine, restore: (line: RecordLine) => void): void => {
    setAttr(link, "href", historyOf(line.rec));
    setText(name, line.name);
    setText(mark, line.deleted ? w("records.deleted") : "");
    setHidden(button, !line.deleted);
    setAttr(button, "aria-label", w("records.restoreOf", { name: line.title }));
    button.onclick = () => restore(line);
  };
  return Object.assign(node, { show });
}

export class Records {
  readonly #ctx: Ctx;
  readonly #most = new Map<string, number>();
  readonly #none = el("p", {}, w("records.none"));
  readonly #outcome = new Outcome();
  readonly #kinds = el("div", { class: "kinds" });
  readonly #again: () => Promise<void>;

  constructor(host: HTMLElement, ctx: Ctx) {
    this.#ctx = ctx;
    openPage(ctx, w("records.title"));
    setHidden(this.#none, true);
    host.append(el("div", { class: "stack looking" }, this.#none, this.#outcome, this.#kinds));
    this.#again = follow(ctx, () => this.#look(), (words) => (this.#outcome.view = { words, failed: true }));
  }

  async #look(): Promise<void> {
    const states = await everything(this.#ctx);
    const mostOf = (kind: string): number => this.#most.get(kind) ?? atFirst;
    const teller = await tellerFor(this.#ctx, states);
    if (this.#ctx.closed.aborted) return;
    const lists = kindLists(states, teller, mostOf);
    const restore = (line: RecordLine): void => void this.#restore(line);
    keyed(this.#kinds, lists, (list) => list.kind, () => new KindPart(), (part, list) => {
      part.view = { list, restore, more: () => void this.#more(list.kind) };
    });
    setHidden(this.#none, lists.length > 0);
    this.#kinds.parentElement?.classList.remove("looking");
  }

  #more(kind: string): Promise<void> {
    this.#most.set(kind, (this.#most.get(kind) ?? atFirst) + atOnce);
    return this.#again();
  }

  async #restore({ state, title }: RecordLine): Promise<void> {
    const { book } = this.#ctx;
    const failed = await attempt(this.#ctx, () => book.restore(state));
    await this.#again();
    const restored = failed === "" ? await book.get(state.rec) : undefined;
    const undo = async (): Promise<void> => {
      const words = restored === undefined ? "" : await attempt(this.#ctx, () => book.remove(restored));
      this.#outcome.view = { words, failed: words !== "" };
    };
    this.#outcome.view = failed === "" ? { words: w("records.restored", { name: title }), undo: () => void undo() } : { words: failed, failed: true };
  }
}

// everything reads all records, also those that lists leave out.
async function everything({ book }: Ctx): Promise<readonly RecordState[]> {
  await book.ready;
  return book.everything();
}

define("rs-kind", KindPart);
