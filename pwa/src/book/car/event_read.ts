// A list of riders that comes in, from a file or pasted: which column holds what is the person's to say; a first guess is made
// from the heads. A row becomes a rider, a bike, its wheels and tyres; a number that the book knows is brought up to date.

import type { Change } from "../../log/book_log.ts";
import type { Json } from "../../log/op/json.ts";
import type { RecordState } from "../../log/op/merge.ts";
import { w } from "../../words/index.ts";
import { type Side, sides } from "../pressure/answer.ts";
import { readTyped } from "../value/typed_value.ts";
import { csvRows, type Separator, separators, unguard } from "../wheels/lists/csv.ts";
import type { Fleet, Rider } from "./fleet.ts";
import { textIn } from "./known.ts";

export const eventColumns = [
  "number", "name", "mass_kg", "bike", "brake", "bead_seat_mm", "front_axle", "rear_axle", "front_rotor_mm", "rear_rotor_mm", "speeds", "spacing", "max_cog",
  "tyre_mm", "room_mm", "least_label_mm",
] as const;
export type EventColumn = (typeof eventColumns)[number];

export interface Sheet {
  readonly heads: readonly string[]; // what stands in the first row; empty where it holds a rider already
  readonly rows: readonly { readonly line: number; readonly cells: readonly string[] }[];
}

export const mostRiders = 2000;

// sheetOf takes a text apart. The separator is the one that makes the first line the longest.
export function sheetOf(text: string): Sheet {
  const first = text.split(/\r\n|\r|\n/, 1)[0] ?? "";
  const count = (separator: Separator): number => first.split(separator).length;
  const separator = [...separators].sort((a, b) => count(b) - count(a))[0] ?? ",";
  const rows = [...csvRows(text, separator)].slice(0, mostRiders + 1).map(({ line, cells }) => ({ line, cells: cells.map((cell) => unguard(cell).trim()) }));
  const [head, ...rest] = rows;
  const named = head !== undefined && !head.cells.some((cell) => /^\d+$/.test(cell));
  return named ? { heads: head.cells, rows: rest } : { heads: [], rows };
}

const guesses: readonly (readonly [EventColumn, RegExp])[] = [
  ["front_axle", /front.*axle/], ["rear_axle", /rear.*axle/], ["front_rotor_mm", /front.*(rotor|disc)/], ["rear_rotor_mm", /rear.*(rotor|disc)/],
  ["number", /number|^no\.?$|bib|dossard|nr/], ["mass_kg", /weight|mass|kg/], ["bead_seat_mm", /bead|wheel size/], ["brake", /brake/], ["max_cog", /biggest|max.*(cog|sprocket)/],
  ["spacing", /spacing/], ["speeds", /speed|sprocket|gears/], ["least_label_mm", /narrowest|least/], ["room_mm", /room|opening|clearance/], ["tyre_mm", /tyre|tire/], ["bike", /bike/],
  ["name", /name|rider/],
];

// guessed matches columns to what they seem to hold, each thing once.
export function guessed({ heads, rows }: Sheet): readonly (EventColumn | "")[] {
  const width = Math.max(heads.length, ...rows.slice(0, 20).map(({ cells }) => cells.length), 1);
  const taken = new Set<EventColumn>();
  const out = Array.from({ length: width }, (_, n): EventColumn | "" => {
    const head = (heads[n] ?? "").toLowerCase();
    const found = guesses.find(([column, says]) => !taken.has(column) && says.test(head))?.[0] ?? "";
    if (found !== "") taken.add(found);
    return found;
  });
  if (heads.length > 0) return out;
  return out.map((_, n) => (n === 0 ? "number" : n === 1 ? "name" : "")); // numbers first, as start lists are
}

export interface BadRow {
  readonly line: number;
  readonly why: string;
}

export interface EventPlan {
  readonly riders: readonly (readonly Change[])[]; // each rider's changes, saved as one
  readonly bad: readonly BadRow[];
}

export function planOf(sheet: Sheet, columns: readonly (EventColumn | "")[], fleet: Fleet, event: string, newRec: () => string): EventPlan {
  const known = new Map(fleet.riders.map((rider) => [rider.number, rider]));
  const seen = new Set<string>();
  const bad: BadRow[] = [];
  const riders: (readonly Change[])[] = [];
  for (const { line, cells } of sheet.rows) {
    const read = rowOf(cells, columns);
    const why = "fault" in read ? read.fault : read.number === "" ? w("event.noNumber") : seen.has(read.number) ? w("event.twice", { number: read.number }) : "";
    if (why !== "" || "fault" in read) {
      bad.push({ line, why });
      continue;
    }
    seen.add(read.number);
    riders.push(changesOf(read, known.get(read.number), event, newRec));
  }
  return { riders, bad };
}

interface Row {
  readonly number: string;
  readonly person: Record<string, Json>;
  readonly bike: Record<string, Json>;
  readonly wheels: Readonly<Record<Side, Record<string, Json>>>;
  readonly tyre: Record<string, Json>;
}

