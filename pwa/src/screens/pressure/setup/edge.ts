// The rim's edge: three answers, two of them drawn as the rim looks when it is cut through.

import type { PressureDraft } from "../../../book/pressure/draft.ts";
import { chosen } from "../../../ui/choice.ts";
import { el, svg } from "../../../ui/el.ts";
import { define, Part } from "../../../ui/part.ts";
import { w } from "../../../words/index.ts";
import type { Inputs } from "./inputs.ts";

const edges = ["hooked", "hookless", "unknown"] as const;
type Edge = (typeof edges)[number];

// One wall of the rim, drawn from its bed up: with a hook at the top, or straight.
const walls: Readonly<Partial<Record<Edge, readonly string[]>>> = {
  hooked: ["M8 44V14q0-6 6-6h3v5h-2q-2 0-2 3v28", "M56 44V14q0-6-6-6h-3v5h2q2 0 2 3v28"],
  hookless: ["M8 44V8h5v36", "M56 44V8h-5v36"],
};

interface EdgeView {
  readonly group: string;
  readonly name: string;
  readonly value: string;
}

export class EdgePick extends Part<EdgeView> {
  readonly #radios = new Map<Edge, HTMLInputElement>();
  readonly #row = el("div", { class: "row edges" });

  protected override build(): void {
    this.append(el("fieldset", {}, el("legend", {}, w("pick.profile")), this.#row));
  }

  protected override show({ group, name, value }: EdgeView): void {
    if (this.#radios.size === 0) for (const edge of edges) this.#option(edge, group, name);
    for (const [edge, radio] of this.#radios) radio.checked = edge === value;
  }

  #option(edge: Edge, group: string, name: string): void {
    const radio = el("input", { type: "radio", name: group, value: edge, on: { change: () => this.act(chosen, { name, value: edge }) } });
    this.#radios.set(edge, radio);
    this.#row.append(el("label", {}, radio, drawing(edge), el("span", {}, w(`profile.${edge}`))));
  }
}

function drawing(edge: Edge): SVGElement | undefined {
  const paths = walls[edge];
  if (paths === undefined) return undefined;
  return svg("svg", { viewBox: "0 0 64 56", "aria-hidden": "true", class: "edge" },
    ...paths.map((d) => svg("path", { d })), svg("path", { d: "M8 44q12 0 16 6h16q4-6 16-6" }));
}

// edgeChoice is the pick for a wheel; group keeps the first-run form's apart.
export function edgeChoice(inputs: Inputs, side: "front" | "rear", group = ""): HTMLElement {
  const pick = new EdgePick();
  const name = `${side}.profile`;
  inputs.also(({ draft }: { readonly draft: PressureDraft }) => (pick.view = { group: `${group}${name}`, name: `${group}${name}`, value: draft.picks[name] ?? "" }));
  return pick;
}

define("rs-edge", EdgePick);
