import { equal, test } from "../../ui/testing.ts";
import { hex, merged, now, op } from "../value/kit.test.ts";
import { adopted } from "./adopt.ts";
import { type Ask, askedNow, countOf, type Found, isDone, itemsOf, readWalk, renewed, restOpened, rowSkipped, stationOpened, stationSeen, type Walk, walkDraft, withFound, withValue, worstAt } from "./walk.ts";
import { alike, endedChange, foundChange, measuredChanges, pastOf, severityOf } from "./walk_save.ts";

const ask = (id: Ask["id"], more: Partial<Ask> = {}): Ask => ({ id, station: id.slice(0, id.indexOf(".")) as Ask["station"], group: "first", limit: null, care: null, measure: null, worst: "stop", source: "practice", ...more });
const rotor = ask("front_brake.rotor_thickness", { measure: "rotor_thickness", limit: { value: 1.5, unit: "mm" } });
const asked = [ask("front_wheel.bead_line"), ask("front_wheel.spokes"), ask("front_wheel.valve", { group: "rest" }), rotor];
const fresh: Walk = { bike: hex("b"), moment: "evening", check: hex("c"), started: now, asked, seen: {}, found: {}, values: {}, opened: [] };
const found: Found = { rec: hex("f"), severity: "care", words: "", clock: 4, side: "left", mm: "1,2", photos: [{ rec: hex("p"), sha256: "ab", width: 3, height: 2 }] };
const parts = { bike: hex("b"), wheel: () => hex("w"), tyre: () => hex("t") };
const stateOf = (id: string, walk: Walk): string | undefined => itemsOf(walk).find((item) => item.id === id)?.state;

test("walk: one answer for a station, findings stay, and it can be taken back", () => {
  const seen = stationSeen(fresh, "front_wheel", "ok");
  equal([isDone(seen, "front_wheel"), isDone(seen, "front_brake"), itemsOf(seen).map(({ state }) => state)], [true, false, ["ok", "ok", "skipped"]]);
  const with1 = withFound(seen, "front_wheel.bead_line", found);
  equal(itemsOf(with1)[0], { id: "front_wheel.bead_line", station: "front_wheel", state: "found", severity: "care" });
  equal(stateOf("front_wheel.bead_line", stationSeen(with1, "front_wheel", "ok")), "found");
  equal(Object.keys(stationOpened(with1, "front_wheel").seen), []);
  equal(withFound(with1, "front_wheel.bead_line", undefined).found, {});
});

test("walk: a row may be skipped by itself, and taken up again", () => {
  const skipped = stationSeen(rowSkipped(fresh, "front_wheel.spokes"), "front_wheel", "ok");
  equal([stateOf("front_wheel.spokes", skipped), stateOf("front_wheel.bead_line", skipped), countOf(itemsOf(skipped))], ["skipped", "ok", { asked: 3, looked: 1 }]);
  equal(rowSkipped(rowSkipped(fresh, "front_wheel.spokes"), "front_wheel.spokes").seen, {});
});

test("walk: the rest is asked where somebody unfolds it", () => {
  equal(askedNow(fresh).map(({ id }) => id).includes("front_wheel.valve"), false);
  const opened = restOpened(fresh, "front_wheel");
  equal([askedNow(opened).length, isDone(stationSeen(opened, "front_wheel", "ok"), "front_wheel")], [4, true]);
});

test("walk: a measured value is an answer; past its limit it cannot be talked down", () => {
  const value = (verdict: "fine" | "stop" | "care"): Walk => withValue(fresh, rotor.id, { rec: hex("m"), text: "1.62", verdict });
  equal([stateOf(rotor.id, value("fine")), isDone(value("fine"), "front_brake"), stateOf(rotor.id, value("stop")), worstAt(value("stop"), rotor.id)], ["ok", true, "found", "stop"]);
  equal(worstAt(withFound(value("stop"), rotor.id, { ...found, severity: "note" }), rotor.id), "stop");
  equal(worstAt(withFound(value("care"), rotor.id, { ...found, severity: "stop" }), rotor.id), "stop");
});

