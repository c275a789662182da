// Wheels and its pages: #/wheels, #/wheels/new/<kind>, #/wheels/<record>, #/wheels/measure/<record>/<what> and so on.

import { isId } from "../../log/op/op.ts";
import type { Ctx, Screen } from "../../ui/screen.ts";
import { w } from "../../words/index.ts";
import { erasePerson } from "./erase_person.ts";
import { fit } from "./fit/index.ts";
import { front } from "./front.ts";
import { guide } from "./guide.ts";
import { lists } from "./lists.ts";
import { measure } from "./measure.ts";
import { newThing } from "./new_thing.ts";
import { spokes } from "./spokes.ts";
import { thing } from "./thing.ts";
import { trial } from "./trial.ts";

type Open = (host: HTMLElement, ctx: Ctx) => unknown;

const pages: ReadonlyMap<string, Open> = new Map<string, Open>([
  ["new", newThing],
  ["measure", measure],
  ["guide", guide],
  ["fit", fit],
  ["lists", lists],
  ["erase", erasePerson],
  ["spokes", spokes],
  ["trial", trial],
]);

export const screen: Screen = {
  name: "wheels",
  title: () => w("place.wheels"),
  open(host, ctx) {
    const [page = ""] = ctx.path;
    if (isId(page)) thing(host, ctx, page);
    else (pages.get(page) ?? front)(host, ctx);
  },
};
