// The pages to print, by what stands in the address after #/pressure/.

import type { Ctx } from "../../../ui/screen.ts";
import { Card } from "./start_card.ts";
import { Team } from "./team.ts";

export function openPrinted(page: "team" | "card", host: HTMLElement, ctx: Ctx): void {
  if (page === "team") new Team(host, ctx);
  else new Card(host, ctx);
}