test("walk: what was stored is read back, by an older app too, and nonsense is none", () => {
  equal(readWalk(JSON.parse(JSON.stringify(withFound(fresh, "front_wheel.bead_line", found)))), withFound(fresh, "front_wheel.bead_line", found));
  for (const odd of [undefined, null, 7, {}, { ...fresh, moment: "never" }, { ...fresh, seen: 1 }]) equal(readWalk(odd), undefined);
  const old = { bike: hex("b"), moment: "evening", check: hex("c"), started: now, seen: {}, found: { "front_wheel.bead_line": found }, asked: [{ id: "front_wheel.bead_line", station: "front_wheel", title: "Bead line", worst: "stop" }, { id: "gone.row", station: "gone" }] };
  const read = readWalk(old);
  equal(read?.asked.map(({ id, group, measure }) => [id, group, measure]), [["front_wheel.bead_line", "first", null]]);
  equal(renewed(read ?? fresh, [ask("front_wheel.bead_line", { group: "rest", source: "manual" })]).asked.map(({ group, source }) => [group, source]), [["first", "manual"]]);
});

test("walk: what an older app kept comes into the book, and goes on", () => {
  const walk = withFound(fresh, "front_wheel.bead_line", found);
  const { name, changes } = adopted(walk, merged(op(hex("b"), "bike", { front: hex("w") })), []);
  equal([name, changes.map(({ kind }) => kind)], [walkDraft(hex("b"), "evening"), ["check", "finding", "photo"]]);
  equal(changes[1]?.set, {
    bike: hex("b"), thing: hex("w"), check: hex("c"), item: "front_wheel.bead_line", station: "front_wheel", day: "2026-07-14", wheel: hex("w"), severity: "care", words: "Bead line", clock: 4, side: "left", mm: 1.2, photos: [hex("p")],
  });
  equal(adopted(walk, undefined, [merged(op(hex("f"), "finding", {}))]).changes.map(({ kind }) => kind), ["check"]);
});

test("walk: entries of what was found, measured and ended; only what changed is written again", () => {
  const bead = asked[0] as Ask;
  const first = foundChange(fresh, bead, found, parts, now, undefined);
  equal([first.set["thing"], first.set["wheel"]], [hex("t"), hex("w")]);
  const state = merged(op(hex("f"), "finding", first.set));
  equal(foundChange(fresh, bead, { ...found, words: "cord shows", clock: 0 }, parts, now, state).set, { words: "cord shows", clock: null });
  equal(foundChange(fresh, bead, found, parts, now, state).set, {});
  const wheel = merged(op(hex("w"), "wheel", { rotor_min_mm: 1.5 }));
  equal(measuredChanges(fresh, rotor, hex("m"), 1.62, parts, now, () => wheel, undefined).map(({ kind, set }) => [kind, set]), [
    ["measure", { of: hex("w"), what: "rotor_thickness", mm: 1.62, day: "2026-07-14", bike: hex("b"), side: "front", wheel: hex("w") }], ["wheel", { rotor_thickness_mm: 1.62 }],
  ]);
  const ended = endedChange(stationSeen(fresh, "front_wheel", "ok"), "ride_with_care", now, undefined);
  equal([ended.set["done"], ended.set["outcome"], (ended.set["items"] as readonly unknown[]).length], [true, "ride_with_care", 3]);
});

test("findings: told of their thing, and of the bike they were made on", () => {
  const finding = (name: string, set: Record<string, string>): ReturnType<typeof merged> => merged(op(hex(name), "finding", set, { at: now }));
  const all = [finding("1", { bike: "b1", severity: "note", item: "bead" }), finding("2", { bike: "b1", thing: "w1", severity: "dire", item: "bead" }), finding("3", { bike: "b2", thing: "w1", severity: "stop", item: "bead" })];
  equal([severityOf(all[1] as never), alike(all, all[1] as never).length, alike(all, all[0] as never).length], ["care", 2, 2]);
  const done = merged(op(hex("z"), "finding_closed", { bike: "b1", finding: hex("3"), done: "new spoke" }, { at: now + 2 }));
  equal([pastOf([], all, [done], "w1").length, pastOf([], all, [done], "b1").length], [3, 2]);
});
