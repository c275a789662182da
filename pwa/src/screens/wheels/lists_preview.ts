// What a file would change, before it does: how many records, which rows are left out and why.

import type { ListKind } from "../../book/wheels/lists/lists.ts";
import type { ListPlan } from "../../book/wheels/lists/lists_read.ts";
import { el } from "../../ui/el.ts";
import { actName, define, Part, setHidden, setText } from "../../ui/part.ts";
import { listed, w } from "../../words/index.ts";

export const listTaken = actName<ListPlan>("rs-list-taken");
export const listLeft = actName<undefined>("rs-list-left");

export interface PreviewView {
  readonly plan: ListPlan | undefined; // undefined: no file is being looked at
  readonly kind: ListKind;
}

const named = 20; // lines that are told one by one

export class ListPreview extends Part<PreviewView> {
  readonly #title = el("h2", { tabindex: -1 });
  readonly #sum = el("p");
  readonly #reasons = el("ul");
  readonly #edits = el("ul");
  readonly #why = el("div", { class: "notice care stack" }, el("h3", {}, w("list.reasons")), this.#reasons);
  readonly #what = el("div", { class: "stack" }, el("h3", {}, w("list.edits")), this.#edits);
  readonly #unknown = el("p", { class: "notice" });
  readonly #take = el("button", { type: "button", class: "button primary", on: { click: () => this.#taken() } }, w("list.take"));

  protected override build(): void {
    this.hidden = true;
    this.append(el("section", { class: "card stack" }, this.#title, this.#sum, this.#why, this.#what, this.#unknown,
      el("div", { class: "row" }, this.#take,
        el("button", { type: "button", class: "button", on: { click: () => this.act(listLeft, undefined) } }, w("list.leave")))));
  }

  protected override show({ plan, kind }: PreviewView): void {
    setHidden(this, plan === undefined);
    if (plan === undefined) return;
    const { fresh, changed, left, same, reasons, edits, unknown } = plan;
    setText(this.#title, w("list.preview", { list: w(`list.of.${kind}`) }));
    setText(this.#sum, w("list.sum", { fresh, changed, left, same }));
    fill(this.#reasons, reasons);
    setHidden(this.#why, reasons.length === 0);
    fill(this.#edits, edits);
    setHidden(this.#what, edits.length === 0);
    setText(this.#unknown, w("list.unknown", { columns: listed(firstOf(unknown)) }));
    setHidden(this.#unknown, unknown.length === 0);
    setHidden(this.#take, fresh + changed === 0);
  }

  #taken(): void {
    const plan = this.view?.plan;
    if (plan !== undefined) this.act(listTaken, plan);
  }

  // arrive brings the person to it: it stands below what they pressed.
  arrive(): void {
    this.#title.focus();
    this.scrollIntoView({ block: "nearest" });
  }
}

function firstOf(lines: readonly string[]): readonly string[] {
  return lines.length <= named ? lines : [...lines.slice(0, named), w("list.more", { n: lines.length - named })];
}

function fill(list: HTMLElement, lines: readonly string[]): void {
  list.replaceChildren(...firstOf(lines).map((line) => el("li", {}, line)));
}

define("rs-list-preview", ListPreview);
