// The day's ground as a strip: each stretch as long as its share, its stones drawn at their size.

import type { StretchDraft } from "../../../book/pressure/draft.ts";
import type { GroundKind } from "../../../book/pressure/fields.ts";
import { parse } from "../../../book/value/quantity.ts";
import { svg } from "../../../ui/el.ts";
import { define, Part } from "../../../ui/part.ts";
import { w } from "../../../words/index.ts";

const wide = 340;
const tall = 44;

// Radius of a stone in the drawing; sealed ground has none.
const stones: Partial<Record<GroundKind, number>> = { rice: 1, pea: 1.8, walnut: 3.2, egg: 4.6, fist: 6.5 };

export class GroundStrip extends Part<readonly StretchDraft[]> {
  #drawn: readonly StretchDraft[] | undefined; // hundreds of stones: drawn only when the ground changes

  protected override build(): void {}

  protected override show(ground: readonly StretchDraft[]): void {
    if (ground === this.#drawn) return;
    this.#drawn = ground;
    const lengths = ground.map((each) => lengthOf(each, ground.length));
    const all = lengths.reduce((sum, x) => sum + x, 0) || 1;
    const spoken = ground.map((each, i) => (ground.length === 1 ? nameOf(each) : w("ground.part", { kind: nameOf(each), km: lengths[i] ?? 0 }))).join(", ");
    const picture = svg("svg", { viewBox: `0 0 ${wide} ${tall}`, role: "img", "aria-label": w("ground.strip", { list: spoken }) });
    let from = 1;
    ground.forEach((each, i) => {
      const width = ((lengths[i] ?? 0) / all) * (wide - 2);
      picture.append(...stretch(each, from, width));
      from += width;
      if (i < ground.length - 1) picture.append(svg("path", { d: `M${from} 1V${tall - 1}`, class: "edge" }));
    });
    picture.append(svg("rect", { x: 1, y: 1, width: wide - 2, height: tall - 2, rx: 9, class: "edge" }));
    this.replaceChildren(picture);
  }
}

function lengthOf(stretch: StretchDraft, count: number): number {
  const km = parse(stretch.km, "distance", "km");
  return "si" in km && km.si > 0 ? km.si / 1000 : count === 1 ? 1 : 0;
}

function nameOf(stretch: StretchDraft): string {
  return w(`short.${stretch.kind as GroundKind | "typed"}`);
}

function stretch(each: StretchDraft, from: number, width: number): readonly SVGElement[] {
  if (width <= 0) return [];
  const out: SVGElement[] = [];
  const radius = stones[each.kind as GroundKind];
  if (radius !== undefined) out.push(...dots(radius, from, width));
  if (each.kind === "setts") out.push(...blocks(from, width));
  if (each.kind === "soft") out.push(...waves(from, width));
  const name = nameOf(each);
  if (width > name.length * 7 + 8) {
    const half = name.length * 3.6 + 5;
    out.push(svg("rect", { x: from + width / 2 - half, y: 11, width: half * 2, height: 22, rx: 4, class: "plate" }),
      svg("text", { x: from + width / 2, y: 27, "text-anchor": "middle" }, name));
  }
  return out;
}

function dots(radius: number, from: number, width: number): SVGElement[] {
  const gap = radius * 2.6 + 2.5;
  const out: SVGElement[] = [];
  for (let y = radius + 4; y < tall - radius - 2; y += gap) {
    for (let x = from + radius + 3; x < from + width - radius - 1; x += gap) out.push(svg("circle", { cx: x.toFixed(1), cy: y.toFixed(1), r: radius }));
  }
  return out;
}

function blocks(from: number, width: number): SVGElement[] {
  const out: SVGElement[] = [];
  for (let row = 0; row < 4; row++) {
    for (let x = from + 3 + (row % 2) * 6; x < from + width - 10; x += 12) {
      out.push(svg("rect", { x: x.toFixed(1), y: 4 + row * 9.5, width: 9.5, height: 7, rx: 2, class: "sett" }));
    }
  }
  return out;
}

function waves(from: number, width: number): SVGElement[] {
  const out: SVGElement[] = [];
  for (let y = 9; y < tall - 4; y += 9) {
    let d = `M${from + 3} ${y}`;
    for (let x = from + 3; x < from + width - 12; x += 10) d += "q2.5 -4 5 0t5 0";
    out.push(svg("path", { d, class: "wave" }));
  }
  return out;
}

define("rs-ground-strip", GroundStrip);
