// The question what to do to a bike on a trip, one way.

import type { PackRequest } from "../../contract/contract.ts";
import type { RecordState } from "../../log/op/merge.ts";
import type { Direction } from "./pack_view.ts";
import { goodsOf, legsOf, wayOf } from "./trip.ts";

export function packRequest(trip: RecordState, bike: PackRequest["bike"], direction: Direction): PackRequest {
  return { bike, way: wayOf(trip), direction, legs_us: legsOf(trip), goods: goodsOf(trip).map(({ key: _, ...good }) => good) };
}
