// The day's ground as one button: its length and its strip. Behind it is the sheet of its stretches.

import { kilometres } from "../../../book/pressure/edits.ts";
import type { StretchDraft } from "../../../book/pressure/draft.ts";
import { el } from "../../../ui/el.ts";
import { actName, define, Part, setText } from "../../../ui/part.ts";
import { facts, w } from "../../../words/index.ts";
import { GroundStrip } from "./ground_strip.ts";

export const groundWanted = actName<undefined>("rs-ground-wanted");

export class GroundButton extends Part<readonly StretchDraft[]> {
  readonly #words = el("span", { class: "small" });
  readonly #strip = new GroundStrip();

  protected override build(): void {
    this.append(el("button", { type: "button", class: "ground", on: { click: () => this.act(groundWanted, undefined) } }, this.#words, this.#strip));
  }

  protected override show(ground: readonly StretchDraft[]): void {
    const km = Math.round(kilometres(ground).reduce((sum, x) => sum + x, 0));
    setText(this.#words, facts([w("part.ground"), km > 0 ? w("ground.km", { km }) : ""]));
    this.#strip.view = ground;
  }
}

define("rs-ground-button", GroundButton);
