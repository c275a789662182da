import type { Json } from "../../log/op/json.ts";
import type { RecordState } from "../../log/op/merge.ts";
import { equal, test } from "../../ui/testing.ts";
import { hex, merged, now, op } from "../value/kit.test.ts";
import { readDone } from "./done_form.ts";
import { fitChanges } from "./done_save.ts";
import { fitAsking, type FitAnswer, seatAsking, type SeatAnswer } from "./fit_asks.ts";
import { readDraft } from "./fit_draft.ts";
import { gateView, limitWords, missingGate } from "./gate_view.ts";
import { roomView } from "./room_view.ts";
import { type Known, stepsOf } from "./steps.ts";

const made = (name: string, kind: string, set: Record<string, Json>): RecordState => merged(op(hex(name), kind, set, { at: now }));

const seat: SeatAnswer = { refused: null, values: {}, cares: [], ceiling_kpa: 450, gauge_kpa: 450, limited_by: "rim", missing: null, sealant_ml: [60, 120] };
const fit: FitAnswer = {
  depth_mm: 3, slack_mm: 9.42, need_mm: 2.86, valve_costs_mm: 0.34, free_arc_mm: { finish_at_valve: 230.9, start_at_valve: 219 },
  each_tape_layer_costs_mm: 0.63, undersize_costs_mm: 9.42, second_bead_costs_mm: 0, goes_on: "easily",
};
const known: Known = { setup: "tubeless", carbon: false, hookless: false, seat, limit: "4.50 bar: the maximum on the rim", fit, edgeMm: 317 };

test("fit: what is asked, and what has to be known first", () => {
  equal(seatAsking(made("w", "wheel", {}), made("t", "tyre", {})), { missing: ["tyre.label_mm", "wheel.inner_mm", "wheel.setup"] });
  const wheel = made("w", "wheel", { inner_mm: 25, setup: "tube", max_kpa: 450, table_min_label_mm: 60, table_max_label_mm: 50, tape_layers: 2, tape_mm: 0.1 });
  equal(seatAsking(wheel, made("t", "tyre", { label_mm: 40, hookless_ok: "unknown", bead_seat_mm: 584 })), { request: {
    tyre: { label_mm: 40, setup: "tube", hookless_ok: false, tubeless_ok: false, bead_seat_mm: 584 },
    rim: { bead_seat_mm: 584, inner_mm: 25, profile: "unknown", max_kpa: 450, table_max_label_mm: 50 },
  } });
  equal(fitAsking(wheel, undefined), { missing: ["wheel.flange_mm", "wheel.well_depth_mm"] });
  equal(fitAsking(made("w", "wheel", { well_depth_mm: 3, flange_mm: 6, well_width_mm: 8 }), made("t", "tyre", { bead_mm: 4 })), { request: { bead_seat_mm: 622, well_depth_mm: 3, flange_mm: 6, well_width_mm: 8, bead_mm: 4, insert: false } });
});

test("fit: the gate is shut until the calculator has said that it is open", () => {
  equal([gateView(seat).open, gateView(undefined).open, missingGate(["wheel.inner_mm"]).open], [true, false, false]);
  const refused = gateView({ ...seat, refused: "hookless_too_narrow", values: { label_mm: 28, inner_mm: 25, least_label_mm: 30 }, ceiling_kpa: null });
  equal([refused.open, refused.severity, refused.lines[0]?.endsWith("28 mm printed, 30 mm is the least on 25 mm inside.")], [false, "stop", true]);
  equal(gateView({ ...seat, cares: ["narrow_care", "from_a_newer_app"] }).lines.length, 1);
});

test("fit: the pressure that seating never passes is rounded down, never up", () => {
  equal(limitWords({ ...seat, gauge_kpa: 503.9 }, "bar"), "5.03 bar: the maximum on the rim");
  equal(limitWords({ ...seat, gauge_kpa: 276, limited_by: "converted" }, "psi").startsWith("40.0 psi"), true);
  equal(limitWords({ ...seat, refused: "too_wide", gauge_kpa: null }, "bar"), "");
});

