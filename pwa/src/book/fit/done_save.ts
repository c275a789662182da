// From what was done to the book, as one: the tyre on its wheel, fitted today; what is new; entries that stay. A measured width counts
// only on the rim it was measured on: the tyre that comes off has none any more, nor has one that was on another rim.

import type { Change } from "../../log/book_log.ts";
import type { Json } from "../../log/op/json.ts";
import { type RecordState, valueOf } from "../../log/op/merge.ts";
import { textOf } from "../checks/walk_save.ts";
import type { Mounted } from "../wheels/measure.ts";
import type { Done } from "./done_form.ts";

export interface FitPlace {
  readonly wheel: RecordState;
  readonly tyre: RecordState; // that is on now
  readonly wheels: readonly RecordState[];
  readonly tyres: readonly RecordState[];
  readonly mounted: Mounted; // where the wheel is
  readonly name: string; // of the tyre
}

const noWidth = { measured_mm: null, measured_at: null };

// fitChanges lists the changes of what is there first, then the new entries.
export function fitChanges(done: Done, place: FitPlace, newRec: () => string): readonly Change[] {
  const { wheel, tyre } = place;
  const moved = textOf(wheel, "tyre") !== tyre.rec;
  const set = {
    ...(moved && { tyre: tyre.rec }), ...(done.newValve && { valve_day: done.day }),
    ...(done.newTape && { tape_day: done.day, ...given("tape_layers", done.layers), ...given("tape_mm", done.tapeMm) }),
  };
  const changed = [
    ...(Object.keys(set).length > 0 ? [change(wheel, set)] : []),
    change(tyre, {
      fitted: done.day, ...(done.direction !== "" && { direction: done.direction }), ...(moved && isMeasured(tyre) && noWidth),
      ...(done.sealantMl !== undefined && { sealant_ml: done.sealantMl, sealant_day: done.day }),
    }),
    ...(moved ? takenOff(place) : []),
  ];
  return [...changed, ...entries(done, place, newRec)];
}

// takenOff: the old tyre's width counts no longer, and no other wheel still has the tyre that is here now.
function takenOff({ wheel, tyre, wheels, tyres }: FitPlace): readonly Change[] {
  const old = tyres.find(({ rec }) => rec === textOf(wheel, "tyre"));
  const others = wheels.filter((each) => each.rec !== wheel.rec && textOf(each, "tyre") === tyre.rec);
  return [...(old !== undefined && isMeasured(old) ? [change(old, noWidth)] : []), ...others.map((each) => change(each, { tyre: null }))];
}

function entries(done: Done, { wheel, tyre, mounted, name }: FitPlace, newRec: () => string): readonly Change[] {
  const where = {
    day: done.day, wheel: wheel.rec, ...(mounted.bike !== undefined && { bike: mounted.bike }),
  };
  const service = (of: RecordState, what: string, words = ""): Change => ({ rec: newRec(), kind: "service", set: { ...where, of: of.rec, what, ...(words !== "" && { done: words }) } });
  return [
    service(tyre, "fitted", name), ...(done.newValve ? [service(wheel, "valve")] : []), ...(done.newTape ? [service(wheel, "tape")] : []),
    ...(done.sealantMl === undefined ? [] : [{ rec: newRec(), kind: "measure", set: { ...where, of: tyre.rec, what: "sealant", ml: done.sealantMl, ...(mounted.side !== undefined && { side: mounted.side }) } }]),
  ];
}

function change(state: RecordState, set: Record<string, Json>): Change {
  return { rec: state.rec, kind: state.kind, set, shown: state };
}

function given(field: string, value: number | undefined): Record<string, Json> {
  return value === undefined ? {} : { [field]: value };
}

const isMeasured = (tyre: RecordState): boolean => typeof valueOf(tyre, "measured_mm") === "number";
