// A bike of the book as the calculations ask for it: what it is built of. What nobody said is left out; then the calculator asks, the
// safe side.

import type { Requests } from "../../contract/contract.ts";
import { checksFields as fields } from "../../contract/checks_fields.ts";
import { type RecordState, valueOf } from "../../log/op/merge.ts";
import { sides } from "../pressure/answer.ts";
import { chosen } from "../value/choice.ts";
import { isSpared } from "./indoors.ts";
import { textOf } from "./walk_save.ts";

type Find = (rec: string) => RecordState | undefined;

// Build is a bike as the calculations take it.
export type Build = Requests["checks"]["bike"];
type BuiltEnd = NonNullable<Build["front"]>;

const skewerUpTo = 10; // mm: 9 and 10 mm ends are quick release, 12 and more through axles (trade axle guides)

const ownChoices = ["brake", "use", "shifting", "pedals", "derailleur", "seatpost", "cockpit", "frame_material", "bar_material"] as const;

// buildOf is the bike's build. The trainers are marked wheels that stand on no bike.
export function buildOf(bike: RecordState | undefined, find: Find, trainers: readonly RecordState[] = []): Build {
  const [front, rear] = sides.map((side): BuiltEnd => ({
    ...wheelOf(find(textOf(bike, side)), find), ...(isSpared(bike, side, find, trainers) && { spared_indoors: true }),
  })) as [BuiltEnd, BuiltEnd];
  const own: Partial<Pick<Build, (typeof ownChoices)[number]>> = Object.fromEntries(ownChoices.flatMap((field) => {
    const value = chosen<string>(fields[`bike.${field}`].choices, valueOf(bike, field));
    return value === undefined ? [] : [[field, value] as const];
  }));
  return { ...(Object.keys(front).length > 0 && { front }), ...(Object.keys(rear).length > 0 && { rear }), ...own };
}

const choicesOf = ["setup", "profile", "rim_material", "nipple_material", "spoke_material", "hub_material", "brake", "rotor_mount"] as const;

// wheelOf is one end: a wheel with the tyre that is on it.
export function wheelOf(wheel: RecordState | undefined, find: Find): BuiltEnd {
  const texts: Partial<Pick<BuiltEnd, (typeof choicesOf)[number]>> = Object.fromEntries(choicesOf.flatMap((field) => {
    const value = chosen<string>(fields[`bike.front.${field}`].choices, valueOf(wheel, field));
    return value === undefined ? [] : [[field, value] as const];
  }));
  const [axle, least] = [valueOf(wheel, "axle_mm"), valueOf(wheel, "rotor_min_mm")];
  return {
    ...texts, ...pairOf(wheel, find(textOf(wheel, "tyre"))), ...(typeof axle === "number" && { axle: axle <= skewerUpTo ? "quick_release" : "through_axle" }), ...(typeof least === "number" && { rotor_min_mm: least }),
  };
}

const sizes = ["inner_mm", "bead_seat_mm", "table_min_label_mm", "table_max_label_mm"] as const;

// pairOf is what decides whether the tyre may go on the rim. What lies outside the calculator's bounds is not known to it.
function pairOf(wheel: RecordState | undefined, tyre: RecordState | undefined): BuiltEnd {
  const within = (state: RecordState | undefined, from: string, to: (typeof sizes)[number] | "label_mm" | "tyre_bead_seat_mm"): BuiltEnd => {
    const value = valueOf(state, from);
    const { min, max } = fields[`bike.front.${to}`];
    return typeof value === "number" && value >= min && value <= max ? { [to]: value } : {};
  };
  return {
    ...(wheel !== undefined && { wheel: wheel.rec }), ...(tyre !== undefined && { tyre: tyre.rec }),
    ...Object.assign({}, ...sizes.map((size) => within(wheel, size, size))) as BuiltEnd, ...within(tyre, "label_mm", "label_mm"), ...within(tyre, "bead_seat_mm", "tyre_bead_seat_mm"),
    ...(valueOf(tyre, "hookless_ok") === "yes" && { hookless_ok: true }),
  };
}