// Where a column's value goes: kind and field.
const plain: Readonly<Partial<Record<EventColumn, readonly (readonly ["person" | "bike" | "front" | "rear" | "tyre", string])[]>>> = {
  name: [["person", "name"]], mass_kg: [["person", "mass_kg"]], bike: [["bike", "name"]],
  bead_seat_mm: [["front", "bead_seat_mm"], ["rear", "bead_seat_mm"]], front_rotor_mm: [["front", "rotor_mm"]], rear_rotor_mm: [["rear", "rotor_mm"]],
  speeds: [["bike", "speeds"], ["rear", "speeds"]], spacing: [["bike", "spacing"]], max_cog: [["bike", "max_cog"]], tyre_mm: [["tyre", "label_mm"]],
  room_mm: [["bike", "room_front_mm"], ["bike", "room_rear_mm"]], least_label_mm: [["bike", "least_label_mm"]],
};

function rowOf(cells: readonly string[], columns: readonly (EventColumn | "")[]): Row | { readonly fault: string } {
  const row = { number: "", person: {} as Record<string, Json>, bike: {} as Record<string, Json>, wheels: { front: {} as Record<string, Json>, rear: {} as Record<string, Json> }, tyre: {} as Record<string, Json> };
  for (const [n, column] of columns.entries()) {
    const cell = cells[n] ?? "";
    if (column === "" || cell === "") continue;
    const why = put(row, column, cell);
    if (why !== "") return { fault: w("event.badCell", { column: w(`eventColumn.${column}`), why }) };
  }
  return row;
}

function put(row: { number: string } & Omit<Row, "number">, column: EventColumn, cell: string): string {
  if (column === "number") {
    row.number = cell.slice(0, 12);
    return cell.length > 12 ? w("fault.long", { n: 12 }) : "";
  }
  if (column === "brake") {
    const brake = /rim|caliper|felge/i.test(cell) ? "rim" : "disc";
    row.bike["brake"] = row.wheels.front["brake"] = row.wheels.rear["brake"] = brake;
    return "";
  }
  if (column === "front_axle" || column === "rear_axle") return putAxle(row.wheels[column === "front_axle" ? "front" : "rear"], cell);
  for (const [part, field] of plain[column] ?? []) {
    const kind = part === "front" || part === "rear" ? "wheel" : part;
    const read = readTyped(kind, field, cell, "bar");
    if ("fault" in read) return read.fault;
    (part === "front" || part === "rear" ? row.wheels[part] : row[part])[field] = read.value;
  }
  return "";
}

function putAxle(wheel: Record<string, Json>, cell: string): string {
  const [, axle, width] = /^\s*(\d+(?:[.,]\d)?)\s*[x×*]\s*(\d+(?:[.,]\d)?)/i.exec(cell) ?? [];
  if (axle === undefined || width === undefined) return w("event.axle");
  const [first, second] = [readTyped("wheel", "axle_mm", axle, "bar"), readTyped("wheel", "hub_width_mm", width, "bar")];
  if ("fault" in first) return first.fault;
  if ("fault" in second) return second.fault;
  wheel["axle_mm"] = first.value;
  wheel["hub_width_mm"] = second.value;
  return "";
}

function changesOf(row: Row, known: Rider | undefined, event: string, newRec: () => string): readonly Change[] {
  return known === undefined ? freshChanges(row, event, newRec) : renewedChanges(row, known, newRec);
}

function freshChanges(row: Row, event: string, newRec: () => string): readonly Change[] {
  const tied = event === "" ? {} : { event };
  const person = newRec();
  const ends = Object.fromEntries(sides.map((side) => [side, newRec()]));
  const wheels = sides.flatMap((side): Change[] => {
    const rec = ends[side] ?? "";
    const tyre = Object.keys(row.tyre).length === 0 ? undefined : newRec();
    return [
      ...(tyre === undefined ? [] : [{ rec: tyre, kind: "tyre", set: row.tyre }]),
      { rec, kind: "wheel", set: { side, ...row.wheels[side], ...(tyre !== undefined && { tyre }) } },
    ];
  });
  return [
    { rec: person, kind: "person", set: { number: row.number, ...row.person, ...tied } }, ...wheels,
    { rec: newRec(), kind: "bike", set: { number: row.number, ...row.bike, rider: person, ...ends, ...tied } },
  ];
}

// renewedChanges set what the row says and leave the rest.
function renewedChanges(row: Row, { bike, person, wheels }: Rider, newRec: () => string): readonly Change[] {
  const edit = (state: RecordState | undefined, set: Record<string, Json>): Change[] =>
    state === undefined || Object.keys(set).length === 0 ? [] : [{ rec: state.rec, kind: state.kind, set, shown: state }];
  const made = person === undefined && Object.keys(row.person).length > 0 ? newRec() : undefined;
  return [
    ...(made === undefined ? edit(person, row.person) : [{ rec: made, kind: "person", set: { number: row.number, ...row.person } }]),
    ...edit(bike, { ...row.bike, ...(textIn(bike, "number") === "" && { number: row.number }), ...(made !== undefined && { rider: made }) }),
    ...sides.flatMap((side) => edit(wheels[side], row.wheels[side])),
  ];
}
