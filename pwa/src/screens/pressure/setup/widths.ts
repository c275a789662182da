// Other widths: a table of what both wheels would ask. It is worked out when somebody opens it.

import { type Side, sides } from "../../../book/pressure/answer.ts";
import type { WidthRow } from "../../../book/pressure/widths.ts";
import { el } from "../../../ui/el.ts";
import { actName, define, Part, setHidden, setText } from "../../../ui/part.ts";
import { w } from "../../../words/index.ts";

export interface WidthsView {
  readonly rows: readonly WidthRow[];
  readonly unit: string;
  readonly state: string; // why there are no rows yet, or "" when they stand
  readonly cautions: readonly string[];
}

export const widthsOpened = actName<boolean>("rs-widths-opened");

export class Widths extends Part<WidthsView> {
  readonly #state = el("p", { role: "status" });
  readonly #body = el("tbody");
  readonly #caption = el("caption", { class: "small quiet" });
  readonly #table = el("table", {}, this.#caption, el("thead", {}, el("tr", {},
    el("th", { scope: "col" }, w("widths.printed")), ...sides.map((side) => el("th", { scope: "col" }, w(`side.${side}`))))), this.#body);
  readonly #cautions = el("div", { class: "small stack" });
  readonly #fold = el("details", {}, el("summary", {}, w("widths.title")),
    el("div", { class: "stack" }, this.#state, this.#table, this.#cautions));
  #shown: readonly WidthRow[] | undefined;

  protected override build(): void {
    this.#fold.addEventListener("toggle", () => this.act(widthsOpened, this.#fold.open));
    this.append(this.#fold);
  }

  protected override show({ rows, unit, state, cautions }: WidthsView): void {
    setText(this.#state, state);
    setHidden(this.#state, state === "");
    setHidden(this.#table, rows.length === 0);
    setHidden(this.#cautions, rows.length === 0);
    setText(this.#caption, w("widths.caption", { unit }));
    if (rows === this.#shown) return;
    this.#shown = rows;
    this.#body.replaceChildren(...rows.flatMap((row) => this.#rows(row)));
    this.#cautions.replaceChildren(...cautions.map((words) => el("p", {}, words)));
  }

  #rows(row: WidthRow): HTMLElement[] {
    const head = el("th", { scope: "row" }, w("widths.mm", { mm: row.mm }), row.mounted ? el("span", { class: "small quiet" }, w("widths.mounted")) : null);
    const number = (side: Side): HTMLElement => el("td", {}, row.numbers[side] === "" ? w("widths.none") : row.numbers[side]);
    const line = el("tr", { class: row.mounted ? "mounted" : "" }, head, ...sides.map(number));
    if (row.why.length === 0) return [line];
    const why = el("td", { class: "small" }, ...row.why.map((words) => el("p", {}, words)));
    why.colSpan = sides.length;
    return [line, el("tr", { class: "why-not" }, el("td"), why)];
  }
}

define("rs-widths", Widths);
