// How to install, which version this is, and the way to the repair page.

import { el } from "../../ui/el.ts";
import { installWay, onInstallWay } from "../../ui/install-prompt.ts";
import { installSteps } from "../../ui/install-steps.ts";
import { w } from "../../words/index.ts";

export function installCard(closed: AbortSignal): HTMLElement {
  const steps = installSteps();
  onInstallWay(() => (steps.view = installWay()), closed);
  return el("section", { class: "card stack" }, el("h2", {}, w("settings.install")), steps);
}

export function versionCard(): HTMLElement {
  const version = document.documentElement.dataset["version"] ?? "";
  return el("section", { class: "card stack" },
    el("h2", {}, w("version.title")),
    el("p", {}, w("version.number", { version })),
    // Leaves the app: the repair page works without it.
    el("p", {}, el("a", { class: "button quiet", href: "recover" }, w("version.recover"))));
}
