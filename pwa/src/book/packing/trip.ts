// A trip with bikes: when, how, with what; its own items with their weight and size; and how much time is left.

import type { PackRequest } from "../../contract/contract.ts";
import { packFields } from "../../contract/pack_fields.ts";
import { isList, isObject, type Json } from "../../log/op/json.ts";
import { type RecordState, valueOf } from "../../log/op/merge.ts";
import { w } from "../../words/index.ts";
import { textOf } from "../checks/walk_save.ts";

export type Way = PackRequest["way"];
export const ways: readonly Way[] = packFields.way.choices;

// Item is something of one's own to take along.
export interface Item {
  readonly id: string;
  readonly name: string;
  readonly kg?: number;
  readonly cm?: number; // length + width + height
}

// Good is something that rules may keep off a flight, as the calculator asks for it, and its name in the list.
export type Good = NonNullable<PackRequest["goods"]>[number] & { readonly key: string; readonly count: number };
export type GoodKind = Good["id"];
export type SizeName = "grams" | "wh" | "ml";

// sizeOf is the size that decides about a kind; "" where none does.
export function sizeOf(kind: GoodKind): SizeName | "" {
  switch (kind) {
    case "cartridge": return "grams";
    case "power_bank": case "spare_battery": case "lithium_installed": case "shifting_battery": case "battery_pump": return "wh";
    case "aerosol": case "sealant": case "mineral_oil": case "brake_fluid": return "ml";
    default: return "";
  }
}

export const goodKinds: readonly GoodKind[] = packFields["goods.*.id"].choices;

export function wayOf(trip: RecordState | undefined): Way {
  return ways.find((each) => each === valueOf(trip, "way")) ?? "air_bag"; // the one that asks most
}

// flown says whether the rules of flying count: they do while the way is not known.
export function flown(way: string): boolean {
  return way !== "train" && way !== "car";
}

// legsOf is what was said about the United States; null where nobody said.
export function legsOf(trip: RecordState | undefined): boolean | null {
  const legs = valueOf(trip, "legs_us");
  return typeof legs === "boolean" ? legs : null;
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

// goodsOf lists the goods. Those written down before sizes were asked carry assumed ones: only a cartridge's had been named.
export function goodsOf(trip: RecordState | undefined): readonly Good[] {
  return entriesOf(trip).flatMap((each, n): Good[] => {
    const id = goodKinds.find((kind) => kind === each["good"]);
    if (id === undefined) return [];
    const size = sizeOf(id);
    const own = typeof each["key"] === "string";
    const [count, measure] = [each["count"], size === "" || !(own || id === "cartridge") ? undefined : each[size]];
    return [{
      key: own ? String(each["key"]) : `old ${n}`, id, count: typeof count === "number" ? count : 1,
      ...(size !== "" && typeof measure === "number" && { [size]: measure }), ...(typeof each["who"] === "string" && { who: each["who"] }),
    }];
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
