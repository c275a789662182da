// One thing that can be measured: its newest values with their age and what to mind, and how they went.

import "./measured.css";
import type { MeasuredGroup, MeasuredLine } from "../../book/wheels/measure_view.ts";
import { el } from "../../ui/el.ts";
import { keyed } from "../../ui/keyed.ts";
import { define, Part, setAttr, setHidden, setText } from "../../ui/part.ts";
import { w } from "../../words/index.ts";
import { TrendPart } from "./measure_trend.ts";

export interface MeasuredShown {
  readonly group: MeasuredGroup;
  readonly link: boolean; // with a way to measure
}

export class MeasuredPart extends Part<MeasuredShown> {
  readonly #title = el("h3");
  readonly #link = el("a", { class: "button" });
  readonly #none = el("p", { class: "quiet small" }, w("measured.nothing"));
  readonly #lines = el("div", { class: "stack" });

  protected override build(): void {
    this.append(el("div", { class: "row spread" }, this.#title, this.#link), this.#none, this.#lines);
  }

  protected override show({ group, link }: MeasuredShown): void {
    setText(this.#title, group.title);
    setText(this.#link, group.link);
    setAttr(this.#link, "href", group.href);
    setAttr(this.#link, "aria-label", group.spoken);
    setHidden(this.#link, !link);
    setHidden(this.#none, group.lines.length > 0);
    keyed(this.#lines, group.lines, ({ key }) => key, () => new LinePart(), (part, line) => (part.view = line));
  }
}

class LinePart extends Part<MeasuredLine> {
  readonly #label = el("span", { class: "quiet" });
  readonly #value = el("strong");
  readonly #about = el("span", { class: "quiet small" });
  readonly #notices = el("div", { class: "stack" });
  readonly #trend = new TrendPart();

  protected override build(): void {
    this.append(el("p", {}, this.#label, " ", this.#value, " ", this.#about), this.#notices, this.#trend);
  }

  protected override show({ label, value, about, notices, trend }: MeasuredLine): void {
    setText(this.#label, label);
    setText(this.#value, value);
    setText(this.#about, about);
    keyed(this.#notices, notices, ({ text }) => text, () => el("p"), (node, { severity, text }) => {
      setAttr(node, "class", severity === "note" ? "small" : `notice ${severity}`);
      setText(node, text);
    });
    setHidden(this.#trend, trend === undefined);
    if (trend !== undefined) this.#trend.view = trend;
  }
}

define("rs-measured", MeasuredPart);
define("rs-measured-line", LinePart);
