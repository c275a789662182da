// The curve of each wheel and where its numbers come from: a page for each, opened by its line.

import type { Side } from "../../../book/pressure/answer.ts";
import type { ScreenView } from "../../../book/pressure/screen_view.ts";
import type { Row } from "../../../book/pressure/why_view.ts";
import { Chart } from "../../../ui/chart.ts";
import { el } from "../../../ui/el.ts";
import { keyed } from "../../../ui/keyed.ts";
import { define, Part, setHidden, setText } from "../../../ui/part.ts";
import { w } from "../../../words/index.ts";

type Curves = ScreenView["curves"];

interface OneWheel {
  readonly box: HTMLElement;
  readonly chart: Chart;
  readonly rows: HTMLElement;
  readonly remark: HTMLElement;
}

export class Why extends Part<Curves> {
  readonly #wheels = new Map<Side, OneWheel>();

  protected override build(): void {
    this.append(el("div", { class: "stack" }, this.#wheel("front"), this.#wheel("rear")));
  }

  #wheel(side: Side): HTMLElement {
    const chart = new Chart();
    const rows = el("div", { class: "why" });
    const remark = el("p", { class: "small" });
    const box = el("section", { class: "card stack" },
      el("h2", {}, `${w(`side.${side}`)}: ${w("part.curve")}`), chart,
      el("details", {}, el("summary", {}, w("part.whyOf", { side: w(`side.${side}`) })),
        el("div", { class: "stack" }, el("p", { class: "small quiet" }, w("why.atRide")), rows, remark,
          el("p", { class: "small" }, w("why.model")), el("p", { class: "small" }, w("why.caution")),
          el("p", { class: "small quiet" }, w("why.sources")))));
    this.#wheels.set(side, { box, chart, rows, remark });
    return box;
  }

  #shown: Curves | undefined; // an answer's curves are drawn once

  protected override show(view: Curves): void {
    if (view === this.#shown) return;
    this.#shown = view;
    for (const [side, { box, chart, rows, remark }] of this.#wheels) {
      const one = view.find((each) => each.side === side);
      setHidden(box, one === undefined || one.rows.length === 0);
      setHidden(chart, one?.curve === undefined);
      if (one?.curve !== undefined) chart.view = one.curve;
      setText(remark, one?.remark ?? "");
      setHidden(remark, one?.remark === "");
      keyed(rows, one?.rows ?? [], (each) => `${each.label} ${each.page === undefined}`, () => new Reason(), (node, row) => (node.view = row)); // what is open stays open
    }
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
