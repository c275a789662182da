import { equal, test } from "../../ui/testing.ts";
import type { Notice, PressureAnswer, WheelAnswer } from "./answer.ts";
import type { RequestBody, RimBody, WheelBody } from "./request.ts";
import type { Tables } from "./tables.ts";
import { labelsRound, widthCautions, widthQuestion, widthRow } from "./widths.ts";

const tables: Tables = { bounds: new Map(), usualInner: [{ up_to: 46, value: 23 }, { up_to: 57, value: 25 }] };

const body = (rim: Partial<RimBody> = {}): RequestBody => {
  const wheel: WheelBody = {
    tyre: { label_mm: 40, measured_mm: 41.5, sidewall: "glove", setup: "tubeless", hookless_ok: false, max_kpa: 400, min_kpa: 150 },
    rim: { bead_seat_mm: 622, inner_mm: 25, profile: "hooked", ...rim },
  };
  return { rider_kg: 72, bike_kg: 11, ground: [], front: wheel, rear: wheel, set: { c: 20, m: 0 }, ride: { c: 20, m: 0 }, gauge_error_kpa: 0, wet: false, firmness: 0, shift: { front: -0.02, rear: -0.02 }, now: { front_gauge_kpa: 210 } };
};

test("widths: those next to the mounted one", () => {
  equal(labelsRound(40), [32, 35, 38, 40, 42, 45, 47, 50]);
  equal(labelsRound(18), [18, 20, 23, 25, 28]);
  equal(labelsRound(70), [60, 63, 66, 70]);
});

test("widths: what is marked on or measured of the mounted tyre does not count for another", () => {
  equal(widthQuestion(body({ max_kpa: 500 }), 45).front.tyre, { label_mm: 45, sidewall: "glove", setup: "tubeless", hookless_ok: true, max_kpa: 500 });
  equal(widthQuestion(body(), 40).rear, body().rear);
  equal("now" in widthQuestion(body(), 45), false);
  equal(widthQuestion(body(), 45).shift, { front: -0.02, rear: -0.02 });
});

test("widths: another tyre never gets more than the rim allows", () => {
  const top = (rim: Partial<RimBody>): number | undefined => widthQuestion(body(rim), 45).front.tyre.max_kpa;
  equal([top({}), top({ max_kpa: 450 }), top({ max_kpa: 450, table_max_kpa: 380 })], [undefined, 450, 380]);
  equal([top({ profile: "hookless" }), top({ profile: "unknown", max_kpa: 600 })], [500, 500]);
});

const answer = (front: number | null, rear: number | null, notices: readonly Notice[] = []): PressureAnswer => {
  const wheel = (gauge_kpa: number | null): WheelAnswer =>
    ({ gauge_kpa, here_gauge_kpa: gauge_kpa, recommended_kpa: gauge_kpa, limited_by: "none", ceiling_kpa: null, floor_kpa: null }) as unknown as WheelAnswer;
  return { front: wheel(front), rear: wheel(rear), notices, bigger_tyre: [] };
};

const stop = (wheel: "front" | "rear", code: Notice["code"], severity: Notice["severity"] = "stop"): Notice => ({ code, severity, wheel, values: {} });

test("widths: a row tells both numbers, or why there is none", () => {
  const row = (mm: number, given: PressureAnswer, room = {}): unknown =>
    widthRow({ mm, question: widthQuestion(body(), mm), answer: given }, "bar", room, tables, body());
  equal(row(45, answer(192.4, 208)), { mm: 45, mounted: false, numbers: { front: "1.92", rear: "2.08" }, why: [] });
  equal(row(40, answer(210, 228)), { mm: 40, mounted: true, numbers: { front: "2.10", rear: "2.28" }, why: [] });
  const refused = row(57, answer(null, null, [stop("front", "too_wide"), stop("rear", "too_wide")])) as { numbers: unknown; why: readonly string[] };
  equal([refused.numbers, refused.why.length, refused.why[0]?.startsWith("No pressure for this pair.")], [{ front: "", rear: "" }, 1, true]);
  const care = row(45, answer(190, 208, [stop("front", "wide_care", "care")])) as { why: readonly string[] };
  equal(care.why[0]?.startsWith("Front: A wide tyre"), true);
});

test("widths: a tyre that would come too near the frame has no number at that end", () => {
  // 45 mm on a rim 2 mm wider than it is measured on, and 2 mm more with age: 49 mm, and 4 mm free on each side.
  const row = (front: number): unknown => widthRow({ mm: 45, question: widthQuestion(body(), 45), answer: answer(192, 208) }, "bar", { front }, tables, body());
  equal((row(57) as { numbers: unknown }).numbers, { front: "1.92", rear: "2.08" });
  const tight = row(56.9) as { numbers: unknown; why: readonly string[] };
  equal([tight.numbers, tight.why], [{ front: "", rear: "2.08" }, ["Front: The opening is 56.9 mm; with its growth this tyre would leave less than 4 mm each side."]]);
});

test("widths: what holds for all of them is said once", () => {
  equal([widthCautions(body(), { front: 50, rear: 50 }).length, widthCautions(body(), {}).length], [1, 2]);
  equal(widthCautions(body({ profile: "unknown", table_max_kpa: 400 }), { front: 50, rear: 50 }).length, 3);
});
