// Checks and its pages: #/checks, #/checks/walk/<bike>/<moment>, #/checks/finding/<record>, #/checks/history/<bike> and so on.

import type { Ctx, Screen } from "../../ui/screen.ts";
import { w } from "../../words/index.ts";
import { due } from "./due.ts";
import { finding } from "./finding.ts";
import { pickBike } from "../shared/picked_bike.ts";
import { front } from "./front.ts";
import { history } from "./history.ts";
import { rotor } from "./rotor.ts";
import { sweat } from "./sweat.ts";
import { walk } from "./walk.ts";

type Open = (host: HTMLElement, ctx: Ctx) => unknown;

const pages: ReadonlyMap<string, Open> = new Map<string, Open>([
  ["walk", walk], ["finding", finding], ["history", history], ["due", due], ["sweat", sweat], ["rotor", rotor], ["of", of],
]);

// of opens the front page with a bike that another screen was about.
function of(host: HTMLElement, ctx: Ctx): void {
  pickBike(ctx, ctx.path[1] ?? "");
  front(host, ctx);
}

export const screen: Screen = {
  name: "checks",
  title: () => w("place.checks"),
  open(host, ctx) {
    (pages.get(ctx.path[0] ?? "") ?? front)(host, ctx);
  },
};
