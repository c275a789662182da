// Everything a car needs of the book at once: riders by number with their bikes, spare wheels with their place, spare bikes.

import type { RecordState } from "../../log/op/merge.ts";
import { byName } from "../../words/order.ts";
import { bikeName } from "../pressure/bikes.ts";
import { type Side, sides } from "../pressure/answer.ts";
import { type End, endOf, type Hub, hubOf } from "./hub.ts";
import { flagIn, numberIn, textIn } from "./known.ts";
import { type Loan, loansOf } from "./lent.ts";

export interface CarBook {
  readonly bikes: readonly RecordState[];
  readonly people: readonly RecordState[];
  readonly wheels: readonly RecordState[];
  readonly tyres: readonly RecordState[];
  readonly spares: readonly RecordState[];
  readonly outs: readonly RecordState[];
  readonly ins: readonly RecordState[];
  readonly sets: readonly RecordState[]; // pressure_set
}

export interface Rider {
  readonly bike: RecordState;
  readonly number: string;
  readonly name: string;
  readonly bikeName: string;
  readonly person: RecordState | undefined;
  readonly wheels: Readonly<Record<Side, RecordState | undefined>>;
  readonly ends: Readonly<Record<Side, End>>; // of the rider's own bike
  readonly on: SpareBike | undefined; // the spare bike that is ridden now
}

export interface SpareWheel {
  readonly rec: string;
  readonly state: RecordState;
  readonly wheel: RecordState | undefined;
  readonly tyre: RecordState | undefined;
  readonly name: string; // as it is called out: "Rear 3"
  readonly place: string;
  readonly hub: Hub;
  readonly bare: boolean;
  readonly tyreMm: number | undefined; // as measured, else as printed
  readonly loan: Loan | undefined;
  readonly kpa: number | undefined; // what the gauge read when it was last set
  readonly pumpedAt: number;
}

export interface SpareBike {
  readonly bike: RecordState;
  readonly name: string;
  readonly place: string;
  readonly ends: Readonly<Record<Side, End>>;
  readonly loan: Loan | undefined;
}

export interface Fleet {
  readonly riders: readonly Rider[];
  readonly spares: readonly SpareWheel[];
  readonly bikes: readonly SpareBike[];
  readonly loans: readonly Loan[];
}

export function fleetOf(book: CarBook): Fleet {
  const by = (states: readonly RecordState[]): Map<string, RecordState> => new Map(states.map((state) => [state.rec, state]));
  const wheels = by(book.wheels);
  const tyres = by(book.tyres);
  const people = by(book.people);
  const loans = loansOf(book.outs, book.ins);
  const ours = book.bikes.filter((bike) => !flagIn(bike, "retired"));
  const wheelsOf = (bike: RecordState): Rider["wheels"] => ({ front: wheels.get(textIn(bike, "front")), rear: wheels.get(textIn(bike, "rear")) });
  const endsOf = (bike: RecordState): Rider["ends"] => ({ front: endOf(bike, "front", wheelsOf(bike).front), rear: endOf(bike, "rear", wheelsOf(bike).rear) });
  const bikes = ours.filter((bike) => flagIn(bike, "spare")).map((bike): SpareBike => ({
    bike, name: bikeName(bike), place: textIn(bike, "place"), ends: endsOf(bike), loan: loans.find(({ spare }) => spare === bike.rec),
  }));
  const riders = ours.filter((bike) => !flagIn(bike, "spare")).map((bike): Rider => {
    const person = people.get(textIn(bike, "rider"));
    const given = loans.find((loan) => loan.whole && loan.bike === bike.rec);
    return {
      bike, number: textIn(bike, "number") || textIn(person, "number"), name: textIn(person, "name"), bikeName: bikeName(bike), person, wheels: wheelsOf(bike),
      ends: endsOf(bike), on: bikes.find(({ bike: spare }) => spare.rec === given?.spare),
    };
  });
  const spares = book.spares.filter((spare) => !flagIn(spare, "retired")).map((spare) => spareOf(spare, wheels, tyres, loans, book.sets));
  return { riders: riders.sort(byNumber), spares: spares.sort((a, b) => byName(a.name, b.name)), bikes: bikes.sort((a, b) => byName(a.name, b.name)), loans };
}

function spareOf(
  state: RecordState, wheels: ReadonlyMap<string, RecordState>, tyres: ReadonlyMap<string, RecordState>, loans: readonly Loan[], sets: readonly RecordState[],
): SpareWheel {
  const wheel = wheels.get(textIn(state, "wheel"));
  const tyre = tyres.get(textIn(wheel, "tyre"));
  const side = textIn(wheel, "side") === "rear" ? "rear" : "front";
  const pumped = sets.filter((entry) => textIn(entry, "wheel") === wheel?.rec && wheel !== undefined)
    .reduce<RecordState | undefined>((last, entry) => (last === undefined || entry.newest > last.newest ? entry : last), undefined);
  return {
    rec: state.rec, state, wheel, tyre, name: textIn(state, "name") || textIn(wheel, "name"), place: textIn(state, "place"),
    hub: hubOf(wheel, side), bare: flagIn(state, "bare"), tyreMm: numberIn(tyre, "measured_mm") ?? numberIn(tyre, "label_mm"),
    loan: loans.find(({ spare }) => spare === state.rec), kpa: numberIn(pumped, "gauge_kpa") ?? numberIn(pumped, "kpa"), pumpedAt: pumped?.newest ?? 0,
  };
}

function byNumber(a: Rider, b: Rider): number {
  return byName(a.number, b.number) || (a.bike.rec < b.bike.rec ? -1 : 1);
}

// matching narrows the riders: a number by its beginning, the whole number first; a word by any part of a name.
export function matching(riders: readonly Rider[], typed: string): readonly Rider[] {
  const text = typed.trim().toLowerCase();
  if (text === "") return [];
  if (!/^\d+$/.test(text)) {
    return riders.filter(({ name, bikeName: bike }) => `${name} ${bike}`.toLowerCase().includes(text));
  }
  const begins = riders.filter(({ number }) => number.startsWith(text));
  return [...begins.filter(({ number }) => number === text), ...begins.filter(({ number }) => number !== text)];
}

// endNow is one end of what a rider sits on now.
export function endNow({ ends, on }: Rider, side: Side): End {
  return (on?.ends ?? ends)[side];
}

// sidesOf is both ends, the rear first: it punctures more often.
export const carSides: readonly Side[] = [...sides].reverse();
