// The bikes of the book, as a list to choose from.

import { type RecordState, valueOf } from "../../log/op/merge.ts";
import { w } from "../../words/index.ts";
import { byName } from "../../words/order.ts";

export interface BikeLine {
  readonly rec: string;
  readonly name: string;
  readonly open: boolean;
}

// bikeLines lists all bikes but the retired, by name. Bikes without a name are told apart by their number.
export function bikeLines(bikes: readonly RecordState[], open: string | undefined): readonly BikeLine[] {
  return bikes.filter((bike) => valueOf(bike, "retired") !== true)
    .map((bike, n) => ({ rec: bike.rec, name: bikeName(bike) || w("bikes.unnamed", { n: n + 1 }), open: bike.rec === open }))
    .sort((a, b) => byName(a.name, b.name) || (a.rec < b.rec ? -1 : 1));
}

export function bikeName(bike: RecordState | undefined): string {
  const text = (field: string): string => {
    const value = valueOf(bike, field);
    return typeof value === "string" ? value : "";
  };
  const [name, number] = [text("name"), text("number")];
  return number === "" || name === "" ? name || number : w("bikes.numbered", { name, number });
}

// newest is the bike that was edited last.
export function newest(bikes: readonly RecordState[]): RecordState | undefined {
  return bikes.filter((bike) => valueOf(bike, "retired") !== true).reduce<RecordState | undefined>((last, bike) => (last === undefined || bike.newest > last.newest ? bike : last), undefined);
}
