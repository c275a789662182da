// One line that asks to install while there is signal. It opens to the steps, and goes for good when dismissed.

import "./install.css";
import { w } from "../words/index.ts";
import { el } from "./el.ts";
import { icon } from "./icons.ts";
import { installWay, onInstallWay } from "./install-prompt.ts";
import { installSteps } from "./install-steps.ts";
import { actName, define, Part, setHidden } from "./part.ts";

export interface InstallView {
  readonly wanted: boolean; // not dismissed yet
}

export const hintDismissed = actName<null>("rs-hint-dismissed");

export class InstallHint extends Part<InstallView> {
  readonly #steps = installSteps();

  protected override build(): void {
    this.append(
      el("details", {}, el("summary", {}, w("install.hint")), this.#steps),
      el("button", {
        type: "button", class: "button quiet", "aria-label": w("install.dismiss"),
        on: { click: () => this.act(hintDismissed, null) },
      }, icon("close")));
    onInstallWay(() => this.#draw());
  }

  protected override show(): void {
    this.#draw();
  }

  #draw(): void {
    const way = installWay();
    setHidden(this, this.view?.wanted !== true || way === "done");
    if (this.#steps.view !== way) this.#steps.view = way;
  }
}

define("rs-install", InstallHint);
