// What the pages to print share: the way back, and when they look again.

import { el } from "../../../ui/el.ts";
import type { Ctx } from "../../../ui/screen.ts";
import { w } from "../../../words/index.ts";

// openPrint sets the heading and the way back.
export function openPrint(ctx: Ctx, title: string): void {
  ctx.heading(title);
  ctx.head.append(el("nav", { class: "print-back", "aria-label": w("print.back") },
    el("a", { class: "button quiet", href: "#/pressure" }, el("span", { "aria-hidden": "true" }, "‹"), w("place.pressure"))));
}

export function nothingYet(): HTMLElement {
  return el("div", { class: "card stack" }, el("p", {}, w("print.none")), el("p", {}, el("a", { class: "button", href: "#/pressure" }, w("print.go"))));
}

const rest = 250; // ms between two looks while much arrives at once

// follow calls again when the book or a setting changes, until the screen closes.
export function follow(ctx: Ctx, again: () => void): void {
  let timer: ReturnType<typeof setTimeout> | undefined;
  const soon = (): void => {
    clearTimeout(timer);
    timer = setTimeout(again, rest);
  };
  ctx.closed.addEventListener("abort", ctx.book.on(soon));
  ctx.closed.addEventListener("abort", ctx.drafts.follow("pressure", soon));
  ctx.closed.addEventListener("abort", () => clearTimeout(timer));
  ctx.onSettings(soon);
}
