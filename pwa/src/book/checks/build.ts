// A bike of the book as the calculations of checks and of what is due ask for it: what it is built of, and what happened
// to it. What nobody said is left out; then the calculator asks, the safe side.

import { checksFields as fields, type Requests } from "../../contract/contract.ts";
import type { BookLog } from "../../log/book_log.ts";
import { type RecordState, valueOf } from "../../log/op/merge.ts";
import { type Side, sides } from "../pressure/answer.ts";
import { isReplaced } from "./due_view.ts";
import { chosen } from "../value/choice.ts";
import { dayOf } from "../wheels/measure_days.ts";
import { textOf } from "./walk_save.ts";

type Find = (rec: string) => RecordState | undefined;

// Build and Past are a bike and a line of its past, as the calculations take them.
export type Build = Requests["checks"]["bike"];
export type Past = NonNullable<Requests["checks"]["history"]>[number];
type BuiltEnd = NonNullable<Build["front"]>;

const skewerUpTo = 10; // mm: 9 and 10 mm ends are quick release, 12 and more through axles (trade axle guides)

// buildOf is the bike's build.
export function buildOf(bike: RecordState | undefined, find: Find): Build {
  const [front, rear] = sides.map((side) => wheelOf(find(textOf(bike, side)))) as [BuiltEnd, BuiltEnd];
  const brake = chosen(fields["bike.brake"].choices, valueOf(bike, "brake"));
  return { ...(Object.keys(front).length > 0 && { front }), ...(Object.keys(rear).length > 0 && { rear }), ...(brake !== undefined && { brake }) };
}

const choicesOf = ["setup", "profile", "rim_material", "nipple_material", "spoke_material", "hub_material", "brake", "rotor_mount"] as const;

function wheelOf(wheel: RecordState | undefined): BuiltEnd {
  const texts: Partial<Pick<BuiltEnd, (typeof choicesOf)[number]>> = Object.fromEntries(choicesOf.flatMap((field) => {
    const value = chosen<string>(fields[`bike.front.${field}`].choices, valueOf(wheel, field));
    return value === undefined ? [] : [[field, value] as const];
  }));
  const [axle, least] = [valueOf(wheel, "axle_mm"), valueOf(wheel, "rotor_min_mm")];
  return {
    ...texts, ...(typeof axle === "number" && { axle: axle <= skewerUpTo ? "quick_release" : "through_axle" }), ...(typeof least === "number" && { rotor_min_mm: least }),
  };
}

const most = fields.history.max; // events, as the calculator takes them
const services = ["sealant", "pads", "bolts", "spokes", "rotor", "built"] as const satisfies readonly Past["kind"][];

// historyOf gathers what happened to a bike.
export async function historyOf(book: Pick<BookLog, "all">, bike: string): Promise<readonly Past[]> {
  const kinds = ["bike", "wheel", "tyre", "ride", "wash", "check", "service", "measure"] as const;
  const lists = await Promise.all(kinds.map((kind) => book.all(kind)));
  const all = new Map(lists.flat().map((state) => [state.rec, state]));
  return eventsOf([...all.values()], bike);
}

// eventsOf makes the events of a bike from the records of the book, the newest last.
export function eventsOf(states: readonly RecordState[], bike: string): readonly Past[] {
  const known = new Map(states.map((state) => [state.rec, state]));
  const wheels = new Map<string, Side>();
  for (const side of sides) {
    const wheel = textOf(known.get(bike), side);
    if (wheel !== "") wheels.set(wheel, side);
  }
  const events: Past[] = [];
  for (const [wheel, side] of wheels) {
    const day = textOf(known.get(textOf(known.get(wheel), "tyre")), "sealant_day");
    if (day !== "") events.push({ kind: "sealant", day, side });
  }
  for (const state of states) {
    const event = eventOf(state, bike, wheels);
    if (event !== undefined) events.push(event);
  }
  return events.sort((a, b) => (a.day < b.day ? -1 : 1)).slice(-most);
}

function eventOf(entry: RecordState, bike: string, wheels: ReadonlyMap<string, Side>): Past | undefined {
  const day = textOf(entry, "day") || dayOf(entry.newest);
  if (entry.kind === "measure") return rotorEvent(entry, day, wheels);
  if (textOf(entry, "bike") !== bike) return undefined;
  switch (entry.kind) {
    case "wash": return { kind: textOf(entry, "kind") === "wipe" ? "wipe" : "wash", day };
    case "ride": return { kind: "ride", day, ...rideOf(entry) };
    case "check": return checkEvent(entry, day);
    case "service": return serviceEvent(textOf(entry, "what"), day);
    default: return undefined;
  }
}

function rideOf(entry: RecordState): Pick<Past, "conditions" | "hours" | "km" | "sweat"> {
  const [hours, km] = [valueOf(entry, "hours"), valueOf(entry, "km")];
  const conditions = chosen(fields["history.*.conditions"].choices, valueOf(entry, "kind"));
  const sweat = chosen(fields["history.*.sweat"].choices, valueOf(entry, "sweat"));
  return { ...(conditions !== undefined && { conditions }), ...(typeof hours === "number" && { hours }), ...(typeof km === "number" && { km }), ...(sweat !== undefined && { sweat }) };
}

// A walk-around after a crash, or on arrival, tells of the crash or the journey too.
function checkEvent(entry: RecordState, day: string): Past | undefined {
  const moment = chosen(fields["history.*.moment"].choices, valueOf(entry, "moment"));
  return moment === undefined ? undefined : { kind: "check", day, moment };
}

// serviceEvent: what was done is named as the due list names it, with a side where it has one ("sealant_front").
function serviceEvent(what: string, day: string): Past | undefined {
  const side = sides.find((each) => what.endsWith(`_${each}`) || what.endsWith(`.${each}`));
  const kind = services.find((each) => what.startsWith(each));
  if (kind === undefined) return undefined;
  return { kind, day, ...(side !== undefined && { side }), ...(isReplaced(what) && { new: true }) };
}

function rotorEvent(entry: RecordState, day: string, wheels: ReadonlyMap<string, Side>): Past | undefined {
  const [side, mm] = [wheels.get(textOf(entry, "of")), valueOf(entry, "mm")];
  return textOf(entry, "what") === "rotor_thickness" && side !== undefined && typeof mm === "number" ? { kind: "rotor", day, side, mm } : undefined;
}
