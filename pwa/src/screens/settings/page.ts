// The frame of a page below Settings: its heading, and the way back for those whose phone has no back button.

import "./page.css";
import { el } from "../../ui/el.ts";
import type { Ctx } from "../../ui/screen.ts";
import { w } from "../../words/index.ts";

export interface Way {
  readonly href: string;
  readonly words: string;
}

export function openPage(ctx: Ctx, title: string, ...ways: readonly Way[]): void {
  ctx.heading(title);
  const all = [{ href: "#/settings", words: w("place.settings") }, ...ways];
  ctx.head.append(el("nav", { class: "back row", "aria-label": w("book.back") },
    ...all.map(({ href, words }) => el("a", { class: "button quiet", href }, el("span", { "aria-hidden": "true" }, "‹"), words))));
}

export const historyOf = (rec: string): string => `#/settings/history/${rec}`;
