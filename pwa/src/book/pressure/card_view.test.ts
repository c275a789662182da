import { equal, test } from "../../ui/testing.ts";
import { cardView, otherQuestion, others } from "./card_view.ts";
import { emptyDraft } from "./draft.ts";
import { noTables } from "./kept.ts";
import { now } from "../value/kit.test.ts";
import { read, type RequestBody } from "./request.ts";
import { answer } from "./team_view.test.ts";

const draft = { ...emptyDraft, started: true, bike: "Ochre", texts: { rider: "72", "front.label": "40", "front.inner": "25", "ride.c": "5" }, picks: { "front.profile": "hooked" } };
const bike = { rec: "", name: "Ochre", rider: "", draft, reading: read(draft, "bar", noTables) };
const kept = { question: bike.reading.body as RequestBody, answer: answer(210, 230) };

test("card: another start is the same question, without readings, and never warmer than its warmest hour", () => {
  const body = { ...bike.reading.body, warmest_c: 8, now: { front_gauge_kpa: 200 } } as unknown as RequestBody;
  const warmer = otherQuestion(body, { c: 10, m: 0 }) as unknown as Record<string, unknown>;
  equal([warmer["ride"], warmer["warmest_c"], "now" in warmer], [{ c: 15, m: 0 }, 15, false]);
  equal(otherQuestion(body, { c: 0, m: -500 }).ride, { c: 5, m: -500 });
});

test("card: numbers, limits on the same gauge, and rows that add up as printed", () => {
  const view = cardView(bike, kept, others.map((_, n) => (n === 0 ? answer(213.4, 230.4) : n === 1 ? answer(207, null) : undefined)), "", "bar", now);
  equal(view.wheels.map(({ number, limits }) => [number, limits]), [
    ["2.10", "never below 1.47 bar · never above 4.10 bar"], ["2.30", "never below 1.46 bar · never above 4.09 bar"],
  ]);
  equal(view.rows, [
    { start: "10 °C colder", cells: { front: { number: "2.13", act: "add 0.03" }, rear: { number: "2.30", act: "leave it" } } },
    { start: "5 °C colder", cells: { front: { number: "2.07", act: "let out 0.03" }, rear: { number: "–", act: "No number" } } },
  ]);
});

test("card: a stop leaves no number and no table", () => {
  const stopped = { ...answer(null, null), notices: [{ code: "not_for_hookless" as const, severity: "stop" as const, wheel: "front" as const, values: {} }] };
  const view = cardView(bike, { ...kept, answer: stopped }, [answer(1, 1)], "", "bar", now);
  equal([view.wheels.map(({ number, limits }) => number + limits), view.rows], [["", ""], []]);
  equal((view.wheels[0]?.why ?? "").startsWith("No pressure for this pair."), true);
});
