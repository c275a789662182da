// What Pressure says of a bike today: what a trial is learnt against, and the limits that it keeps to.

import { readDraft } from "../../book/pressure/draft.ts";
import { type Side, sides } from "../../book/pressure/answer.ts";
import { filledDraft, partKinds } from "../../book/pressure/opened.ts";
import { read } from "../../book/pressure/request.ts";
import { restated } from "../../book/pressure/restate.ts";
import { tables } from "../../book/pressure/tables.ts";
import { teamBikes } from "../../book/pressure/team_view.ts";
import type { Basis } from "../../book/wheels/trial.ts";
import type { RecordState } from "../../log/op/merge.ts";
import type { Ctx } from "../../ui/screen.ts";

export interface Today {
  readonly basis: Readonly<Partial<Record<Side, Basis>>>; // of the wheels that have a number
  readonly error_kpa: number; // the gauge's
}

// todayOf asks for the bike's pressures on today's ground, as Pressure would, before the rider's own shift.
export async function todayOf({ book, calc, drafts, settings }: Ctx, bike: string): Promise<Today> {
  await book.ready;
  const [bikes, parts, stored] = await Promise.all([book.all("bike"), Promise.all(partKinds.map((kind) => book.all(kind))), drafts.load("pressure")]);
  const known = new Map<string, RecordState>(parts.flat().map((state) => [state.rec, state]));
  const today = restated(readDraft(stored), settings.units);
  const team = { bikes, find: (rec: string) => known.get(rec), notes: [], who: { me: book.me, device: book.device } };
  const open = teamBikes(team, today, settings.units, tables).find(({ rec }) => rec === bike)?.reading;
  const state = bikes.find(({ rec }) => rec === bike);
  // What is open on Pressure counts as it stands there; where that is not whole, the bike's records.
  const reading = open?.body !== undefined || state === undefined ? open : read(filledDraft(state, team.find, today, team.who), settings.units, tables);
  const body = reading?.body;
  if (reading === undefined || body === undefined) return { basis: {}, error_kpa: 0 };
  const { answer } = await calc.ask("pressure", body);
  const basis: Partial<Record<Side, Basis>> = {};
  for (const side of sides) {
    const said = answer?.[side];
    const { label_mm, sidewall, setup } = body[side].tyre;
    if (said?.recommended_kpa == null || said.p0_kpa === null || said.floor_kpa === null) continue;
    basis[side] = { p0_kpa: said.p0_kpa, floor_kpa: said.floor_kpa, ceiling_kpa: said.ceiling_kpa, recommended_kpa: said.recommended_kpa, label_mm, sidewall, setup };
  }
  return { basis, error_kpa: reading.values.get("gaugeError") ?? 0 };
}
