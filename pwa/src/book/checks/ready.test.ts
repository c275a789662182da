import type { Json } from "../../log/op/json.ts";
import type { RecordState } from "../../log/op/merge.ts";
import { equal, test } from "../../ui/testing.ts";
import { hex, merged, now, op } from "../value/kit.test.ts";
import { eventsIn, type ReadyLists } from "./ready_events.ts";
import { type ReadyAnswer, readyRequest, readyView, wheelRequest } from "./ready_view.ts";

const ago = (days: number): number => now - days * 86_400_000;
const made = (name: string, kind: string, set: Record<string, Json>, at = ago(9)): RecordState => merged(op(hex(name), kind, set, { at }));
const none: ReadyLists = { bike: [], wheel: [], tyre: [], finding: [], finding_closed: [], check: [], measure: [], service: [], trip: [] };
const tyre = made("t", "tyre", { label_mm: 40, hookless_ok: "yes" });
const front = made("w", "wheel", { tyre: tyre.rec, inner_mm: 25, profile: "hookless", rotor_min_mm: 1.5 });
const bike = made("b", "bike", { front: front.rec, name: "Ochre" });
const parts: ReadyLists = { ...none, bike: [bike], wheel: [front], tyre: [tyre] };

const asked = (lists: ReadyLists, of: RecordState = bike): readonly string[] => {
  const known = new Map(Object.values(lists).flat().map((state) => [state.rec, state]));
  const { events = [] } = readyRequest(of, (rec) => known.get(rec), eventsIn(lists), "2026-07-14");
  return events.map(({ kind, thing, what, moment, id }) => [kind, thing === front.rec ? "wheel" : thing === tyre.rec ? "tyre" : thing === bike.rec ? "bike" : "", what ?? moment ?? (id === undefined ? "" : "id")].join(" ").trim());
};

test("ready: a bike is asked about with what is mounted on it, and since when", () => {
  const known = new Map([bike, front, tyre].map((state) => [state.rec, state]));
  const { bike: built } = readyRequest(bike, (rec) => known.get(rec), eventsIn(parts), "2026-07-14");
  equal(built, { id: bike.rec, front: { profile: "hookless", wheel: front.rec, tyre: tyre.rec, inner_mm: 25, label_mm: 40, hookless_ok: true, rotor_min_mm: 1.5 } });
  equal(asked(parts), ["mounted wheel", "mounted tyre"]);
});

test("ready: a finding is filed under its thing, an old one by bike and side; closed ones say nothing", () => {
  const finding = (name: string, set: Record<string, Json>): RecordState => made(name, "finding", { severity: "stop", bike: bike.rec, ...set }, ago(2));
  const of = (set: Record<string, Json>): readonly string[] => asked({ ...parts, finding: [finding("f", set)] }).filter((each) => each.startsWith("finding"));
  equal(of({ thing: front.rec, item: "front_wheel.spokes" }), ["finding wheel id"]);
  equal(of({ thing: hex("elsewhere"), item: "front_wheel.spokes" }), []);
  equal(of({ item: "front_wheel.spokes" }), ["finding wheel id"]);
  equal(of({ item: "front_wheel.cuts" }), ["finding tyre id"]);
  equal(of({ item: "front_wheel.spokes", wheel: hex("gone") }), []); // it went with its wheel
  equal(of({ item: "bar.levers" }), ["finding bike id"]);
  equal(of({ item: "front_brake.disc", wheel: hex("gone") }), ["finding bike id"]); // pads stay
  equal(of({ item: "front_brake.disc" }), ["finding wheel id", "finding bike id"].toReversed());
  equal(of({}), ["finding bike id"]);
  const closed = made("x", "finding_closed", { finding: hex("f"), done: "new tyre" });
  equal(asked({ ...parts, finding: [finding("f", {})], finding_closed: [closed] }).filter((each) => each.startsWith("finding")), []);
});

test("ready: what was measured goes with the wheel; a thickness typed on its page counts", () => {
  const measure = (set: Record<string, Json>): RecordState => made("m", "measure", { what: "rotor_thickness", mm: 1.4, ...set }, ago(1));
  equal(asked({ ...parts, measure: [measure({ of: front.rec })] }).includes("measured wheel rotor_thickness"), true);
  equal(asked({ ...parts, measure: [measure({ of: hex("other") })] }).some((each) => each.startsWith("measured")), false);
  equal(asked({ ...parts, measure: [measure({ of: bike.rec, what: "gap" })] }).includes("measured bike room"), true);
  equal(asked({ ...parts, measure: [measure({ of: bike.rec, what: "room", mm: 48 })] }).some((each) => each.startsWith("measured")), false);
  const typed = made("w", "wheel", { tyre: tyre.rec, rotor_thickness_mm: 1.4 });
  equal(asked({ ...parts, wheel: [typed] }).filter((each) => each.startsWith("measured")), ["measured wheel rotor_thickness"]);
  equal(asked({ ...parts, wheel: [typed], measure: [measure({ of: typed.rec })] }).filter((each) => each.startsWith("measured")).length, 1);
});

