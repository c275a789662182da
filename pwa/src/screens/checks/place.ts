// A place on the wheel: twelve hours round a drawn wheel, to press; for those who listen, twelve choices and none.

import { el, svg } from "../../ui/el.ts";
import { actName, define, Part } from "../../ui/part.ts";
import { w } from "../../words/index.ts";

export interface PlaceView {
  readonly name: string; // of the group; no other on the page has it
  readonly clock: number; // 1 to 12, 0 for none
}

export const placed = actName<number>("rs-placed");

const hours = [12, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11] as const;

export class WheelPlace extends Part<PlaceView> {
  readonly #radios = new Map<number, HTMLInputElement>();
  readonly #dial = el("div", { class: "dial" });

  protected override build(): void {
    this.append(el("fieldset", {}, el("legend", {}, w("checks.clock")), this.#dial));
  }

  protected override show({ name, clock }: PlaceView): void {
    if (this.#radios.size === 0) this.#fill(name);
    for (const [hour, radio] of this.#radios) radio.checked = hour === clock;
  }

  #fill(name: string): void {
    const option = (hour: number, shown: string, spoken: string): HTMLElement => {
      const radio = el("input", { type: "radio", name: `${name}.clock`, value: hour, "aria-label": spoken, on: { change: () => this.act(placed, hour) } });
      this.#radios.set(hour, radio);
      return el("label", { class: hour === 0 ? "nowhere" : `hour at-${hour}` }, radio, el("span", { "aria-hidden": "true" }, shown));
    };
    this.#dial.append(wheel(), ...hours.map((hour) => option(hour, String(hour), w("checks.clockAt", { n: hour }))), option(0, w("checks.noPlace"), w("checks.noPlace")));
  }
}

function wheel(): SVGElement {
  const spokes = hours.map((hour) => {
    const angle = (hour * Math.PI) / 6;
    return `M${(50 + 6 * Math.sin(angle)).toFixed(1)} ${(50 - 6 * Math.cos(angle)).toFixed(1)}L${(50 + 38 * Math.sin(angle)).toFixed(1)} ${(50 - 38 * Math.cos(angle)).toFixed(1)}`;
  }).join("");
  const line = { fill: "none", stroke: "currentColor", "stroke-width": 1.5 };
  return svg("svg", { viewBox: "0 0 100 100", "aria-hidden": "true", focusable: "false" },
    svg("circle", { cx: 50, cy: 50, r: 47, ...line, "stroke-width": 4 }), svg("circle", { cx: 50, cy: 50, r: 39, ...line }),
    svg("circle", { cx: 50, cy: 50, r: 6, ...line }), svg("path", { d: spokes, ...line, "stroke-width": 0.75 }),
    svg("path", { d: "M50 89v-8", ...line, "stroke-width": 3 })); // the valve
}

define("rs-wheel-place", WheelPlace);
