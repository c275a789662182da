// The card of a wheel's page: when its spokes were last heard, and the way to hear them again.

import { lastSpokes } from "../../book/wheels/spokes.ts";
import { lastWords } from "../../book/wheels/spokes_view.ts";
import { el } from "../../ui/el.ts";
import { setText } from "../../ui/part.ts";
import type { Ctx } from "../../ui/screen.ts";
import { w } from "../../words/index.ts";
import { follow } from "../shared/follow.ts";

export function spokesCard(ctx: Ctx, rec: string): HTMLElement {
  const last = el("p");
  follow(ctx, async () => {
    await ctx.book.ready;
    setText(last, lastWords(lastSpokes(await ctx.book.all("measure"), rec), Date.now()));
  }, (words) => setText(last, words));
  return el("section", { class: "card stack" }, el("h2", {}, w("spokes.card")), last, el("a", { class: "button", href: `#/wheels/spokes/${rec}` }, w("spokes.open")));
}