test("fit: the steps are those of this wheel, and no step puts a tyre on with a lever", () => {
  const ids = (way: "off" | "on" | "seat", change: Partial<Known> = {}): readonly string[] => stepsOf(way, { ...known, ...change }).map(({ id }) => id);
  equal([ids("off").includes("tubeOut"), ids("off", { setup: "tube" }).includes("tubeOut")], [false, true]);
  equal([ids("on").includes("sealantIn"), ids("on", { setup: "tube", seat: { ...seat, sealant_ml: null } }).includes("sealantIn")], [true, false]);
  equal(ids("on").indexOf("start") < ids("on").indexOf("last"), true); // starts opposite the valve, ends at it
  const on = stepsOf("on", known);
  equal([on[0]?.notes.length, stepsOf("on", { ...known, fit: { ...fit, goes_on: "not_like_this" } })[0]?.notes.length], [0, 1]);
  equal(on.filter(({ tool }) => tool === "lever"), []);
  equal(on.find(({ id }) => id === "last")?.off, { at: 0, wide: (230.9 / 317) * (180 / Math.PI) });
  equal(stepsOf("off", known).find(({ tool }) => tool === "lever")?.off.at, 180); // levers opposite the valve
  equal(stepsOf("seat", known)[1]?.words, "Never above 4.50 bar: the maximum on the rim.");
  equal(stepsOf("seat", { ...known, hookless: true })[0]?.notes.length, 1);
});

test("fit: the grade on the face, the millimetres behind it", () => {
  const view = roomView(fit);
  equal([view.title, view.why.length, view.why[3]], ["It goes on easily", 7, "So much may still be off when finishing at the valve: 231 mm"]);
});

test("fit: what was typed, read; what cannot be keeps its reason", () => {
  equal(readDone({}, "2026-07-14", "bar").done, { day: "2026-07-14", direction: "", newValve: false, newTape: false, layers: undefined, tapeMm: undefined, sealantMl: undefined });
  equal(Object.keys(readDone({ day: "2026-07-15", sealant: "900", tape: "new", layers: "x" }, "2026-07-14", "bar").faults), ["day", "layers", "sealant"]);
  equal(readDone({ tape: "kept", layers: "x" }, "2026-07-14", "bar").faults, {}); // not asked
  equal(readDraft({ tyre: 5, at: { on: 3, off: "x", other: 1 }, texts: { day: "d", n: 2 } }), { tyre: undefined, at: { on: 3 }, texts: { day: "d" } });
  equal(readDraft(undefined), { tyre: undefined, at: {}, texts: {} });
});

test("fit: the book has it whole; a measured width counts only where it was measured", () => {
  const old = made("old", "tyre", { measured_mm: 41, measured_at: now });
  const next = made("new", "tyre", { measured_mm: 39, measured_at: now, sealant_ml: 30 });
  const wheel = made("w", "wheel", { tyre: old.rec });
  const other = made("o", "wheel", { tyre: next.rec });
  let drawn = 0;
  const changes = (tyre: RecordState, texts: Record<string, string>): unknown => {
    const { done } = readDone(texts, "2026-07-14", "bar");
    if (done === undefined) throw new Error("nothing read");
    return fitChanges(done, { wheel, tyre, wheels: [wheel, other], tyres: [old, next], mounted: { bike: hex("b"), wheel: wheel.rec, side: "front" }, name: "New" }, () => hex(`e${++drawn}`))
      .map(({ rec, kind, set, shown }) => [kind, shown === undefined ? "entry" : rec, set]);
  };
  const where = { day: "2026-07-14", wheel: wheel.rec, bike: hex("b") };
  equal(changes(next, { direction: "arrow", tape: "new", layers: "1", sealant: "80" }), [
    ["wheel", wheel.rec, { tyre: next.rec, tape_day: "2026-07-14", tape_layers: 1 }],
    ["tyre", next.rec, { fitted: "2026-07-14", direction: "arrow", measured_mm: null, measured_at: null, sealant_ml: 80, sealant_day: "2026-07-14" }],
    ["tyre", old.rec, { measured_mm: null, measured_at: null }],
    ["wheel", other.rec, { tyre: null }],
    ["service", "entry", { ...where, of: next.rec, what: "fitted", done: "New" }],
    ["service", "entry", { ...where, of: wheel.rec, what: "tape" }],
    ["measure", "entry", { ...where, of: next.rec, what: "sealant", ml: 80, side: "front" }],
  ]);
  equal(changes(old, {}), [ // the same tyre again, after a flat: its width still counts
    ["tyre", old.rec, { fitted: "2026-07-14" }],
    ["service", "entry", { ...where, of: old.rec, what: "fitted", done: "New" }],
  ]);
});
