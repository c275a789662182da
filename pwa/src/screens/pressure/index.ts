// Pressure: what to do to each tyre now; and what of it can be printed: #/pressure/team, #/pressure/card.

import type { Ctx, Screen } from "../../ui/screen.ts";
import { w } from "../../words/index.ts";
import { Card } from "./print/start_card.ts";
import { openPage } from "../../ui/page.ts";
import { Desk } from "./desk.ts";
import { Team } from "./print/team.ts";

type Open = (host: HTMLElement, ctx: Ctx) => unknown;

const pages: ReadonlyMap<string, Open> = new Map<string, Open>([
  ["team", (host, ctx) => new Team(host, ctx)],
  ["card", (host, ctx) => new Card(host, ctx)],
  ["setup", (host, ctx) => {
    openPage(ctx, w("setup.title"), { href: "#/pressure", words: w("place.pressure") });
    new Desk(host, ctx);
  }],
]);

const desk: Open = (host, ctx) => new Desk(host, ctx);

export const screen: Screen = {
  name: "pressure",
  title: () => w("place.pressure"),
  open(host, ctx) {
    (pages.get(ctx.path[0] ?? "") ?? desk)(host, ctx);
  },
};
