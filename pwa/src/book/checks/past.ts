// What happened to a bike, as the calculations of checks and of what is due read it. What belongs to a wheel or tyre comes along with it;
// what a walk-around looked at or measured is looked at.

import type { Requests } from "../../contract/contract.ts";
import { checksFields as fields } from "../../contract/checks_fields.ts";
import type { BookLog } from "../../log/book_log.ts";
import { type RecordState, valueOf } from "../../log/op/merge.ts";
import { type Side, sides } from "../pressure/answer.ts";
import { chosen } from "../value/choice.ts";
import { dayOf } from "../wheels/measure_days.ts";
import { isReplaced } from "./due_view.ts";
import { sideOf } from "./rows.ts";
import { isEnded, textOf } from "./walk_save.ts";

// Past is a line of a bike's past, as the calculations take it.
export type Past = NonNullable<Requests["checks"]["history"]>[number];

const most = fields.history.max; // events, as the calculator takes them
const services = ["sealant", "pads", "bolts", "spokes", "rotor", "built"] as const satisfies readonly Past["kind"][];

// historyOf gathers what happened to a bike.
export async function historyOf(book: Pick<BookLog, "all">, bike: string): Promise<readonly Past[]> {
  const kinds = ["bike", "wheel", "tyre", "ride", "wash", "check", "service", "measure", "trip"] as const;
  const lists = await Promise.all(kinds.map((kind) => book.all(kind)));
  const all = new Map(lists.flat().map((state) => [state.rec, state]));
  return eventsOf([...all.values()], bike);
}

// Place is where on this bike an entry belongs: a side, or the whole bike.
interface Place {
  readonly side?: Side;
}

// eventsOf makes the events of a bike from the records of the book, the newest last.
export function eventsOf(states: readonly RecordState[], bike: string): readonly Past[] {
  const known = new Map(states.map((state) => [state.rec, state]));
  const places = new Map<string, Place>([[bike, {}]]);
  const events: Past[] = [];
  for (const side of sides) {
    const wheel = textOf(known.get(bike), side);
    const tyre = textOf(known.get(wheel), "tyre");
    if (wheel !== "") places.set(wheel, { side });
    if (tyre !== "") places.set(tyre, { side });
    const day = textOf(known.get(tyre), "sealant_day");
    if (day !== "") events.push({ kind: "sealant", day, side });
    events.push(...fittedOf(known.get(tyre), side));
  }
  for (const state of states) events.push(...eventsIn(state, bike, places));
  return events.sort((a, b) => (a.day < b.day ? -1 : 1)).slice(-most);
}

// fittedOf tells when a tyre was put on, and when its width was taken.
function fittedOf(tyre: RecordState | undefined, side: Side): readonly Past[] {
  const [fitted, measured, at] = [textOf(tyre, "fitted"), valueOf(tyre, "measured_mm"), valueOf(tyre, "measured_at")];
  return [
    ...(fitted === "" ? [] : [{ kind: "fitted", day: fitted, side } as const]),
    ...(typeof measured === "number" && typeof at === "number" ? [{ kind: "width", day: dayOf(at), side } as const] : []),
  ];
}

function eventsIn(entry: RecordState, bike: string, places: ReadonlyMap<string, Place>): readonly Past[] {
  const day = textOf(entry, "day") || dayOf(entry.newest);
  const of = textOf(entry, "of");
  const place = of === "" ? (textOf(entry, "bike") === bike ? {} : undefined) : places.get(of);
  switch (entry.kind) {
    case "trip": return journeys(entry, bike);
    case "measure": return place === undefined ? [] : measured(entry, day, place);
    case "service": return place === undefined ? [] : served(textOf(entry, "what"), day, place);
  }
  if (textOf(entry, "bike") !== bike) return [];
  switch (entry.kind) {
    case "wash": return [{ kind: textOf(entry, "kind") === "wipe" ? "wipe" : "wash", day }];
    case "ride": return [{ kind: "ride", day, ...rideOf(entry) }];
    case "check": return walked(entry, day);
    default: return [];
  }
}

