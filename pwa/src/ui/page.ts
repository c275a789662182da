// The frame of a page below a screen: its heading, and the way back for those whose phone has no back button.

import "./page.css";
import { w } from "../words/index.ts";
import { el } from "./el.ts";
import type { Ctx } from "./screen.ts";

export interface Way {
  readonly href: string;
  readonly words: string;
}

export function openPage(ctx: Ctx, title: string, ...ways: readonly Way[]): void {
  ctx.heading(title);
  ctx.head.append(el("nav", { class: "back row", "aria-label": w("book.back") },
    ...ways.map(({ href, words }) => el("a", { class: "button quiet", href }, el("span", { "aria-hidden": "true" }, "‹"), words))));
}
