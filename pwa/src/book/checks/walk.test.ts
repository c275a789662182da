import cases from "../../../../calc/check/testdata/outcomes.json";
import { equal, test } from "../../ui/testing.ts";
import { hex, merged, now, op } from "../value/kit.test.ts";
import { type Ask, entryItems, type Found, isDone, type Item, itemsOf, readWalk, stationOpened, stationSeen, verdictOf, type Walk, withFound } from "./walk.ts";
import { asMeasured, judged, type Measure } from "./walk_measure.ts";
import { alike, openFindings, pastOf, severityOf, walkChanges } from "./walk_save.ts";

const ask = (id: string, station: Ask["station"]): Ask => ({ id, station, title: `${id}?`, look_for: "", how: "", limit: "", worst: "stop", source: "" });
const asked = [ask("bead", "front_wheel"), ask("spokes", "front_wheel"), ask("rotor", "front_brake")];
const fresh: Walk = { bike: hex("b"), moment: "start", check: hex("c"), started: now, asked, seen: {}, found: {} };
const found: Found = { rec: hex("f"), severity: "stop", words: "", clock: 4, side: "left", mm: "1,2", photos: [{ rec: hex("p"), sha256: "ab", width: 3, height: 2 }] };

test("walk: the outcome, held to the calculator's cases", () => {
  equal(cases.length > 5, true);
  for (const { items, outcome, looked, of } of cases as unknown as readonly { items: readonly Item[]; outcome: string; looked: number; of: number }[]) equal(verdictOf(items), { outcome, looked, of });
});

test("walk: adding a finding never makes it better, nor does skipping", () => {
  const rank = { nothing_found: 0, ride_with_care: 1, do_not_ride: 2 };
  const states: readonly Item[] = [{ state: "ok" }, { state: "skipped" }, { state: "found", severity: "note" }, { state: "found", severity: "care" }, { state: "found", severity: "stop" }];
  for (const a of states) for (const b of states) for (const c of states) {
    const before = rank[verdictOf([{ state: "ok" }, a, b]).outcome];
    const after = rank[verdictOf([c, a, b]).outcome];
    equal([a, b, c, after >= before], [a, b, c, true]);
    if ([a, b, c].some(({ state }) => state === "skipped")) equal(verdictOf([a, b, c]).outcome === "nothing_found", false);
    if ([a, b, c].some(({ severity }) => severity === "stop")) equal(verdictOf([a, b, c]).outcome, "do_not_ride");
  }
  equal(verdictOf([]).outcome, "ride_with_care");
});

test("walk: one answer for a station, findings stay, and it can be taken back", () => {
  const seen = stationSeen(fresh, "front_wheel", "ok");
  equal([isDone(seen, "front_wheel"), isDone(seen, "front_brake"), itemsOf(seen).map(({ state }) => state)], [true, false, ["ok", "ok", "skipped"]]);
  const with1 = withFound(seen, "bead", found);
  equal(itemsOf(with1)[0], { state: "found", severity: "stop" });
  equal(itemsOf(stationSeen(with1, "front_wheel", "ok"))[0]?.state, "found");
  equal(Object.keys(stationOpened(with1, "front_wheel").seen), []);
  equal(withFound(with1, "bead", undefined).found, {});
  equal(itemsOf(stationSeen(stationSeen(fresh, "front_wheel", "skipped"), "front_wheel", "ok")).map(({ state }) => state), ["ok", "ok", "skipped"]);
});

test("walk: what was stored is read back, and nonsense is none", () => {
  equal(readWalk(JSON.parse(JSON.stringify(withFound(fresh, "bead", found)))), withFound(fresh, "bead", found));
  for (const odd of [undefined, null, 7, {}, { ...fresh, moment: "never" }, { ...fresh, seen: 1 }]) equal(readWalk(odd), undefined);
});

test("walk: the entries of a finished one", () => {
  const changes = walkChanges(withFound(stationSeen(fresh, "front_wheel", "ok"), "bead", found), { front: hex("w") }, now);
  const day = "2026-07-14";
  equal(changes.map(({ kind, rec }) => [kind, rec]), [["check", hex("c")], ["finding", hex("f")], ["photo", hex("p")]]);
  equal(changes[0]?.set, {
    bike: hex("b"), moment: "start", day, items: entryItems(withFound(stationSeen(fresh, "front_wheel", "ok"), "bead", found)),
    outcome: "do_not_ride", started: now, done: true,
  });
  equal(changes[1]?.set, {
    bike: hex("b"), check: hex("c"), day, item: "bead", station: "front_wheel", wheel: hex("w"), severity: "stop", words: "bead?", clock: 4, side: "left", mm: 1.2, photos: [hex("p")],
  });
  equal(changes[2]?.set, { of: hex("f"), bike: hex("b"), day, sha256: "ab", width: 3, height: 2 });
});

test("findings: open until an entry says what was done; the worst first", () => {
  const finding = (name: string, severity: string, bike = "b1"): ReturnType<typeof merged> => merged(op(hex(name), "finding", { bike, severity, item: "bead" }, { at: now }));
  const all = [finding("1", "note"), finding("2", "stop"), finding("3", "care"), finding("4", "stop", "b2"), finding("5", "dire")];
  const closed = [merged(op(hex("x"), "finding_closed", { finding: hex("3"), done: "new tyre" }))];
  equal(openFindings(all, closed, "b1").map(({ rec }) => rec), [hex("2"), hex("5"), hex("1")]);
  equal(openFindings(all, [merged(op(hex("y"), "finding_closed", { finding: hex("2") }), op(hex("y"), "finding_closed", { deleted: true }))], "b1").length, 4);
  equal([severityOf(all[4] as never), openFindings(all, [], undefined)], ["care", []]);
  equal(alike(all, all[0] as never).length, 4);
  const onWheel = merged(op(hex("6"), "finding", { bike: "b1", wheel: "w1", severity: "note" }, { at: now + 1 }));
  const done = merged(op(hex("z"), "finding_closed", { bike: "b1", finding: hex("6"), done: "new spoke" }, { at: now + 2 }));
  equal([pastOf([], [...all, onWheel], [done, ...closed], "w1").map(({ rec }) => rec), pastOf([], [...all, onWheel], [done], "b1").length], [[hex("z"), hex("6")], 6]);
});

test("walk: a measured value makes it worse, never better", () => {
  const pads: Measure = { what: "pads", unit: "mm", stop: { when: "to", mm: 0.5 }, care: { when: "to", mm: 1.5 } };
  const gap: Measure = { what: "gap", unit: "mm", stop: { when: "below", mm: 1.6 }, care: null };
  const runout: Measure = { what: "rim_runout", unit: "mm", stop: null, care: { when: "above", mm: 0.8 } };
  equal([0.4, 0.5, 0.51, 1.5, 1.51].map((mm) => judged(pads, mm)), ["stop", "stop", "care", "care", undefined]);
  equal([judged(gap, 1.6), judged(gap, 1.59), judged(runout, 0.8), judged(runout, 0.81)], [undefined, "stop", undefined, "care"]);
  const of = (severity: Found["severity"], mm: string): Found["severity"] => asMeasured({ ...ask("pads", "front_brake"), measure: pads }, { ...found, severity, mm }).severity;
  equal([of("note", "0,4"), of("note", "0.05 cm"), of("stop", "3"), of("note", "abc"), of(undefined, "1.2")], ["stop", "stop", "stop", "note", "care"]);
  equal(asMeasured(ask("pads", "front_brake"), { ...found, severity: "note", mm: "0" }).severity, "note");
});
