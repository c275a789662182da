// One station of a walk-around as its part shows it.

import { type Parts, rowTitle, thingOf } from "../../book/checks/rows.ts";
import { type Ask, askedNow, type Station, stationsOf, type Walk, worstAt } from "../../book/checks/walk.ts";
import { millimetres } from "../../book/checks/walk_save.ts";
import { newestMeasure } from "../../book/wheels/measure.ts";
import { dayAge } from "../../book/wheels/measure_days.ts";
import { type RecordState, valueOf } from "../../log/op/merge.ts";
import { w } from "../../words/index.ts";
import { plain } from "../../words/number.ts";
import type { AskView, StationView } from "./station.ts";
import type { FoundView } from "./found_form.ts";

export interface Around {
  readonly writing: string; // the ask whose finding is being written
  readonly photoFault: string;
  readonly picture: FoundView["picture"];
  readonly parts: Parts;
  readonly find: (rec: string) => RecordState | undefined;
  readonly measures: readonly RecordState[]; // all of the book
  readonly now: number;
}

export function stationView(walk: Walk, station: Station, around: Around): StationView {
  const all = stationsOf(walk);
  const here = walk.asked.filter((ask) => ask.station === station);
  const asked = askedNow(walk).filter((ask) => ask.station === station);
  return {
    station, n: all.indexOf(station) + 1, of: all.length, back: all.indexOf(station) > 0, rest: here.length - asked.length,
    asks: asked.map((ask) => askView(walk, ask, around)),
  };
}

function askView(walk: Walk, ask: Ask, around: Around): AskView {
  const { id } = ask;
  const value = walk.values[id];
  const bad = worstAt(walk, id);
  return {
    ask, bad, found: walk.found[id], skipped: walk.seen[id] === "skipped", value: value?.text ?? "",
    verdict: value === undefined || value.verdict === "" ? "" : w(`checks.verdict.${value.verdict}`),
    fault: value !== undefined && millimetres(value.text) === undefined ? w("checks.noLength") : "",
    before: beforeWords(ask, value?.rec, around), mark: unreadMark(ask, around), form: id === around.writing ? formOf(walk, ask, around) : undefined,
  };
}

// beforeWords is what was written down of the same thing before this walk: run-out on arrival is held against it.
function beforeWords({ id, measure }: Ask, mine: string | undefined, { parts, measures, now }: Around): string {
  if (measure !== "rotor_runout" && measure !== "rim_runout" && measure !== "rotor_thickness") return "";
  const thing = thingOf(id, parts);
  const entries = measures.filter(({ rec }) => rec !== mine);
  const before = newestMeasure(entries, thing, measure);
  return before === undefined ? "" : w("checks.before", { mm: plain(before.value), when: dayAge(before.day, now) });
}

function unreadMark({ id, measure }: Ask, { parts, find }: Around): string {
  const wheel = find(thingOf(id, parts));
  return measure === "rotor_thickness" && wheel?.kind === "wheel" && typeof valueOf(wheel, "rotor_min_mm") !== "number" ? `#/wheels/${wheel.rec}` : "";
}

function formOf(walk: Walk, ask: Ask, { photoFault, picture }: Around): FoundView | undefined {
  const found = walk.found[ask.id];
  return found && { ask: ask.id, title: rowTitle(ask.id), found, wheel: ask.station.endsWith("_wheel"), sized: ask.measure === null, photoFault, picture };
}