test("ready: walks, the crash that a begun one tells of, and journeys", () => {
  const items = [{ id: "a", state: "ok" }, { id: "b", state: "skipped" }];
  const walk = (set: Record<string, Json>): ReadyLists => ({ ...parts, check: [made("c", "check", { bike: bike.rec, moment: "crash", day: "2026-07-13", items, ...set }, ago(1))] });
  equal(asked(walk({ done: true })).filter((each) => !each.startsWith("mounted")), ["walk  crash"]);
  equal(asked(walk({ done: false, started: ago(1) })).filter((each) => !each.startsWith("mounted")), ["walk  crash", "crash"]);
  equal(asked(walk({ done: false, moment: "evening" })).filter((each) => !each.startsWith("mounted")), ["walk  evening"]);
  const trip = made("x", "trip", { bikes: [bike.rec], from: "2026-07-10", to: "2026-07-12" });
  equal(asked({ ...parts, trip: [trip] }).filter((each) => each === "journey").length, 2);
});

const answer: ReadyAnswer = {
  state: "stop", last_look: { moment: "evening", day: "2026-07-13", asked: 20, looked: 20 },
  reasons: [
    { code: "finding", thing: bike.rec, severity: "stop", day: "2026-07-13", values: { id: hex("f"), item: "bar.levers" } },
    { code: "measured", thing: front.rec, severity: "stop", day: "2026-07-12", values: { what: "rotor_thickness", mm: 1.45, limit_mm: 1.5, when: "below", side: "rear" } },
    { code: "crash", thing: bike.rec, severity: "stop", day: "2026-07-12", values: {} }, { code: "journey", thing: bike.rec, severity: "care", day: "2026-07-11", values: {} },
    { code: "arrival", thing: bike.rec, severity: "stop", day: "2026-07-11", values: { trip: "t1", must_left: 1 } },
    { code: "skipped", thing: bike.rec, severity: "care", day: "2026-07-11", values: { moment: "start", asked: 9, looked: 8, skipped: 1 } },
    { code: "pair", thing: front.rec, severity: "stop", day: "2026-07-14", values: { why: "hookless_too_narrow", side: "front", label_mm: 28, inner_mm: 25 } },
    { code: "pair", thing: front.rec, severity: "stop", day: "2026-07-14", values: { why: "something_new", side: "front", label_mm: 28, inner_mm: 25 } },
  ],
};

test("ready: every reason has words and somewhere to go", () => {
  const finding = made("f", "finding", { words: "lever comes to the bar", station: "bar" });
  const view = readyView(answer, bike.rec, (rec) => (rec === finding.rec ? finding : rec === front.rec ? front : bike), now);
  equal([view.title, view.line, view.look], ["Do not ride", "Do not ride: 6 reasons", ""]);
  equal(view.reasons.map(({ words }) => words), [
    "lever comes to the bar", "Rotor 1.45 mm thick, the least is 1.5 mm", "A crash, and no walk-around after it", "A journey, and no walk-around after it", "1 step left before it is ridden",
    "1 of 9 rows not looked at", "This tyre is too narrow for this hookless rim", "This tyre may not go on this rim",
  ]);
  equal(view.reasons.slice(0, 3).map(({ detail, href }) => [detail, href]), [
    ["Bar and stem · found yesterday", `#/checks/finding/${hex("f")}`], ["Rear · measured 2 days ago", `#/wheels/measure/${front.rec}/rotor_thickness`], ["2 days ago", `#/checks/walk/${bike.rec}/crash`],
  ]);
  equal(new Set(view.reasons.map(({ key }) => key)).size, 7);
});

test("ready: no fault found says how much was looked at, and what was not opened", () => {
  const fine: ReadyAnswer = { state: "no_fault_found", reasons: [], last_look: { moment: "evening", day: "2026-07-13", asked: 20, looked: 20 } };
  const say = (of: ReadyAnswer, more = 0): readonly string[] => {
    const { title, line, look } = readyView(of, bike.rec, () => undefined, now, more);
    return [title, line, look];
  };
  equal(say(fine), ["No fault found", "No fault found, yesterday", "No fault found: 20 of 20 checked"]);
  equal(say(fine, 38)[2], "No fault found: 20 of 20 checked; 38 more not opened");
  equal(say({ ...fine, state: "not_looked_at" }), ["Not looked at", "Not looked at since yesterday", ""]);
  equal(say({ ...fine, state: "not_looked_at", last_look: null }), ["Not looked at", "Not looked at", ""]);
});

test("ready: a wheel by itself is asked about as a spare", () => {
  const { bike: of, events } = wheelRequest(front, (rec) => (rec === tyre.rec ? tyre : undefined), eventsIn(parts), "2026-07-14");
  equal([Object.keys(of), events?.length], [["front"], 2]);
});
