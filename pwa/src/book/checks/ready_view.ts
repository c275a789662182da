// Whether a bike, or a wheel by itself, may be ridden: the question as the calculator takes it, and its answer in words. Every screen
// shows this; none works out its own.

import type { Answers, Requests } from "../../contract/contract.ts";
import { type RecordState, valueOf } from "../../log/op/merge.ts";
import { facts, isKey, w } from "../../words/index.ts";
import { plain } from "../../words/number.ts";
import { whenWords } from "../value/when.ts";
import { dayAge } from "../wheels/measure_days.ts";
import { buildOf, wheelOf } from "./build.ts";
import { type Events, eventsOf } from "./ready_events.ts";
import { partsOf } from "./rows.ts";
import { textOf } from "./walk_save.ts";

export type ReadyAnswer = Answers["ready"];
type Reason = ReadyAnswer["reasons"][number];
type Find = (rec: string) => RecordState | undefined;

// readyRequest asks about a bike with all that is mounted on it.
export function readyRequest(bike: RecordState, find: Find, events: Events, today: string): Requests["ready"] {
  const parts = partsOf(bike, find);
  const things = [bike.rec, ...(["front", "rear"] as const).flatMap((side) => [parts.wheel(side), parts.tyre(side)])].filter((rec) => rec !== "");
  return { bike: { id: bike.rec, ...buildOf(bike, find) }, today, events: eventsOf(events, [...new Set(things)]) };
}

// wheelRequest asks about a wheel by itself, as for a spare.
export function wheelRequest(wheel: RecordState, find: Find, events: Events, today: string): Requests["ready"] {
  const end = wheelOf(wheel, find);
  const side = valueOf(wheel, "side") === "rear" ? "rear" : "front";
  return { bike: { [side]: end }, today, events: eventsOf(events, [wheel.rec, textOf(wheel, "tyre")].filter((rec) => rec !== "")) };
}

export interface ReasonView {
  readonly key: string;
  readonly severity: "stop" | "care";
  readonly words: string; // what is wrong
  readonly detail: string; // where and when
  readonly href: string; // where something can be done about it
  readonly act: string; // what is done there
}

export interface ReadyView {
  readonly state: ReadyAnswer["state"];
  readonly title: string; // "Do not ride"
  readonly line: string; // all in a line: "Do not ride: 2 reasons"
  readonly look: string; // how much was looked at; "" where nothing was
  readonly lookAt: string; // and when
  readonly reasons: readonly ReasonView[]; // the worst first
}

// readyView puts an answer into words. The finders know the records that the reasons name.
export function readyView({ state, reasons, last_look }: ReadyAnswer, of: string, find: Find, now: number, more = 0): ReadyView {
  const views = reasons.map((reason) => reasonView(reason, of, find, now));
  const looked = last_look === null ? "" : dayAge(last_look.day, now);
  const count = reasons.filter(({ severity }) => severity === (state === "stop" ? "stop" : "care")).length;
  return {
    state, title: w(`ready.state.${state}`), line: lineOf(state, count, looked), reasons: views,
    look: state !== "no_fault_found" || last_look === null ? "" : more > 0 ? w("ready.lookMore", { ...last_look, more }) : w("ready.look", { asked: last_look.asked, looked: last_look.looked }),
    lookAt: last_look === null ? w("ready.never") : w(state === "no_fault_found" ? "ready.lookAt" : "ready.lastAt", { moment: w(`checks.moment.${last_look.moment}`), when: looked }),
  };
}

function lineOf(state: ReadyAnswer["state"], n: number, when: string): string {
  switch (state) {
    case "stop": case "care": return w(`ready.line.${state}`, { n });
    case "no_fault_found": return w("ready.line.fine", { when });
    case "not_looked_at": return when === "" ? w("ready.line.never") : w("ready.line.old", { when });
  }
}

function reasonView(reason: Reason, of: string, find: Find, now: number): ReasonView {
  const { code, thing, severity, day, values } = reason;
  const at = values["at"];
  const when = typeof at === "number" && day !== "" ? whenWords(at, now) : dayAge(day, now);
  const say = (words: string, detail: string, href: string, act = w("ready.show")): ReasonView =>
    ({ key: [code, thing, String(values["id"] ?? values["what"] ?? values["moment"] ?? values["trip"] ?? ""), String(values["mm"] ?? ""), day, String(at ?? "")].join(" "), severity, words, detail, href, act });
  const number = (name: string): number => (typeof values[name] === "number" ? values[name] : 0);
  const text = (name: string): string => (typeof values[name] === "string" ? values[name] : "");
  const bike = find(thing)?.kind === "bike" || thing === of ? thing : of;
  switch (code) {
    case "finding": {
      const finding = find(text("id"));
      return say(textOf(finding, "words") || w("recKind.finding"), facts([stationWords(finding), w("ready.found", { when })]), `#/checks/finding/${text("id")}`, w("ready.whatWasDone"));
    }
    case "measured":
      return say(measuredWords(text("what"), number("mm"), number("limit_mm")), facts([endWords(text("side")), w("ready.measuredAt", { when })]), measuredWay(text("what"), thing, find), w("ready.whatWasDone"));
    case "pair":
      return say(pairWords(text("why")), facts([endWords(text("side")), w("ready.pairSizes", { tyre: number("label_mm"), inner: number("inner_mm") })]), thing === "" ? "" : `#/wheels/${thing}`);
    case "arrival": return say(w("ready.arrival", { n: number("must_left") }), when, text("trip") === "" ? "" : `#/packing/${text("trip")}/arrival`);
    case "crash": return say(w("ready.crash"), when, `#/checks/walk/${bike}/crash`, w("due.go"));
    case "journey": return say(w("ready.journey"), when, `#/checks/walk/${bike}/arrival`, w("due.go"));
    case "skipped":
      return say(w("ready.skipped", { n: number("skipped"), asked: number("asked") }), facts([w(`checks.moment.${text("moment")}` as "checks.moment.start"), when]), `#/checks/walk/${bike}/${text("moment")}`, w("due.go"));
  }
}

function measuredWords(what: string, mm: number, limit: number): string {
  return w(`ready.measured.${what}` as "ready.measured.pads", { mm: plain(mm), limit: plain(limit) });
}

function measuredWay(what: string, thing: string, find: Find): string {
  const known = what.startsWith("rotor") || what === "rim_runout";
  return find(thing)?.kind === "wheel" && known ? `#/wheels/measure/${thing}/${what}` : `#/wheels/${thing}`;
}

const endWords = (side: string): string => (side === "front" || side === "rear" ? w(`ready.end.${side}`) : "");

function stationWords(finding: RecordState | undefined): string {
  const station = textOf(finding, "station");
  return isKey(`checks.station.${station}`) ? w(`checks.station.${station}` as "checks.station.bar") : "";
}

function pairWords(why: string): string {
  return isKey(`ready.pair.${why}`) ? w(`ready.pair.${why}` as "ready.pair.too_wide") : w("ready.pair.other");
}
