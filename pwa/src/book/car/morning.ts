// The morning list: one pressure for each spare that serves the riders it may go to. What each rider wants of it comes from the
// pressure model, as if the spare sat in the bike; the calculation "share" then finds the pressure.

import type { Answers, Requests } from "../../contract/contract.ts";
import type { RecordState } from "../../log/op/merge.ts";
import { type Find, filledDraft } from "../pressure/opened.ts";
import type { PressureDraft } from "../pressure/draft.ts";
import { type Side, sides, type WheelAnswer } from "../pressure/answer.ts";
import type { Kept } from "../pressure/kept.ts";
import { read } from "../pressure/request.ts";
import type { Tables } from "../pressure/tables.ts";
import type { TeamBike, TeamBook } from "../pressure/team_view.ts";
import { onGauge, type Told, toldNumber } from "../pressure/told.ts";
import type { PressureUnit } from "../value/quantity.ts";
import type { Rider, SpareWheel } from "./fleet.ts";
import type { Verdict } from "./match.ts";

// Airs is what all bikes of a morning share.
export interface Airs {
  readonly book: TeamBook;
  readonly today: PressureDraft;
  readonly tables: Tables;
  readonly unit: PressureUnit;
}

// gaugeOf is the gauge in use: how far it is off, and its record.
export function gaugeOf({ today, tables, unit }: Airs): { readonly error: number; readonly rec: string } {
  return { error: read(today, unit, tables).values.get("gaugeError") ?? 0, rec: today.links["gauge"] ?? "" };
}

// withSpare is a rider's bike with a spare in it, as a question. Where the bike's own other wheel is not known well enough, the
// spare stands for both: only its own end is looked at then.
export function withSpare(rider: Rider, spare: SpareWheel, airs: Airs): Pick<TeamBike, "draft" | "reading"> {
  const { book, today, tables, unit } = airs;
  const error = gaugeOf(airs).error;
  const ask = (ends: readonly Side[]): Pick<TeamBike, "draft" | "reading"> => {
    const draft = filledDraft(ends.reduce((bike, side) => putIn(bike, side, spare.wheel?.rec ?? ""), rider.bike), findIn(book.find, spare), today, book.who);
    const reading = read(draft, unit, tables);
    return { draft, reading: reading.body === undefined ? reading : { ...reading, body: { ...reading.body, gauge_error_kpa: error } } };
  };
  const own = ask([spare.hub.side]);
  return own.reading.body === undefined ? ask(sides) : own;
}

function putIn(bike: RecordState, side: Side, wheel: string): RecordState {
  return { ...bike, fields: { ...bike.fields, [side]: { shown: { value: wheel, op: "", at: 0, author: "", device: "", ops: [] }, others: [] } } };
}

function findIn(find: Find, { wheel, tyre }: SpareWheel): Find {
  return (rec) => [wheel, tyre].find((each) => each?.rec === rec) ?? find(rec);
}

// servedBy are the riders a spare serves: those it fits as it is; where there are none, those it fits with a change.
export function servedBy(verdicts: readonly { readonly rider: Rider; readonly verdict: Verdict }[]): { readonly riders: readonly Rider[]; readonly changed: boolean } {
  const riders = (fits: Verdict["fits"]): readonly Rider[] => verdicts.filter(({ verdict }) => verdict.fits === fits).map(({ rider }) => rider);
  const asItIs = riders("yes");
  return asItIs.length > 0 ? { riders: asItIs, changed: false } : { riders: riders("with_change"), changed: true };
}

// Wish is what one rider wants of a spare.
export interface Wish {
  readonly rider: Rider;
  readonly kept: Kept;
  readonly wheel: WheelAnswer;
}

// wishOf is undefined where the model gives no number.
export function wishOf(rider: Rider, side: Side, kept: Kept): Wish | undefined {
  const wheel = kept.answer[side];
  return wheel.recommended_kpa === null || wheel.here_gauge_kpa === null ? undefined : { rider, kept, wheel };
}

// What holds a number where it is set, or at the warmest hour, lies below the ceiling: the number itself is the most then.
function mostOf({ recommended_kpa, ceiling_kpa, limited_by }: WheelAnswer): number | undefined {
  const held = limited_by !== "none" && limited_by !== "floor" && limited_by !== "printed_minimum";
  return (held ? recommended_kpa : ceiling_kpa) ?? undefined;
}

// shareRequest asks once for riders who want the same.
export function shareRequest(wishes: readonly Wish[]): Requests["share"] {
  const riders = new Map<string, Requests["share"]["riders"][number]>();
  for (const wish of wishes) {
    const most = mostOf(wish.wheel);
    riders.set(groupOf(wish), { id: String(riders.size), recommended_kpa: wish.wheel.recommended_kpa ?? 0, floor_kpa: wish.wheel.floor_kpa ?? 0, ...(most !== undefined && { ceiling_kpa: most }) });
  }
  return { riders: [...riders.values()].map((rider, n) => ({ ...rider, id: String(n) })) };
}

function groupOf({ wheel }: Wish): string {
  return [wheel.recommended_kpa, wheel.floor_kpa, mostOf(wheel)].join();
}

export interface Shared {
  readonly told: Told; // on the gauge, where the spares are set
  readonly percent: number; // the most that it is off
  readonly compromise: readonly Rider[]; // for whom it is that far off
}

// sharedOf turns the answer into what the gauge should read; undefined where no pressure serves them all.
export function sharedOf(wishes: readonly Wish[], answer: Answers["share"], unit: PressureUnit): Shared | undefined {
  const [first] = wishes;
  const { kpa, spread, compromise_for } = answer;
  if (kpa === null || spread === null || first === undefined) return undefined;
  const groups = [...new Set(wishes.map(groupOf))];
  const worst = new Set(compromise_for.map((id) => groups[Number(id)]));
  const { set, ride } = first.kept.question;
  const scene = { unit, hereC: set.c, rideC: ride.c };
  const told = toldNumber(wheelAt(kpa, wishes, first.wheel, scene), scene);
  if (told === undefined) return undefined;
  return { told, percent: Math.round((Math.exp(spread) - 1) * 100), compromise: wishes.filter((wish) => worst.has(groupOf(wish))).map(({ rider }) => rider) };
}

// wheelAt is the spare at the shared pressure. Where that is what one rider is told anyway, it is that rider's own answer, so that
// both screens round alike. Between riders it never rounds past the firmest number, which lies within every limit.
function wheelAt(kpa: number, wishes: readonly Wish[], first: WheelAnswer, scene: Parameters<typeof onGauge>[2]): WheelAnswer {
  const same = wishes.find(({ wheel }) => Math.abs((wheel.recommended_kpa ?? 0) - kpa) < 1e-6);
  if (same !== undefined) return same.wheel;
  const numbers = (of: (wheel: WheelAnswer) => number): readonly number[] => wishes.map(({ wheel }) => of(wheel));
  return {
    ...first, recommended_kpa: kpa, here_gauge_kpa: onGauge(kpa, first, scene), limited_by: "none",
    floor_kpa: Math.max(...numbers((wheel) => wheel.floor_kpa ?? 0)), ceiling_kpa: Math.max(kpa, ...numbers((wheel) => wheel.recommended_kpa ?? 0)),
  };
}
