// Packing and its pages: #/packing, #/packing/new, #/packing/<trip>, #/packing/<trip>/out, .../home, .../arrival/<direction>,
// .../desk, .../plan.

import { isId } from "../../log/op/op.ts";
import type { Screen } from "../../ui/screen.ts";
import { w } from "../../words/index.ts";
import { arrival } from "./arrival.ts";
import { desk } from "./desk.ts";
import { front } from "./front.ts";
import { plan } from "./plan.ts";
import { trip } from "./trip.ts";

export const screen: Screen = {
  name: "packing",
  title: () => w("place.packing"),
  open(host, ctx) {
    const [rec = "", page = ""] = ctx.path;
    if (rec === "new") return plan(host, ctx, "");
    if (!isId(rec)) return front(host, ctx);
    const open = { desk, arrival, plan }[page] ?? trip;
    open(host, ctx, rec);
  },
};
