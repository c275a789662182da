import { equal, test } from "../../ui/testing.ts";
import type { WheelAnswer } from "./answer.ts";
import type { RequestBody } from "./request.ts";
import { type Row, whyRows } from "./why_view.ts";

const tyre = { label_mm: 40, sidewall: "cloth", setup: "insert", hookless_ok: true, max_kpa: 450, min_kpa: 150 } as const;
const wheel = { tyre, rim: { bead_seat_mm: 622, inner_mm: 25, profile: "unknown", max_kpa: 500 } } as const;
const question: RequestBody = {
  rider_kg: 72, bike_kg: 11, ground: [], front: wheel, rear: wheel, set: { c: 20, m: 0 }, ride: { c: 5, m: 1100 }, warmest_c: 24, gauge_error_kpa: 7, wet: true, firmness: 1, shift: { front: Math.log(0.96), rear: 0 },
};
const answer: WheelAnswer = {
  custom_kpa: 232, want_kpa: 230, p0_kpa: 230, here_gauge_kpa: 242, optimum_kpa: null, good_kpa: [89, 236], recommended_kpa: 230, set_kpa: 235, gauge_kpa: 242, at_ride_kpa: 230, floor_kpa: 194,
  ceiling_kpa: 440, limited_by: "none", likely_kpa: [221, 239], width_mm: 41.53, width_from: "measured", predicted_mm: 41, squash: 0.14, load_n: 342,
  cost_w: 0.4, loss_w: { casing: 9, roughness: 14, total: 23 }, light_share: 0.01, frame_ms2: 3, action: null, curve: [],
};

const rows = (veiled = false, of = answer): readonly Row[] => whyRows(of, { side: "front", question, unit: "bar", veiled });
const page = (start: string, veiled = false): Row["page"] => rows(veiled).find(({ label }) => label.startsWith(start))?.page;

test("why: each of the main numbers names its inputs, formula, source, and how sure it is", () => {
  const pages = rows().flatMap((row) => row.page ?? []);
  equal([pages.length, pages.every((each) => Object.values(each).every((text) => text !== ""))], [11, true]);
  equal(page("Usual practice")?.uses, "load on this wheel 342 N, width 41.5 mm, measured, squash of 14 % in front at 40 mm, wider ones a little more, Tubeless with insert");
  equal(page("Floor")?.uses.includes("Tubeless with insert, printed minimum 1.50 bar"), true);
  equal(page("Ceiling")?.uses, "tyre’s maximum 4.50 bar, rim’s maximum 5.00 bar, hookless cap 5.00 bar, set at 20 °C, 0 m, ridden at 5 °C, 1100 m, warmest 24 °C");
  equal(page("Recommended")?.uses.endsWith("0 steps of 5 %"), true); // one firmer, and wet
  equal(page("Recommended")?.sure.includes("2.21–2.39 bar"), true);
});

test("why: what a rider weighs stays hidden where it is not this phone's to show", () => {
  const told = JSON.stringify(rows(true));
  equal([told.includes("342"), told.includes(" N\"")], [false, false]);
});

test("why: a refused pair has no number anywhere", () => {
  equal(rows(false, { ...answer, custom_kpa: null }), []);
});
