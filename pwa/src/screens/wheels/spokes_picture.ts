// A wheel with its spokes: how far each stands from the mean of its side, seen from the right, the valve on top.

import "./spokes.css";
import type { SpokeShown, SpokesShown } from "../../book/wheels/spokes_view.ts";
import { spokeOutlier } from "../../contract/contract.ts";
import { el, svg } from "../../ui/el.ts";
import { define, Part, setText } from "../../ui/part.ts";
import { w } from "../../words/index.ts";
import { fixed } from "../../words/number.ts";

export interface PictureView {
  readonly shown: SpokesShown;
  readonly at: string; // key of the spoke that is next
}

const middle = 170;
const hub = 24;
const even = 112; // radius of the ring on which a spoke with no deviation ends
const reach = 70; // how far a deviation of all the mean leads
const rim = 148;

export class SpokesPicture extends Part<PictureView> {
  readonly #drawing = el("div", { class: "picture" });
  readonly #key = el("p", { class: "small quiet" });

  protected override build(): void {
    this.append(this.#drawing, this.#key);
    setText(this.#key, w("spokes.pictureKey", { percent: fixed(spokeOutlier * 100, 0) }));
  }

  protected override show({ shown, at }: PictureView): void {
    const { spokes } = shown;
    const turn = (spoke: SpokeShown): number => ((2 * (spoke.n - 1) + (spoke.side === "left" ? 0.5 : 1.5)) / Math.max(1, spokes.length)) * 2 * Math.PI;
    const picture = svg("svg", { viewBox: "0 0 340 340", role: "img", "aria-label": shown.picture },
      ring(rim, "rim"), ring(hub, "rim"), ring(even, "even"), ring(even + spokeOutlier * reach, "limit"), ring(even - spokeOutlier * reach, "limit"),
      svg("path", { class: "valve", d: `M${middle - 4} ${middle - rim + 2}h8v16h-8z` }),
      ...spokes.map((spoke) => drawn(spoke, turn(spoke), spoke.key === at)));
    this.#drawing.replaceChildren(picture);
  }
}

function ring(r: number, kind: string): SVGElement {
  return svg("circle", { cx: middle, cy: middle, r, class: kind });
}

function drawn(spoke: SpokeShown, angle: number, next: boolean): SVGElement {
  const [x, y] = [Math.sin(angle), -Math.cos(angle)];
  const point = (r: number): string => `${(middle + r * x).toFixed(1)} ${(middle + r * y).toFixed(1)}`;
  const by = Math.max(-1, Math.min(0.45, spoke.deviation ?? 0));
  const end = even + reach * by;
  const parts: SVGElement[] = [svg("path", { class: "thin", d: `M${point(hub)}L${point(rim)}` })];
  if (spoke.mark === "none" || spoke.mark === "out") {
    parts.push(svg("path", { class: `bar ${spoke.side}`, d: `M${point(hub + 4)}L${point(end)}` }));
    if (spoke.side === "right") parts.push(svg("path", { class: "hollow", d: `M${point(hub + 6)}L${point(end - 2)}` }));
  }
  if (spoke.mark === "out") parts.push(sign(angle, "M0-8 7 5H-7z", "out"));
  if (spoke.mark === "slack") parts.push(sign(angle, "M-6-6 6 6M6-6-6 6", "slack"));
  if (next) parts.push(svg("circle", { class: "next", cx: middle + rim * x, cy: middle + rim * y, r: 6 }));
  return svg("g", { class: spoke.mark }, ...parts);
}

// sign stands outside the rim, beside its spoke.
function sign(angle: number, d: string, kind: string): SVGElement {
  const r = rim + 12;
  return svg("path", { class: `sign ${kind}`, d, transform: `translate(${(middle + r * Math.sin(angle)).toFixed(1)} ${(middle - r * Math.cos(angle)).toFixed(1)})` });
}

define("rs-spokes-picture", SpokesPicture);
