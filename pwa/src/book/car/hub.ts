// What a wheel and a bike's end are to the swap rule. What nobody noted is left out: the calculator then asks to look.

import type { MatchRequest } from "../../contract/contract.ts";
import type { RecordState } from "../../log/op/merge.ts";
import type { Side } from "../pressure/answer.ts";
import { numberIn, textIn } from "./known.ts";

// End is one end of a bike, in the calculator's own names.
export type End = MatchRequest["bike"];

// Hub is what an end and a wheel must have alike.
export type Hub = Omit<End, "room_mm" | "min_label_mm">;

const frameGap = 8; // mm of a frame's opening that a tyre must leave free, 4 mm a side

// hubOf reads a wheel. A bike that says otherwise of brake and sprockets knows better: its wheels may be borrowed.
export function hubOf(wheel: RecordState | undefined, side: Side, bike?: RecordState): Hub {
  const number = (field: string, own = false): number | undefined => (own ? numberIn(bike, field) : undefined) ?? numberIn(wheel, field);
  const brake = textIn(bike, "brake") || textIn(wheel, "brake");
  const rear = side === "rear";
  return {
    side, brake: brake === "rim" ? "rim" : "disc",
    ...given("hub_width_mm", number("hub_width_mm")), ...given("axle_mm", number("axle_mm")), ...given("bead_seat_mm", number("bead_seat_mm") ?? usualSeat),
    ...given("rotor_mm", number("rotor_mm")),
    ...(rear && given("speeds", number("speeds", true))), ...(rear && filled("spacing", textIn(bike, "spacing") || textIn(wheel, "spacing"))),
    ...(rear && given("max_cog", number("max_cog", true))),
    ...filled("mount", textIn(wheel, "rotor_mount")), ...(rear && filled("body", textIn(wheel, "body"))),
  };
}

const usualSeat = 622; // as Pressure takes it where nobody noted another

// endOf is one end of a bike: what its own wheel shows of it, and the room for a tyre.
export function endOf(bike: RecordState, side: Side, wheel: RecordState | undefined): End {
  const opening = numberIn(bike, side === "front" ? "room_front_mm" : "room_rear_mm");
  return {
    ...hubOf(wheel, side, bike), ...given("room_mm", opening === undefined ? undefined : Math.max(15, opening - frameGap)),
    ...given("min_label_mm", numberIn(bike, "least_label_mm")),
  };
}

function given<K extends string>(name: K, value: number | undefined): { readonly [N in K]?: number } {
  return value === undefined ? {} : ({ [name]: value } as { readonly [N in K]?: number });
}

function filled<K extends string>(name: K, value: string): { readonly [N in K]?: string } {
  return value === "" ? {} : ({ [name]: value } as { readonly [N in K]?: string });
}
