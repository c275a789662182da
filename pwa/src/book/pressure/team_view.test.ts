import { equal, test } from "../../ui/testing.ts";
import type { PressureAnswer, WheelAnswer } from "./answer.ts";
import { emptyDraft, type PressureDraft } from "./draft.ts";
import { ana, ben, hex, now, record } from "../value/kit.test.ts";
import { noTables } from "./kept.ts";
import type { RequestBody } from "./request.ts";
import { groundWords, resultOf, teamBikes, teamRow } from "./team_view.ts";

const wheel = record("wheel", "w1", { profile: "hooked", inner_mm: 25, setup: "tubeless", tyre: hex("t1") });
const tyre = record("tyre", "t1", { label_mm: 40, sidewall: "cloth" });
const ochre = record("bike", "b1", { name: "Ochre", rider: ana.rec, front: wheel.rec, rear: wheel.rec, firmness: 1 });
const slate = record("bike", "b2", { name: "Slate", rider: ben.rec });
const shelved = record("bike", "b3", { name: "Old", retired: true });
const states = new Map([ana, ben, wheel, tyre, ochre, slate, shelved].map((state) => [state.rec, state]));
const book = { bikes: [slate, ochre, shelved], find: (rec: string) => states.get(rec), notes: [], who: { me: "", device: hex("x") } };
const today: PressureDraft = { ...emptyDraft, started: true, wet: true, firmness: -2, texts: { rider: "99", "ride.c": "5" }, ground: [{ id: "a", kind: "pea", km: "40", kmh: "", gd0: "", washboard: true }] };

export function wheelAnswer(gauge: number | null): WheelAnswer {
  return {
    custom_kpa: gauge, want_kpa: gauge, p0_kpa: gauge, here_gauge_kpa: gauge, optimum_kpa: gauge, good_kpa: null, recommended_kpa: gauge, set_kpa: gauge, gauge_kpa: gauge, at_ride_kpa: gauge,
    floor_kpa: 150, ceiling_kpa: 400, limited_by: "none", likely_kpa: null, width_mm: null, width_from: "measured", predicted_mm: null, squash: null,
    load_n: 1, cost_w: null, loss_w: null, light_share: null, frame_ms2: null, action: null, curve: [],
  };
}

export function answer(front: number | null, rear: number | null): PressureAnswer {
  return { front: wheelAnswer(front), rear: wheelAnswer(rear), notices: [], bigger_tyre: [] };
}

test("team: every bike asks from its records, with today's ground and weather", () => {
  const [first, second, ...others] = teamBikes(book, today, "bar", noTables);
  equal([first?.name, first?.rider, second?.name, others.length], ["Ochre", "Ana", "Slate", 0]);
  equal(first?.reading.body, {
    rider_kg: 61, bike_kg: 11, front_share: 0.42,
    ...Object.fromEntries(["front", "rear"].map((side) => [side, {
      tyre: { label_mm: 40, sidewall: "cloth", setup: "tubeless", hookless_ok: false }, rim: { bead_seat_mm: 622, inner_mm: 25, profile: "hooked" },
    }])),
    ground: [{ kind: "pea", share: 40, washboard: true }], set: { c: 20, m: 0 }, ride: { c: 5, m: 0 }, gauge_error_kpa: 0, wet: true, firmness: 1, here: "set", shift: { front: 0, rear: 0 },
  } as never);
  equal(second?.reading.body, undefined); // nothing is known of its tyres
});

test("team: the open bike is taken as it stands on the screen", () => {
  const open = { ...today, links: { bike: slate.rec }, texts: { ...today.texts, "front.label": "50", "front.inner": "25" }, picks: { "front.profile": "hooked" } };
  const body = teamBikes(book, open, "bar", noTables).find(({ rec }) => rec === slate.rec)?.reading.body;
  equal((body as unknown as { rider_kg: number }).rider_kg, 99);
});

test("team: a row tells both numbers, or why there is none", () => {
  const [first, second] = teamBikes(book, today, "bar", noTables);
  if (first === undefined || second === undefined) throw new Error("two bikes");
  const asked = first.reading.body as RequestBody;
  const row = teamRow(first, resultOf(asked, { answer: answer(210, 230), errors: [] }), "bar", now);
  equal([row.cells.front.number, row.cells.rear.number, row.shared], ["2.10", "2.30", ""]);
  equal(teamRow(first, resultOf(asked, { answer: undefined, errors: [{ code: "out_of_bounds", field: "rider_kg", values: {} }] }), "bar", now).shared, "“You, dressed to ride” needs another look");
  const missing = teamRow(second, undefined, "bar", now);
  equal([missing.cells.front.number, missing.shared !== ""], ["", true]);
  const half = teamRow(first, resultOf(asked, { answer: answer(210, null), errors: [] }), "bar", now);
  equal([half.cells.front.number, half.cells.rear.number, half.shared], ["2.10", "", ""]);
});

test("team: the ground in words", () => {
  equal(groundWords({ ...today, groundBy: "share", wet: false }), "Ground: unsealed, stones like peas, washboard 100 %");
  equal(groundWords(today), "Ground: unsealed, stones like peas, washboard 40 km; wet");
});
