// The whole Pressure screen as a pure function of what was typed, what was answered, and the time.

import { facts as joined, listed, w } from "../../words/index.ts";
import { type Side, sides } from "./answer.ts";
import type { PressureDraft } from "./draft.ts";
import { labelOf } from "./field_view.ts";
import type { Kept } from "./kept.ts";
import { type NoticeView, noticeViews } from "./notices.ts";
import { headline, type PlacesView, placesView, stale } from "./places_view.ts";
import type { PressureUnit } from "../value/quantity.ts";
import { faultsOf, type Reading, type RequestBody } from "./request.ts";
import type { Scene } from "./told.ts";
import { type Held, type WheelView, wheelView } from "./wheel_view.ts";

export interface ScreenView {
  readonly heading: string;
  readonly headline: string; // for paper: the air that the numbers are for
  readonly stale: string; // its age
  readonly places: PlacesView;
  readonly wheels: readonly WheelView[];
  readonly notices: readonly NoticeView[];
  readonly assumed: string;
  readonly firm: string;
  readonly spoken: string; // for those who listen
}

export interface Facts {
  readonly draft: PressureDraft;
  readonly reading: Reading;
  readonly kept: Kept | undefined;
  readonly unit: PressureUnit;
  readonly broken: string; // why no answer comes; "" while one does
  readonly now: number;
  readonly ages?: Ages;
}

// Ages tell how old the measured widths are; "" where nothing was measured.
export type Ages = Readonly<Record<Side, string>>;

export function screenView(facts: Facts): ScreenView {
  const { draft, kept, unit, reading, now } = facts;
  const question = kept?.question;
  const scene = sceneOf(question, unit);
  const notices = kept === undefined ? [] : noticeViews(kept.answer, unit);
  const wheels = sides.map((side) => wheelOf(side, facts, notices, scene));
  return {
    heading: draft.bike || w("head.bike"), headline: headline(draft, question), stale: stale(draft, now), places: placesView(draft, reading, now), wheels,
    notices: notices.filter((each) => each.severity !== "stop" && each.code !== underReasons),
    assumed: reading.assumed.length === 0 ? "" : w("assumed.list", { what: listed(reading.assumed.map((each) => w(`assumed.${each}`))) }),
    firm: firmness(draft),
    spoken: wheels.map((each) => w("said.wheel", { side: each.title, what: spokenOf(each) })).join(" "),
  };
}

// How far the sums hold is told with the reasons, not on the face.
export const underReasons = "wheel_leaves_ground";

// sceneOf is where the answered question's gauge is read.
export function sceneOf(question: RequestBody | undefined, unit: PressureUnit): Scene {
  const rideC = question?.ride.c ?? 20;
  return { unit, rideC, hereC: question === undefined || question.here === "ride" ? rideC : question.set.c };
}

function spokenOf(wheel: WheelView): string {
  if (wheel.old !== "") return w("wheel.oldWhy", { reason: wheel.old });
  if (wheel.number === "") return [w("wheel.none"), ...wheel.stops].join(". ").replace(/\.$/, "");
  return `${wheel.number} ${wheel.unit}, ${wheel.act}`;
}

function wheelOf(side: Side, facts: Facts, notices: readonly NoticeView[], scene: Scene): WheelView {
  const { draft, kept, reading, broken } = facts;
  const { faults } = reading;
  const own = faultsOf(side, draft, faults);
  const none = { side, title: w(`side.${side}`), width: "", number: "", kpa: undefined, unit: w(`unit.${facts.unit}`), act: "", strokes: "", told: "", ruler: undefined, old: "" };
  // An edge or width that decides whether the tyre may be mounted at all blanks the number: it is not merely old.
  if (own.some((id) => id.endsWith(".inner") && faults.get(id)?.why === "measure")) return { ...none, stops: [w("wheel.measureInner")], wanting: "inner" };
  if (kept === undefined) return { ...none, stops: [waitingFor(own, reading) || broken || w("wheel.waiting")], wanting: "" };
  // A fault of the other wheel holds up this one's answer too, unless it is a gauge's reading.
  const bad = own.length > 0 ? own : [...faults.keys()].filter((id) => !id.startsWith("now."));
  const old = waitingFor(bad.slice(0, 1), reading) || broken;
  return wheelView(side, kept.answer, notices, scene, heldOf(side, facts), old, facts.ages?.[side]);
}

// waitingFor names what is missing, or else what is wrong.
function waitingFor(ids: readonly string[], { faults }: Reading): string {
  const missing = ids.filter((id) => faults.get(id)?.why === "missing");
  if (missing.length > 0) return w("wheel.missing", { fields: listed(missing.map(labelOf)) });
  return ids[0] === undefined ? "" : w("wheel.oldField", { field: labelOf(ids[0]) });
}

function heldOf(side: Side, { kept, reading }: Facts): Held {
  if (reading.faults.has(`now.${side}`)) return { kpa: undefined, from: "faulty" };
  const read = reading.values.get(`now.${side}`);
  if (read !== undefined) return { kpa: read, from: "read" };
  const kpa = side === "front" ? kept?.question.now?.front_gauge_kpa : kept?.question.now?.rear_gauge_kpa;
  return kpa === undefined ? { kpa, from: "nothing" } : { kpa, from: "expected" };
}

function firmness(draft: PressureDraft): string {
  const n = Math.abs(draft.firmness);
  const steps = draft.firmness === 0 ? w("firm.none") : draft.firmness < 0 ? w("firm.softer", { n }) : w("firm.firmer", { n });
  return draft.wet ? joined([steps, w("firm.wet")]) : steps;
}
