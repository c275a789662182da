// Settings and its pages: #/settings, #/settings/clashes and so on.

import { isId } from "../../log/op/op.ts";
import type { Ctx, Screen } from "../../ui/screen.ts";
import { w } from "../../words/index.ts";
import { books } from "./books.ts";
import { Clashes } from "./clashes.ts";
import { erasures } from "./erasures.ts";
import { eraseAll } from "./erase_all.ts";
import { front } from "./front.ts";
import { History } from "./history.ts";
import { phones } from "./phones.ts";
import { Records } from "./records.ts";
import { Refused } from "./refused.ts";
import { sources } from "./sources.ts";

type Open = (host: HTMLElement, ctx: Ctx) => unknown;

const pages: ReadonlyMap<string, Open> = new Map<string, Open>([
  ["clashes", (host, ctx) => new Clashes(host, ctx)],
  ["records", (host, ctx) => new Records(host, ctx)],
  ["refused", (host, ctx) => new Refused(host, ctx)],
  ["books", books],
  ["phones", phones],
  ["sources", sources],
  ["erase", eraseAll],
  ["erasures", erasures],
]);

export const screen: Screen = {
  name: "settings",
  title: () => w("place.settings"),
  open(host, ctx) {
    const [page = "", rec] = ctx.path;
    if (page === "history" && isId(rec)) new History(host, ctx, rec);
    else (pages.get(page) ?? front)(host, ctx);
  },
};
