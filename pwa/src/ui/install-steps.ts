// How to install, in steps, for the browser at hand.

import { type Key, w } from "../words/index.ts";
import { el } from "./el.ts";
import { install, installWay, type InstallWay } from "./install-prompt.ts";
import { define, Part } from "./part.ts";

type Plain = "install.ios.1" | "install.ios.2" | "install.ios.3" | "install.menu.1" | "install.menu.2" | "install.menu.3";

const steps: Partial<Record<InstallWay, readonly (Plain & Key)[]>> = {
  ios: ["install.ios.1", "install.ios.2", "install.ios.3"],
  menu: ["install.menu.1", "install.menu.2", "install.menu.3"],
};

export class InstallSteps extends Part<InstallWay> {
  protected override build(): void {}

  protected override show(way: InstallWay): void {
    const list = steps[way];
    this.replaceChildren(el("div", { class: "stack" },
      way === "done" && el("p", {}, w("install.done")),
      way === "button" && el("p", {},
        el("button", { type: "button", class: "button", on: { click: () => void install() } }, w("install.button"))),
      list !== undefined && el("ol", {}, ...list.map((key) => el("li", {}, w(key)))),
      way === "ios" && el("p", {}, w("install.ios.storage"))));
  }
}

// installSteps makes the steps for the browser at hand.
export function installSteps(): InstallSteps {
  const part = new InstallSteps();
  part.view = installWay();
  return part;
}

define("rs-install-steps", InstallSteps);
