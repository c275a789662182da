// From a record of the phone's motion to a stretch of ground.

import type { Answers, Requests } from "../../contract/contract.ts";
import type { Change } from "../../log/book_log.ts";
import { plain } from "../../words/number.ts";
import type { PressureAnswer, Side } from "./answer.ts";
import type { StretchDraft } from "./draft.ts";
import type { RequestBody } from "./request.ts";

export type GroundAnswer = Answers["ground"];
export type Measured = GroundAnswer & { readonly gd0: number; readonly low: number; readonly high: number };

// isMeasured says that there is a roughness.
export function isMeasured(answer: GroundAnswer): answer is Measured {
  return answer.gd0 !== null && answer.low !== null && answer.high !== null;
}

// tyrePressure is what the tyre holds: as read or expected, else as recommended. Undefined without either.
export function tyrePressure(body: RequestBody, answer: PressureAnswer, side: Side): number | undefined {
  const read = body.now?.[`${side}_gauge_kpa`];
  return read === undefined || read < 20 ? (answer[side].at_ride_kpa ?? undefined) : read - (body.gauge_error_kpa ?? 0);
}

// groundQuestion lays a record beside the bike as it is ridden; undefined while a pressure is missing.
export function groundQuestion(body: RequestBody, answer: PressureAnswer, record: Pick<Requests["ground"], "samples" | "kmh" | "speeds" | "mount">): Requests["ground"] | undefined {
  const [front, rear] = [end(body, answer, "front"), end(body, answer, "rear")];
  if (front === undefined || rear === undefined) return undefined;
  const { front_load_kg: ahead, rear_load_kg: behind } = body;
  const share = ahead !== undefined && behind !== undefined ? ahead / (ahead + behind) : body.front_share;
  return { ...record, rider_kg: body.rider_kg, bike_kg: body.bike_kg, ...(share !== undefined && { front_share: Math.min(0.8, Math.max(0.2, share)) }), front, rear };
}

function end(body: RequestBody, answer: PressureAnswer, side: Side): Requests["ground"]["front"] | undefined {
  const { tyre, rim } = body[side];
  const [kpa, width] = [tyrePressure(body, answer, side), answer[side].width_mm];
  if (kpa === undefined || width === null) return undefined;
  return { width_mm: width, kpa, sidewall: tyre.sidewall, bead_seat_mm: tyre.bead_seat_mm ?? rim.bead_seat_mm };
}

// stretchOf is how a measured roughness stands in a stretch, in millionths.
export function stretchOf({ gd0, low, high }: Measured, kmh: number): Pick<StretchDraft, "kind" | "gd0" | "low" | "high" | "kmh" | "washboard"> {
  const written = (value: number): string => plain(Number((value * 1e6).toPrecision(3)));
  const bare = (value: number): string => String(Number((value * 1e6).toPrecision(3)));
  return { kind: "typed", gd0: written(gd0), low: bare(low), high: bare(high), kmh: plain(Math.round(kmh)), washboard: false };
}

// withGround is the question with one stretch as it was measured.
export function withGround(body: RequestBody, index: number, { gd0, low, high }: Measured, kmh: number): RequestBody {
  return { ...body, ground: body.ground.map((each, n) => (n === index ? { gd0, gd0_low: low, gd0_high: high, share: each.share, kmh } : each)) };
}

// keptChange is the entry of a ground that was measured: with its day and the pressures it was measured at.
export function keptChange(rec: string, name: string, day: string, bike: string | undefined, stretch: ReturnType<typeof stretchOf>, kpa: Readonly<Record<Side, number>>): Change {
  const { kind, gd0, kmh, washboard, low, high } = stretch;
  return { rec, kind: "ground", set: { name, day, by: "km", ...(bike !== undefined && { bike }), stretches: [{ kind, length: "", gd0, kmh, washboard, low: low ?? "", high: high ?? "", front_kpa: kpa.front, rear_kpa: kpa.rear }] } };
}
