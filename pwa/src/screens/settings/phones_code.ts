// Makes a code that lets another phone in, and shows it while it is good.

import { codeView, saidFault, wayOf } from "../../book/settings/phones_view.ts";
import type { NewCode } from "../../log/sync/pairing.ts";
import { el } from "../../ui/el.ts";
import { setHidden, setText } from "../../ui/part.ts";
import type { Ctx } from "../../ui/screen.ts";
import { w } from "../../words/index.ts";

const tick = 5_000; // ms

export function codeCard(ctx: Ctx): HTMLElement {
  const figures = el("p", { class: "figures", role: "status" });
  const until = el("p");
  const fault = el("p", { class: "fault", role: "alert" });
  let made: NewCode | undefined;
  const show = (): void => {
    const view = made === undefined ? { figures: "", until: "" } : codeView(made, ctx.sync.state.clockOff, Date.now());
    setText(figures, view.figures);
    setText(until, view.until);
    setHidden(figures, view.figures === "");
    setHidden(until, view.until === "");
  };
  const make = async (): Promise<void> => {
    try {
      made = await ctx.sync.pairing.newCode();
      setText(fault, "");
    } catch (error) {
      setText(fault, saidFault(error).words);
    }
    show();
  };
  show();
  const clock = setInterval(show, tick);
  ctx.closed.addEventListener("abort", () => clearInterval(clock));
  const way = wayOf(location);
  return el("section", { class: "card stack" }, el("h2", {}, w("code.title")),
    el("p", { class: "address" }, w(way === "plain" ? "code.stepsPlain" : "code.steps", { address: location.origin })),
    way === "here" && el("p", { class: "quiet" }, w("code.local")),
    figures, until, fault,
    el("p", {}, el("button", { type: "button", class: "button", on: { click: () => void make() } }, w("code.make"))));
}
