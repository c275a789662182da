// The team car and its pages: #/car, #/car/out, #/car/spares, #/car/load, #/car/morning, #/car/event, #/car/event/<event>, #/car/gas, #/car/tags,
// #/car/card/<bike>.

import type { Screen } from "../../ui/screen.ts";
import { w } from "../../words/index.ts";
import { card } from "./card.ts";
import { event } from "./event.ts";
import { eventWhole } from "./event_whole.ts";
import { front } from "./front.ts";
import { gas } from "./gas.ts";
import { load } from "./load.ts";
import { morning } from "./morning.ts";
import { out } from "./out.ts";
import { spares } from "./spares.ts";
import { tags } from "./tags.ts";

export const screen: Screen = {
  name: "car",
  title: () => w("place.car"),
  open(host, ctx) {
    const [page = "", rec = ""] = ctx.path;
    if (page === "event" && rec !== "") return eventWhole(host, ctx);
    const open = { card, event, gas, load, morning, out, spares, tags }[page] ?? front;
    open(host, ctx);
  },
};
