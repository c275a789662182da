// Pressure: what to do to each tyre now.

import type { Screen } from "../../ui/screen.ts";
import { w } from "../../words/index.ts";
import { Desk } from "./desk.ts";

export const screen: Screen = {
  name: "pressure",
  title: () => w("place.pressure"),
  open: (host, ctx) => void new Desk(host, ctx),
};
