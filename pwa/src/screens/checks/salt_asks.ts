// Asks about sweat and salt for each wheel of a bike, and for those that take a wheel's place on the trainer.

import { indoorsOnly, materialsOf, type SaltAnswer } from "../../book/checks/salt_view.ts";
import { isSpared, standsFor, trainersIn } from "../../book/checks/indoors.ts";
import { textOf } from "../../book/checks/walk_save.ts";
import { dayOf } from "../../book/wheels/measure_days.ts";
import type { Requests } from "../../contract/contract.ts";
import type { RecordState } from "../../log/op/merge.ts";
import type { Ctx } from "../../ui/screen.ts";

export interface SaltAsked {
  readonly answers: readonly SaltAnswer[]; // the wheel that is to be washed first stands first; none where no sums run
  readonly spared: readonly ("front" | "rear")[]; // the ends that sweat passes by
  readonly trainers: readonly RecordState[]; // the wheels that take their places
}

const sides = ["front", "rear"] as const;

export async function askSalt({ book, calc }: Ctx, bike: RecordState | undefined, log: Requests["salt"]["log"]): Promise<SaltAsked> {
  const [bikes, wheels] = await Promise.all([book.all("bike"), book.all("wheel")]);
  const find = (rec: string): RecordState | undefined => wheels.find((wheel) => wheel.rec === rec);
  const loose = trainersIn(bikes, wheels);
  const spared = sides.filter((side) => isSpared(bike, side, find, loose));
  const trainers = [...new Set(sides.flatMap((side) => standsFor(bike, side, find, loose)))];
  const today = dayOf(Date.now());
  const asks = [
    ...sides.map((side) => ({ materials: materialsOf(find(textOf(bike, side))), log, today, ...(spared.includes(side) && { spared_indoors: true }) })),
    ...trainers.map((wheel) => ({ materials: materialsOf(wheel), log: indoorsOnly(log), today })),
  ];
  const answers = await Promise.all(asks.map(async (request) => {
    try {
      return (await calc.ask("salt", request)).answer;
    } catch {
      return undefined;
    }
  }));
  const known = answers.filter((answer) => answer !== undefined);
  return { answers: known.sort((a, b) => compare(a.wash_due || "9", b.wash_due || "9") || b.since_wash_g - a.since_wash_g), spared, trainers };
}

const compare = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);