function rideOf(entry: RecordState): Pick<Past, "conditions" | "hours" | "km" | "sweat"> {
  const [hours, km] = [valueOf(entry, "hours"), valueOf(entry, "km")];
  const conditions = chosen(fields["history.*.conditions"].choices, valueOf(entry, "kind"));
  const sweat = chosen(fields["history.*.sweat"].choices, valueOf(entry, "sweat"));
  return { ...(conditions !== undefined && { conditions }), ...(typeof hours === "number" && { hours }), ...(typeof km === "number" && { km }), ...(sweat !== undefined && { sweat }) };
}

// looksAt is what is looked at with a row, as the list of what is due has it.
const looksAt: Readonly<Record<string, Past["kind"]>> = { sealant: "sealant", rotor_thickness: "rotor", pads: "pads", spokes: "spokes", stem_bolts: "bolts" };

// walked: a walk-around that was ended, with what it looked at. One after a crash, or on arrival, that was begun and not ended tells of
// the crash or the journey.
function walked(entry: RecordState, day: string): readonly Past[] {
  const moment = chosen(fields["history.*.moment"].choices, valueOf(entry, "moment"));
  if (moment === undefined) return [];
  if (!isEnded(entry)) return moment === "crash" ? [{ kind: "crash", day }] : moment === "arrival" ? [{ kind: "transport", day }] : [];
  const items = valueOf(entry, "items");
  const rows = (Array.isArray(items) ? items : []) as readonly ({ readonly id?: unknown; readonly state?: unknown } | null)[];
  const seen = rows.flatMap((row): Past[] => {
    if (typeof row?.id !== "string" || (row.state !== "ok" && row.state !== "found")) return [];
    const kind = looksAt[row.id.slice(row.id.indexOf(".") + 1)];
    const side = sideOf(row.id);
    return kind === undefined ? [] : [{ kind, day, ...(side !== undefined && { side }) }];
  });
  return [{ kind: "check", day, moment }, ...seen];
}

// served: what was done is named as the due list names it, with a side where it has one ("sealant_front").
function served(what: string, day: string, place: Place): readonly Past[] {
  const side = place.side ?? sides.find((each) => what.endsWith(`_${each}`) || what.endsWith(`.${each}`));
  const kind = services.find((each) => what.startsWith(each));
  return kind === undefined ? [] : [{ kind, day, ...(side !== undefined && { side }), ...(isReplaced(what) && { new: true }) }];
}

const measures = { rotor_thickness: "rotor", pads: "pads" } as const;

function measured(entry: RecordState, day: string, place: Place): readonly Past[] {
  const what = textOf(entry, "what");
  const mm = valueOf(entry, "mm");
  const side = place.side ?? chosen(sides, valueOf(entry, "side"));
  if (what === "spoke_tension") return [{ kind: "spokes", day, ...(side !== undefined && { side }) }];
  if (what === "sealant") return [{ kind: "sealant", day, ...(side !== undefined && { side }) }];
  const kind = what === "rotor_thickness" || what === "pads" ? measures[what] : undefined;
  const { min, max } = fields["history.*.mm"];
  return kind === undefined || typeof mm !== "number" || mm < min || mm > max ? [] : [{ kind, day, ...(side !== undefined && { side }), mm }];
}

// journeys of a trip: out, and home. What lies ahead is passed over by the calculator.
function journeys(trip: RecordState, bike: string): readonly Past[] {
  const bikes = valueOf(trip, "bikes");
  if (!Array.isArray(bikes) || !bikes.includes(bike)) return [];
  const days = [textOf(trip, "arrives") || textOf(trip, "from"), textOf(trip, "home_arrives") || textOf(trip, "to")];
  return [...new Set(days.filter((day) => day !== ""))].map((day) => ({ kind: "transport", day }));
}
