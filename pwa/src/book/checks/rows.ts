// The rows of a walk-around: what they are called, and what of the bike each is about.

import { type RecordState, valueOf } from "../../log/op/merge.ts";
import { isKey, w } from "../../words/index.ts";
import type { Side } from "../pressure/answer.ts";
import type { Ask } from "./walk.ts";

export type RowId = Ask["id"];
type NameIn<I> = I extends `${string}.${infer Name}` ? Name : never;
export type Name = NameIn<RowId>;

export const nameOf = (id: RowId): Name => id.slice(id.indexOf(".") + 1) as Name;

// isRow tells whether a text that an older or newer app wrote names a row that has words here.
export function isRow(id: string): id is RowId {
  return isKey(`check.title.${id.slice(id.indexOf(".") + 1)}`);
}

export const rowTitle = (id: RowId): string => w(`check.title.${nameOf(id)}`);

// sideOf is the end of the bike that a row stands at.
export function sideOf(id: string): Side | undefined {
  return id.startsWith("front_") ? "front" : id.startsWith("rear_") ? "rear" : undefined;
}

const ofTyre: readonly string[] = ["tyre", "cuts", "hidden", "casing", "carbon_chafe", "bead_line", "hookless", "sealant", "insert"];
const ofBikeAtTheWheel: readonly string[] = ["quick_release", "through_axle", "room"]; // the axle and the frame's clearance stay
const ofTwo: readonly string[] = ["disc", "held"]; // of wheel and bike alike

// Parts are the records that a bike is made of.
export interface Parts {
  readonly bike: string;
  readonly wheel: (side: Side) => string; // "" for none
  readonly tyre: (side: Side) => string;
}

// thingOf is the record that a row's findings belong to, so that they go where it goes.
export function thingOf(id: string, { bike, wheel, tyre }: Parts): string {
  const side = sideOf(id);
  const name = id.slice(id.indexOf(".") + 1);
  if (side === undefined || ofBikeAtTheWheel.includes(name)) return bike;
  if (id.includes("_brake.") && !name.startsWith("rotor") && name !== "disc" && name !== "wall" && name !== "surface") return bike;
  return (ofTyre.includes(name) ? tyre(side) : "") || wheel(side) || bike;
}

// alsoOfBike tells of a row that is about the bike as well: its finding stays there too when the wheel goes.
export const alsoOfBike = (id: string): boolean => ofTwo.includes(id.slice(id.indexOf(".") + 1));

// partsOf reads a bike's parts off its records.
export function partsOf(bike: RecordState, find: (rec: string) => RecordState | undefined): Parts {
  const text = (state: RecordState | undefined, field: string): string => {
    const value = valueOf(state, field);
    return typeof value === "string" ? value : "";
  };
  const wheel = (side: Side): string => text(bike, side);
  return { bike: bike.rec, wheel, tyre: (side) => text(find(wheel(side)), "tyre") };
}
