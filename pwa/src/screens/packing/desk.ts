// The page to show at the desk: what is in the bag that is on a list, in large letters.

import "./packing.css";
import { textOf } from "../../book/checks/walk_save.ts";
import { el } from "../../ui/el.ts";
import { keyed } from "../../ui/keyed.ts";
import { openPage } from "../../ui/page.ts";
import { setHidden, setText } from "../../ui/part.ts";
import type { Ctx } from "../../ui/screen.ts";
import { w } from "../../words/index.ts";
import { follow } from "../shared/follow.ts";
import { goodLines, mayWords } from "./goods.ts";
import { packed } from "./packed.ts";

export function desk(host: HTMLElement, ctx: Ctx, rec: string): void {
  openPage(ctx, w("trip.deskTitle"), { href: `#/packing/${rec}`, words: w("recKind.trip") });
  const none = el("p", {}, w("trip.deskEmpty"));
  const list = el("ul", { class: "unmarked stack desk" });
  const page = el("div", { class: "stack looking" }, el("section", { class: "card stack" }, none, list), el("p", { class: "notice care" }, w("cautions.flying.text")));
  host.append(page);
  follow(ctx, async () => {
    const found = await packed(ctx, rec);
    if (ctx.closed.aborted || found === undefined) return;
    page.classList.remove("looking");
    ctx.heading(`${w("trip.deskTitle")} · ${textOf(found.trip, "name")}`);
    const lines = goodLines(found);
    setHidden(none, lines.length > 0);
    keyed(list, lines, ({ key }) => key, () => el("li", {}, el("strong"), el("p"), el("p", { class: "small" })), (node, { name: words, count, line }) => {
      const [name, where, why] = node.children;
      if (name === undefined || where === undefined || why === undefined) return;
      setText(name, `${count} × ${words}`);
      setText(where, w("good.where", { cabin: mayWords(line.cabin), hold: mayWords(line.hold) }));
      setText(why, `${line.why} ${w("good.dated", { dated: line.dated })}`);
    });
  }, (words) => setText(none, words));
}
