// The team list: what each rider's tyres should hold at the start, or why there is no number.

import { type RecordState, valueOf } from "../../log/op/merge.ts";
import { w } from "../../words/index.ts";
import type { Result as Said } from "../../contract/contract.ts";
import { type Side, sides } from "./answer.ts";
import { bikeLines } from "./bikes.ts";
import type { PressureDraft } from "./draft.ts";
import { kilometres, partTexts } from "./edits.ts";
import type { Kept } from "./kept.ts";
import { filledDraft, type Find } from "./opened.ts";
import type { PressureUnit } from "../value/quantity.ts";
import { refusedWords } from "./refused.ts";
import { read, type Reading, type RequestBody } from "./request.ts";
import { screenView } from "./screen_view.ts";
import type { Tables } from "./tables.ts";
import type { Who } from "../bind/take.ts";

// TeamBook is what the list is made from.
export interface TeamBook {
  readonly bikes: readonly RecordState[];
  readonly find: Find;
  readonly notes: readonly RecordState[]; // after rides: they move each bike's numbers
  readonly who: Who;
}

export interface TeamBike {
  readonly rec: string;
  readonly name: string;
  readonly rider: string; // "" when nobody was named
  readonly draft: PressureDraft;
  readonly reading: Reading;
}

// teamBikes lists all bikes but the retired, each with the question that opening it would ask. The open bike is taken as it
// stands on the screen, with what is typed and not yet in the book.
export function teamBikes(book: TeamBook, today: PressureDraft, unit: PressureUnit, tables: Tables): readonly TeamBike[] {
  const states = new Map(book.bikes.map((bike) => [bike.rec, bike]));
  return bikeLines(book.bikes, today.links["bike"]).flatMap(({ rec, name, open }) => {
    const bike = states.get(rec);
    if (bike === undefined) return [];
    const draft = open && today.started ? today : filledDraft(bike, book.find, today, book.who);
    return [{ rec, name, rider: riderOf(bike, book.find), draft, reading: read(draft, unit, tables) }];
  });
}

function riderOf(bike: RecordState, find: Find): string {
  const rec = valueOf(bike, "rider");
  const person = typeof rec === "string" ? find(rec) : undefined;
  const name = person === undefined || person.erased ? undefined : valueOf(person, "name");
  return typeof name === "string" ? name : "";
}

// Result is what the calculator said of a bike; undefined while it has not answered.
export type Result = { readonly kept: Kept } | { readonly refused: string };

// resultOf keeps an answer with its question, or tells why there is none.
export function resultOf(question: RequestBody, { answer, errors }: Said<"pressure">): Result {
  return answer === undefined ? { refused: refusedWords(errors) } : { kept: { question, answer } };
}

export interface Cell {
  readonly number: string; // "" when there is none
  readonly why: string; // why not
}

export interface TeamRow {
  readonly rec: string;
  readonly name: string;
  readonly rider: string;
  readonly cells: Readonly<Record<Side, Cell>>;
  readonly shared: string; // why neither wheel has a number, when the reason is the same; "" otherwise
}

// teamRow words one bike. The numbers are those of its own screen.
export function teamRow(bike: TeamBike, result: Result | undefined, unit: PressureUnit, now: number): TeamRow {
  const kept = result !== undefined && "kept" in result ? result.kept : undefined;
  const broken = result !== undefined && "refused" in result ? result.refused : "";
  const { wheels } = screenView({ draft: bike.draft, reading: bike.reading, kept, unit, broken, now });
  const cell = (side: Side): Cell => {
    const wheel = wheels.find((each) => each.side === side);
    return wheel === undefined || wheel.number === "" || wheel.old !== "" ? { number: "", why: wheel?.old || (wheel?.stops.join(" ") ?? "") } : { number: wheel.number, why: "" };
  };
  const cells = { front: cell("front"), rear: cell("rear") };
  const alike = sides.every((side) => cells[side].number === "") && cells.front.why === cells.rear.why;
  return { rec: bike.rec, name: bike.name, rider: bike.rider, cells, shared: alike ? cells.front.why : "" };
}

// Conditions are what the numbers hold for, and how old that is.
export interface Conditions {
  readonly weather: string;
  readonly age: string; // "" when no weather was typed
  readonly ground: string;
}

// conditionsOf takes the weather from an answered question, so that it is the weather of the numbers.
export function conditionsOf(bike: TeamBike, kept: Kept, unit: PressureUnit, now: number): Conditions {
  const { headline, stale } = screenView({ draft: bike.draft, reading: bike.reading, kept, unit, broken: "", now });
  return { weather: headline, age: stale, ground: groundWords(bike.draft) };
}

// groundWords tells today's ground: one kind, or stretches with their length.
export function groundWords({ ground, groundBy, wet }: PressureDraft): string {
  const kinds = ["smooth", "patched", "chips", "setts", "rice", "pea", "walnut", "egg", "fist", "soft", "typed"] as const;
  const parts = ground.map((stretch, n) => {
    const kind = w(`kind.${kinds.find((each) => each === stretch.kind) ?? "patched"}`);
    const named = stretch.washboard ? w("print.washboard", { kind }) : kind;
    if (!(kilometres([stretch])[0] ?? 0)) return named;
    return groundBy === "share" ? w("print.share", { kind: named, n: Number(partTexts(ground)[n]) }) : w("ground.part", { kind: named, km: kilometres([stretch])[0] ?? 0 });
  });
  return w("print.ground", { list: [...parts, ...(wet ? [w("print.wet")] : [])].join("; ") });
}
