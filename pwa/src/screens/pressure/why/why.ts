// The curve of one wheel and where its numbers come from: a page for each, opened by its line.

import "../ride/beside.css";
import type { WhyView } from "../../../book/pressure/reasons.ts";
import type { Row } from "../../../book/pressure/why_view.ts";
import { Chart } from "../../../ui/chart.ts";
import { el } from "../../../ui/el.ts";
import { keyed } from "../../../ui/keyed.ts";
import { define, Part, setHidden, setText } from "../../../ui/part.ts";
import { w } from "../../../words/index.ts";

export class Why extends Part<WhyView> {
  readonly #chart = new Chart();
  readonly #rows = el("div", { class: "why" });
  readonly #remark = el("p", { class: "small" });
  #shown: WhyView | undefined; // an answer's curve is drawn once

  protected override build(): void {
    this.append(el("div", { class: "stack" }, el("section", { class: "card stack" }, this.#chart), el("p", { class: "small quiet" }, w("why.atRide")), this.#rows, this.#remark,
      el("p", { class: "small" }, w("why.model")), el("p", { class: "small" }, w("why.caution")), el("p", { class: "small quiet" }, w("why.sources"))));
  }

  protected override show(view: WhyView): void {
    if (view === this.#shown) return;
    this.#shown = view;
    setHidden(this.#chart, view.curve === undefined);
    if (view.curve !== undefined) this.#chart.view = view.curve;
    setText(this.#remark, view.remark);
    setHidden(this.#remark, view.remark === "");
    keyed(this.#rows, view.rows, (each) => `${each.label} ${each.page === undefined}`, () => new Reason(), (node, row) => (node.view = row)); // what is open stays open
  }
}

// Reason is one number with its page, if it has one.
class Reason extends Part<Row> {
  readonly #label = el("span");
  readonly #value = el("strong");
  readonly #line = el("span", { class: "line" }, this.#label, this.#value);
  readonly #page = (["uses", "how", "source", "sure"] as const).map((name) => ({ name, text: el("dd") }));

  protected override build(): void {
    if (this.view?.page === undefined) this.append(this.#line);
    else {
      const parts = this.#page.map(({ name, text }) => el("div", {}, el("dt", {}, w(`whyPart.${name}`)), text));
      this.append(el("details", {}, el("summary", {}, this.#line), el("dl", { class: "small" }, ...parts)));
    }
  }

  protected override show({ label, value, page }: Row): void {
    setText(this.#label, label);
    setText(this.#value, value);
    for (const { name, text } of this.#page) setText(text, page?.[name] ?? "");
  }
}

define("rs-reason", Reason);
define("rs-why", Why);
