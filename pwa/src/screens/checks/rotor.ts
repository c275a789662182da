// Rotor care: what makes discs squeal, and what keeps them clean and straight. Words only; the maker's manual wins.

import { el } from "../../ui/el.ts";
import { openPage } from "../../ui/page.ts";
import type { Ctx } from "../../ui/screen.ts";
import { w } from "../../words/index.ts";

const parts = ["squeal", "clean", "grease", "bedding", "runout", "true", "hot"] as const;

export function rotor(host: HTMLElement, ctx: Ctx): void {
  openPage(ctx, w("rotor.title"), { href: "#/checks", words: w("place.checks") });
  host.append(el("div", { class: "columns" },
    ...parts.map((part) => el("section", { class: "card stack" }, el("h2", {}, w(`rotor.head.${part}`)), el("p", {}, w(`rotor.text.${part}`)))),
    el("section", { class: "card stack" }, el("h2", {}, w("rotor.log")), el("p", {}, w("rotor.logText")), el("p", {}, el("a", { class: "button", href: "#/wheels" }, w("rotor.toWheels")))),
    el("p", { class: "notice care" }, w("checks.defer"))));
}
