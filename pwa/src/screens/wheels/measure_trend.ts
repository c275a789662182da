// How a measured value went: a small chart with the limit as a line, and the same as a list.

import "./measured.css";
import type { Trend } from "../../book/wheels/measure_view.ts";
import { daysFrom } from "../../book/wheels/measure_days.ts";
import { el, svg } from "../../ui/el.ts";
import { keyed } from "../../ui/keyed.ts";
import { actName, define, Part, setAttr, setText } from "../../ui/part.ts";
import { w } from "../../words/index.ts";

export const dropped = actName<string>("rs-measure-dropped"); // the entry that a person takes away

const wide = 320;
const base = 100;
const top = 22;
const edge = 10;

export class TrendPart extends Part<Trend> {
  readonly #picture = el("div");
  readonly #summary = el("summary");
  readonly #list = el("ul", { class: "unmarked small" });
  #drawn = "";

  protected override build(): void {
    this.append(this.#picture, el("details", {}, this.#summary, this.#list));
  }

  protected override show(trend: Trend): void {
    const drawn = JSON.stringify([trend.points, trend.limit]);
    if (drawn !== this.#drawn) this.#picture.replaceChildren(...(trend.points.length < 2 ? [] : [draw(trend)]));
    this.#drawn = drawn;
    setText(this.#summary, w("measured.values", { n: trend.points.length }));
    keyed(this.#list, [...trend.points].reverse(), ({ key }) => key, () => this.#line(), (node, { words, about }) => {
      const [text, button] = node.children;
      if (text === undefined || button === undefined) return;
      setText(text, w("measured.one", { value: words, about }));
      setAttr(button, "aria-label", w("measured.dropOf", { value: words, about }));
    });
  }

  #line(): HTMLLIElement {
    const drop = (): void => {
      const place = [...this.#list.children].indexOf(node);
      this.act(dropped, [...(this.view?.points ?? [])].reverse()[place]?.key ?? "");
    };
    const node = el("li", { class: "row spread" }, el("span"), el("button", { type: "button", class: "button quiet", on: { click: drop } }, w("measured.drop")));
    return node;
  }
}

function draw({ title, points, limit, write }: Trend): SVGSVGElement {
  const [first, last] = [points[0], points.at(-1)];
  if (first === undefined || last === undefined) return svg("svg");
  const values = [...points.map(({ value }) => value), ...(limit === undefined ? [] : [limit.value])];
  const [low, high] = [Math.min(...values), Math.max(...values)];
  const span = Math.max(1, daysFrom(first.day, last.day));
  // Several on one day stand beside each other, in their order.
  const same = first.day === last.day;
  const x = (n: number): number => edge + (wide - 2 * edge) * (same ? n / (points.length - 1) : daysFrom(first.day, points[n]?.day ?? first.day) / span);
  const y = (value: number): number => (high === low ? (base + top) / 2 : base - 12 - ((value - low) / (high - low)) * (base - 12 - top));
  const said = w("measured.chart", { what: title, first: first.words, last: last.words });
  const name = limit === undefined ? said : w("measured.chartLimit", { chart: said, limit: limit.label });
  const text = (at: number, height: number, words: string, anchor: string): SVGElement => svg("text", { x: at, y: height, "text-anchor": anchor }, words);
  const above = (value: number): number => (limit !== undefined && value < limit.value ? y(value) + 18 : y(value) - 9);
  return svg("svg", { viewBox: `0 0 ${wide} ${base + 10}`, role: "img", "aria-label": name },
    ...(limit === undefined ? [] : [svg("path", { d: `M0 ${y(limit.value)}H${wide}`, class: "limit" })]),
    svg("path", { d: points.map(({ value }, n) => `${n === 0 ? "M" : "L"}${x(n).toFixed(1)} ${y(value).toFixed(1)}`).join(""), class: "course" }),
    ...points.map(({ value }, n) => svg("circle", { cx: x(n), cy: y(value), r: n === points.length - 1 ? 6 : 4 })),
    ...(limit === undefined ? [] : [text(0, y(limit.value) + (limit.value === high ? -6 : 15), limit.label, "start")]),
    text(0, above(first.value), write(first.value), "start"), text(wide, above(last.value), write(last.value), "end"));
}

define("rs-trend", TrendPart);
