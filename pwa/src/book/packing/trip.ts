// A trip with bikes: when, how, with what; its own items with their weight and size; and how much time is left.

import { packFields, type Requests } from "../../contract/contract.ts";
import { isList, isObject, type Json } from "../../log/op/json.ts";
import { type RecordState, valueOf } from "../../log/op/merge.ts";
import { w } from "../../words/index.ts";
import { chosen } from "../value/choice.ts";
import { textOf } from "../checks/walk_save.ts";

export const ways = ["air_bag", "air_box", "air_case", "train", "car", "courier"] as const satisfies readonly Requests["pack"]["way"][];
export type Way = Requests["pack"]["way"];

// Item is something of one's own to take along.
export interface Item {
  readonly id: string;
  readonly name: string;
  readonly kg?: number;
  readonly cm?: number; // length + width + height
}

// Good is something that rules may keep off a flight.
export interface Good {
  readonly id: string;
  readonly count: number;
  readonly [member: string]: Json;
}

export function wayOf(trip: RecordState | undefined): Way {
  return ways.find((each) => each === valueOf(trip, "way")) ?? "air_bag"; // the one that asks most
}

export function bikesOf(trip: RecordState | undefined): readonly string[] {
  return recsIn(trip, "bikes");
}

export function peopleOf(trip: RecordState | undefined): readonly string[] {
  return recsIn(trip, "people");
}

function recsIn(trip: RecordState | undefined, field: string): readonly string[] {
  const list = valueOf(trip, field);
  return isList(list) ? list.filter((each): each is string => typeof each === "string") : [];
}

function entriesOf(trip: RecordState | undefined): readonly { readonly [name: string]: Json }[] {
  const list = valueOf(trip, "items");
  return isList(list) ? list.filter(isObject) : [];
}

export function itemsOf(trip: RecordState | undefined): readonly Item[] {
  return entriesOf(trip).filter((each) => typeof each["name"] === "string" && typeof each["id"] === "string") as unknown as readonly Item[];
}

export function goodsOf(trip: RecordState | undefined): readonly Good[] {
  return entriesOf(trip).filter((each) => typeof each["good"] === "string").map(({ good, ...rest }) => ({ id: String(good), count: 1, ...rest }));
}

type AskedGood = NonNullable<Requests["pack"]["goods"]>[number];

// goodsAsked are the goods that the calculator knows rules for, with the sizes that it takes.
export function goodsAsked(goods: readonly Good[]): readonly AskedGood[] {
  return goods.flatMap((good): AskedGood[] => {
    const id = chosen(packFields["goods.*.id"].choices, good.id);
    const sizes: Omit<AskedGood, "id"> = Object.fromEntries((["count", "grams", "wh", "ml"] as const).flatMap((name) => (typeof good[name] === "number" ? [[name, good[name]] as const] : [])));
    return id === undefined ? [] : [{ id, ...sizes }];
  });
}

// withItems is the list that the record keeps: items and goods in one.
export function withItems(items: readonly Item[], goods: readonly Good[]): Json {
  return [...items.map((item) => ({ ...item })), ...goods.map(({ id, ...rest }) => ({ ...rest, good: id }))] as unknown as Json;
}

export interface Totals {
  readonly kg: number;
  readonly cm: number; // of the largest item
  readonly overKg: boolean;
  readonly overCm: boolean;
}

export function totalsOf(trip: RecordState | undefined): Totals {
  const items = itemsOf(trip);
  const kg = Number(items.reduce((sum, { kg = 0 }) => sum + kg, 0).toFixed(2));
  const cm = Math.max(0, ...items.map(({ cm = 0 }) => cm));
  const [limitKg, limitCm] = [valueOf(trip, "limit_kg"), valueOf(trip, "limit_cm")];
  return { kg, cm, overKg: typeof limitKg === "number" && limitKg > 0 && kg > limitKg, overCm: typeof limitCm === "number" && limitCm > 0 && cm > limitCm };
}

// daysUntil counts calendar days, so that a change of the clocks is none.
export function daysUntil(day: string, today: string): number | undefined {
  const [from, to] = [Date.parse(`${today}T00:00:00Z`), Date.parse(`${day}T00:00:00Z`)];
  return Number.isNaN(to) ? undefined : Math.round((to - from) / 86_400_000);
}

export function timeLeft(trip: RecordState | undefined, today: string): string {
  const [leaves, back] = [daysUntil(textOf(trip, "from"), today), daysUntil(textOf(trip, "to"), today)];
  if (leaves === undefined) return w("trip.noDay");
  if (leaves > 1) return w("trip.leaves", { n: leaves });
  if (leaves === 1) return w("trip.tomorrow");
  if (leaves === 0) return w("trip.today");
  return back === undefined || back < 0 ? w("trip.over") : w("trip.away");
}

// tripsByDay: what is ahead first, the nearest on top; then what is over.
export function tripsByDay(trips: readonly RecordState[], today: string): readonly RecordState[] {
  const over = (trip: RecordState): boolean => (textOf(trip, "to") || textOf(trip, "from") || "9999") < today;
  const key = (trip: RecordState): string => textOf(trip, "from") || "9999";
  return [...trips].sort((a, b) => Number(over(a)) - Number(over(b)) || (key(a) < key(b) ? -1 : 1));
}
