// What the guide's pages read: the wheel, the tyre that goes on, and what the calculator says of both.

import { type Asking, assumedBead, fitAsking, type FitAnswer, type FitRequest, type SeatAnswer, seatAsking } from "../../../book/fit/fit_asks.ts";
import { draftName, type FitDraft, readDraft } from "../../../book/fit/fit_draft.ts";
import { gateView, type GateView, limitWords, missingGate } from "../../../book/fit/gate_view.ts";
import type { Known } from "../../../book/fit/steps.ts";
import { textOf } from "../../../book/checks/walk_save.ts";
import { mountedOf } from "../../../book/wheels/measure.ts";
import type { Teller } from "../../../book/value/record_words.ts";
import type { Requests } from "../../../contract/contract.ts";
import { type RecordState, valueOf } from "../../../log/op/merge.ts";
import type { Ctx } from "../../../ui/screen.ts";
import { tellerFor } from "../../shared/follow.ts";

export interface FitBook {
  readonly wheel: RecordState | undefined;
  readonly tyre: RecordState | undefined; // that goes on
  readonly wheels: readonly RecordState[];
  readonly tyres: readonly RecordState[];
  readonly bikes: readonly RecordState[];
  readonly draft: FitDraft;
  readonly teller: Teller;
  readonly seat: SeatAnswer | undefined;
  readonly gate: GateView;
  readonly fitting: Asking<FitRequest>;
  readonly room: FitAnswer | undefined;
  readonly fault: string; // the field that the geometry complains of; "" for none
}

export async function readFit(ctx: Ctx, rec: string): Promise<FitBook> {
  const { book } = ctx;
  await book.ready;
  const [wheels, tyres, bikes, gauges, stored] = await Promise.all([book.all("wheel"), book.all("tyre"), book.all("bike"), book.all("gauge"), ctx.drafts.load(draftName(rec))]);
  const draft = readDraft(stored);
  const wheel = wheels.find((each) => each.rec === rec);
  const on = textOf(wheel, "tyre");
  const tyre = tyres.find((each) => each.rec === draft.tyre) ?? tyres.find((each) => each.rec === on);
  const teller = await tellerFor(ctx, [...wheels, ...tyres]);
  const mounted = wheel === undefined ? {} : mountedOf(wheel.rec, "wheel", wheels, bikes);
  const gauge = gauges.find((each) => each.rec === textOf(bikes.find((bike) => bike.rec === mounted.bike), "gauge"));
  const [seat, fitting] = [seatAsking(wheel, tyre, gauge), fitAsking(wheel, tyre)];
  const answer = "request" in seat ? await ask(ctx, "seat", seat.request) : undefined;
  const room = "request" in fitting && fitting.request.insert !== true ? await askFit(ctx, fitting.request) : { room: undefined, fault: "" };
  return { wheel, tyre, wheels, tyres, bikes, draft, teller, seat: answer, gate: "missing" in seat ? missingGate(seat.missing) : gateView(answer), fitting, ...room };
}

async function ask(ctx: Ctx, name: "seat", request: Requests["seat"]): Promise<SeatAnswer | undefined> {
  try {
    return (await ctx.calc.ask(name, request)).answer;
  } catch {
    return undefined; // nothing can answer: the gate stays shut
  }
}

async function askFit(ctx: Ctx, request: FitRequest): Promise<{ readonly room: FitAnswer | undefined; readonly fault: string }> {
  try {
    const { answer, errors } = await ctx.calc.ask("fit", request);
    return { room: answer, fault: answer === undefined ? errors[0]?.field ?? "" : "" };
  } catch {
    return { room: undefined, fault: "" };
  }
}

// edgeMm is the radius of the rim's edge.
export function edgeMm({ fitting }: FitBook): number {
  if ("missing" in fitting) return assumedBead / 2 + 6;
  return fitting.request.bead_seat_mm / 2 + fitting.request.flange_mm;
}

// knownOf is what decides on the steps.
export function knownOf(at: FitBook, unit: Ctx["settings"]["units"]): Known {
  const setup = textOf(at.wheel, "setup");
  const material = textOf(at.wheel, "rim_material");
  return {
    setup: setup === "tube" || setup === "insert" ? setup : "tubeless", carbon: material === "carbon" || material === "", hookless: valueOf(at.wheel, "profile") !== "hooked",
    seat: at.seat, limit: at.seat === undefined ? "" : limitWords(at.seat, unit), fit: at.room, edgeMm: edgeMm(at),
  };
}
