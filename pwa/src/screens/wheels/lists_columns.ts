// What a list's columns hold, and how a list is read.

import { columnsOf, idColumn, type ListKind, standWords } from "../../book/wheels/lists/lists.ts";
import { fieldWords } from "../../book/value/kind_words.ts";
import { el } from "../../ui/el.ts";
import { fold } from "../../ui/fold.ts";
import { define, Part } from "../../ui/part.ts";
import { w } from "../../words/index.ts";

export class ColumnList extends Part<ListKind> {
  readonly #list = el("dl", { class: "columns-of-list" });

  protected override build(): void {
    this.append(fold(w("list.columns"), this.#list));
  }

  protected override show(kind: ListKind): void {
    this.#list.replaceChildren(...columnsOf(kind).flatMap((column) => [
      el("dt", {}, el("code", {}, column.name)),
      el("dd", { class: "small" }, w("list.column", { what: fieldWords(kind, column.name), stand: standWords(column) })),
    ]));
    this.#list.prepend(el("dt", {}, el("code", {}, idColumn)), el("dd", { class: "small" }, w("list.id")));
  }
}

export function rulesCard(): HTMLElement {
  return fold(w("list.rules"), el("ul", { class: "stack" },
    ...[w("list.ruleId"), w("list.ruleEmpty"), w("list.ruleFree"), w("list.ruleName"), w("list.ruleGuard"), w("list.ruleWeight")].map((rule) => el("li", {}, rule))));
}

define("rs-list-columns", ColumnList);
