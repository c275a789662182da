// The fitting guide: #/wheels/fit and #/wheels/fit/of/<bike> ask for the wheel; #/wheels/fit/<wheel> is its guide;
// #/wheels/fit/<wheel>/off, on and seat are the steps; #/wheels/fit/<wheel>/done writes down what was done.

import "./fit.css";
import "../guide.css";
import { ways } from "../../../book/fit/steps.ts";
import { isId } from "../../../log/op/op.ts";
import type { Ctx } from "../../../ui/screen.ts";
import { doneOf } from "./done.ts";
import { guideOf } from "./guide.ts";
import { stepsPage } from "./steps_page.ts";
import { whichWheel } from "./which.ts";

export function fit(host: HTMLElement, ctx: Ctx): void {
  const [, wheel = "", page = ""] = ctx.path;
  const way = ways.find((each) => each === page);
  if (!isId(wheel)) whichWheel(host, ctx, wheel === "of" ? page : "");
  else if (way !== undefined) stepsPage(host, ctx, wheel, way);
  else if (page === "done") doneOf(host, ctx, wheel);
  else guideOf(host, ctx, wheel);
}
