// What the pages of the car read of the book, at once.

import { type Fleet, fleetOf } from "../../book/car/fleet.ts";
import type { Ctx } from "../../ui/screen.ts";

export async function fleetNow({ book }: Ctx): Promise<Fleet> {
  await book.ready;
  const [bikes, people, wheels, tyres, spares, outs, ins, sets] = await Promise.all(
    (["bike", "person", "wheel", "tyre", "spare", "spare_out", "spare_in", "pressure_set"] as const).map((kind) => book.all(kind)),
  );
  return fleetOf({ bikes: bikes ?? [], people: people ?? [], wheels: wheels ?? [], tyres: tyres ?? [], spares: spares ?? [], outs: outs ?? [], ins: ins ?? [], sets: sets ?? [] });
}
