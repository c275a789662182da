// Which bike a screen is about: the one that was chosen last, on any screen, or else the one that was edited last.

import { bikeLines, newest } from "../../book/pressure/bikes.ts";
import { isObject } from "../../book/pressure/answer.ts";
import { type RecordState, valueOf } from "../../log/op/merge.ts";
import { Picker } from "../../ui/picker.ts";
import type { Ctx } from "../../ui/screen.ts";
import { w } from "../../words/index.ts";

const draftName = "picked-bike";

export async function pickedBike(ctx: Ctx): Promise<RecordState | undefined> {
  await ctx.book.ready;
  const bikes = (await ctx.book.all("bike")).filter((bike) => valueOf(bike, "retired") !== true);
  const [picked, pressure] = await Promise.all([ctx.drafts.load(draftName), ctx.drafts.load("pressure")]);
  const links = isObject(pressure) && isObject(pressure["links"]) ? pressure["links"]["bike"] : undefined;
  return bikes.find(({ rec }) => rec === picked) ?? bikes.find(({ rec }) => rec === links) ?? newest(bikes);
}

export function pickBike(ctx: Ctx, rec: string): void {
  void ctx.drafts.save(draftName, rec);
}

// bikePicker lists the bikes to choose from; it is hidden where there is no choice.
export function bikePicker(picker: Picker, bikes: readonly RecordState[], bike: RecordState): void {
  const options = bikeLines(bikes, bike.rec).map(({ rec, name }) => ({ value: rec, label: name }));
  picker.view = { name: "bike", label: w("checks.which"), spoken: w("checks.which"), value: bike.rec, options };
  picker.hidden = options.length < 2;
}
