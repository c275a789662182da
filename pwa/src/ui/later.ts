// A place that is not built yet says so, and what it will do.

import { w } from "../words/index.ts";
import { el } from "./el.ts";
import { define, Part, setText } from "./part.ts";
import type { Screen } from "./screen.ts";

export type LaterPlace = "support";

export class Later extends Part<LaterPlace> {
  readonly #text = el("p");

  protected override build(): void {
    this.append(el("div", { class: "card stack" },
      el("h2", {}, w("later.title")),
      this.#text,
      el("p", {}, el("a", { class: "button", href: "#/pressure" }, w("later.go")))));
  }

  protected override show(place: LaterPlace): void {
    setText(this.#text, w(`later.${place}`));
  }
}

// later makes the screen of a place that is not built yet.
export function later(place: LaterPlace): Screen {
  return {
    name: place,
    title: () => w(`place.${place}`),
    open(host) {
      const part = new Later();
      part.view = place;
      host.append(part);
    },
  };
}

define("rs-later", Later);
