// Home and the start: the air of each, how old that is, and at which of the two a person stands.

import { facts, w } from "../../words/index.ts";
import { fixed, plain } from "../../words/number.ts";
import { ageOf } from "../value/age.ts";
import type { PressureDraft } from "./draft.ts";
import type { Reading, RequestBody } from "./request.ts";

export type Here = PressureDraft["here"];

export interface PlaceView {
  readonly here: Here;
  readonly air: string; // "8 °C · 1100 m"
  readonly age: string; // "typed 2 h ago"; "" when nothing was typed
  readonly active: boolean;
}

export type PlacesView = readonly [home: PlaceView, start: PlaceView];

export function placesView(draft: PressureDraft, reading: Reading, now: number): PlacesView {
  const one = (here: Here): PlaceView => ({ here, air: airWords(here, reading), age: ageWords(here, draft, now), active: draft.here === here });
  return [one("set"), one("ride")];
}

// airWords tell what counts: what was typed, or else what is taken for it.
function airWords(here: Here, { values }: Reading): string {
  const c = values.get(`${here}.c`) ?? values.get("set.c");
  const m = values.get(`${here}.m`) ?? values.get("set.m");
  if (c === undefined && m === undefined) return w("place.assumed");
  return facts([degrees(c ?? 20), w("place.metres", { m: fixed(m ?? 0, 0) })]);
}

const staleAfter = 6 * 3600e3; // ms; weather older than this is not today's any more

function ageWords(here: Here, draft: PressureDraft, now: number): string {
  const at = here === "set" ? draft.setAt : draft.weatherAt;
  if (at === 0) return "";
  const age = ageOf(now - at);
  return now - at > staleAfter ? w("place.old", { age }) : w("place.typed", { age });
}

// hereNow is where one stands: the next day begins at Home again.
export function hereNow(draft: PressureDraft, now: number): Here {
  return draft.here === "ride" && new Date(draft.hereAt).toDateString() === new Date(now).toDateString() ? "ride" : "set";
}

// headline tells on paper which air the numbers are for.
export function headline(draft: PressureDraft, question: RequestBody | undefined): string {
  const typed = ["set.c", "set.m", "ride.c", "ride.m"].some((id) => (draft.texts[id] ?? "") !== "");
  if (!typed || question === undefined) return w("head.unsaid");
  const { ride, set } = question;
  return w("head.at", { c: degrees(ride.c), m: fixed(ride.m, 0), setC: degrees(set.c), setM: fixed(set.m, 0) });
}

export function stale(draft: PressureDraft, now: number): string {
  const at = Math.max(draft.weatherAt, draft.setAt);
  if (at === 0) return "";
  const age = ageOf(now - at);
  const typed = w("head.typed", { age });
  return now - at > staleAfter ? `${typed}. ${w("head.old", { age })}` : typed;
}

function degrees(c: number): string {
  return `${plain(Math.round(c * 10) / 10)} ${w("unit.c")}`;
}
