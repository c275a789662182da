// The team car and its pages: #/car, #/car/out, #/car/spares, #/car/load, #/car/morning, #/car/event, #/car/gas,
// #/car/card/<bike>.

import type { Screen } from "../../ui/screen.ts";
import { w } from "../../words/index.ts";
import { card } from "./card.ts";
import { event } from "./event.ts";
import { front } from "./front.ts";
import { gas } from "./gas.ts";
import { load } from "./load.ts";
import { morning } from "./morning.ts";
import { out } from "./out.ts";
import { spares } from "./spares.ts";

export const screen: Screen = {
  name: "car",
  title: () => w("place.car"),
  open(host, ctx) {
    const [page = ""] = ctx.path;
    const open = { card, event, gas, load, morning, out, spares }[page] ?? front;
    open(host, ctx);
  },
};
