// Pressure: what to do to each tyre now; and what of it can be printed: #/pressure/team, #/pressure/card.

import type { Ctx, Screen } from "../../ui/screen.ts";
import { w } from "../../words/index.ts";
import { openPage } from "../../ui/page.ts";
import { Desk } from "./desk.ts";
import { loadLater, printScript } from "./later.ts";

type Open = (host: HTMLElement, ctx: Ctx) => unknown;

const printed = (page: "team" | "card"): Open => (host, ctx) => {
  if (printScript.here !== undefined) return printScript.here.openPrinted(page, host, ctx);
  void printScript.load().then(({ openPrinted }) => {
    if (!ctx.closed.aborted) openPrinted(page, host, ctx);
  }).catch((error: unknown) => ctx.trouble(error));
};

const pages: ReadonlyMap<string, Open> = new Map<string, Open>([
  ["team", printed("team")],
  ["card", printed("card")],
  ["setup", (host, ctx) => {
    openPage(ctx, w("setup.title"), { href: "#/pressure", words: w("place.pressure") });
    new Desk(host, ctx);
  }],
]);

const desk: Open = (host, ctx) => new Desk(host, ctx);

export const screen: Screen & { readonly later: () => Promise<void> } = {
  name: "pressure",
  title: () => w("place.pressure"),
  async load(path) {
    if (path[0] === "team" || path[0] === "card") await printScript.load();
  },
  open(host, ctx) {
    (pages.get(ctx.path[0] ?? "") ?? desk)(host, ctx);
  },
  later: loadLater,
};
