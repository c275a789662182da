// The start card: one bike's pressures for pocket or top tube, for one weather and ground, and what to do when the start
// turns out otherwise.

import { w } from "../../words/index.ts";
import { plain } from "../../words/number.ts";
import { type PressureAnswer, type Side, type WheelAnswer } from "./answer.ts";
import type { Kept } from "./kept.ts";
import { type PressureUnit, type Rounding, showKpa } from "../value/quantity.ts";
import type { RequestBody } from "./request.ts";
import { sceneOf, screenView } from "./screen_view.ts";
import { groundWords, type TeamBike } from "./team_view.ts";
import { onGauge, type Scene, toldNumber } from "./told.ts";

// Other is a start that differs from the one that the card is for.
export interface Other {
  readonly c: number; // warmer by
  readonly m: number; // higher by
}

// others are the starts asked for beside the typed one.
export const others: readonly Other[] = [
  { c: -10, m: 0 }, { c: -5, m: 0 }, { c: 5, m: 0 }, { c: 10, m: 0 }, { c: 0, m: -500 }, { c: 0, m: 500 },
];

// otherQuestion is the same question for another start; what the gauge says now is left out. A warmest hour that would
// fall below the start moves along with it.
export function otherQuestion(body: RequestBody, { c, m }: Other): RequestBody {
  const ride = { c: body.ride.c + c, m: body.ride.m + m };
  const { now: _, ...rest } = body;
  const warmest = (body as { readonly warmest_c?: number }).warmest_c;
  return { ...rest, ride, ...(warmest === undefined ? {} : { warmest_c: Math.max(warmest, ride.c) }) } as RequestBody;
}

export interface CardWheel {
  readonly side: Side;
  readonly title: string;
  readonly number: string; // "" when there is none
  readonly unit: string;
  readonly why: string; // why not
  readonly atStart: string; // what the same gauge shows by then; "" when it is about the same
  readonly limits: string; // least and most, on the same gauge
}

export interface CardRow {
  readonly start: string;
  readonly cells: Readonly<Record<Side, { readonly number: string; readonly act: string }>>;
}

export interface CardView {
  readonly name: string;
  readonly rider: string;
  readonly weather: string;
  readonly age: string;
  readonly ground: string;
  readonly wheels: readonly CardWheel[];
  readonly notices: readonly string[];
  readonly rows: readonly CardRow[]; // empty while nothing else was answered
}

// cardView makes the card; answers are those to otherQuestion, in the order of others.
export function cardView(bike: TeamBike, kept: Kept | undefined, answers: readonly (PressureAnswer | undefined)[], broken: string, unit: PressureUnit, now: number): CardView {
  const screen = screenView({ draft: bike.draft, reading: bike.reading, kept, unit, broken, now });
  const question = kept?.question;
  const scene = sceneOf(question, unit);
  const wheels = screen.wheels.map((wheel): CardWheel => ({
    side: wheel.side, title: wheel.title, number: wheel.old === "" ? wheel.number : "", unit: wheel.unit,
    why: wheel.old || wheel.stops.join(" "), atStart: kept === undefined || wheel.number === "" || wheel.old !== "" ? "" : atStart(kept.answer[wheel.side], unit),
    limits: kept === undefined || wheel.number === "" ? "" : limitsOf(kept.answer[wheel.side], scene),
  }));
  const some = kept !== undefined && wheels.some((wheel) => wheel.number !== "");
  return {
    name: bike.name, rider: bike.rider, weather: question === undefined ? "" : screen.headline, age: screen.stale, ground: groundWords(bike.draft), wheels,
    notices: screen.notices.filter((each) => each.severity === "care").map((each) => each.wheel === "both" ? each.text : w("said.wheel", { side: w(`side.${each.wheel}`), what: each.text.replace(/\.$/, "") })),
    rows: some ? rowsOf(kept.answer, answers, scene) : [],
  };
}

const alike = 2; // kPa: less than a gauge tells

// atStart carries the gauge's own error along.
function atStart(wheel: WheelAnswer, unit: PressureUnit): string {
  const { gauge_kpa: gauge, set_kpa: set, at_ride_kpa: ride } = wheel; // the gauge shows its own error at both places
  if (gauge === null || set === null || ride === null || Math.abs(ride - set) < alike) return "";
  return w("card.atStart", { p: showKpa(ride + gauge - set, unit), unit: w(`unit.${unit}`) });
}

// limitsOf tells floor and ceiling as the gauge shows them where the tyre is set, rounded to the safe side.
function limitsOf(wheel: WheelAnswer, scene: Scene): string {
  const shown = (kpa: number, rounding: Rounding): string => w("why.one", { p: showKpa(onGauge(kpa, wheel, scene), scene.unit, rounding), unit: w(`unit.${scene.unit}`) });
  const least = wheel.floor_kpa === null ? "" : w("card.least", { p: shown(wheel.floor_kpa, "up") });
  const most = wheel.ceiling_kpa === null ? "" : w("card.most", { p: shown(wheel.ceiling_kpa, "down") });
  return [least, most].filter((each) => each !== "").join(" · ");
}

function rowsOf(base: PressureAnswer, answers: readonly (PressureAnswer | undefined)[], scene: Scene): readonly CardRow[] {
  return others.flatMap((other, n): CardRow[] => {
    const answer = answers[n];
    return answer === undefined ? [] : [{ start: startWords(other), cells: { front: cellOf(base.front, answer.front, scene, other), rear: cellOf(base.rear, answer.rear, scene, other) } }];
  });
}

function startWords({ c, m }: Other): string {
  if (c !== 0) return w(c < 0 ? "card.colder" : "card.warmer", { by: w("card.degrees", { n: plain(Math.abs(c)) }) });
  return w(m < 0 ? "card.lower" : "card.higher", { by: w("card.metres", { n: plain(Math.abs(m)) }) });
}

// cellOf compares the numbers as they are shown, so that they add up on paper.
function cellOf(base: WheelAnswer, other: WheelAnswer, scene: Scene, { c }: Other): CardRow["cells"]["front"] {
  const [from, to] = [toldNumber(base, scene), toldNumber(other, { ...scene, rideC: scene.rideC + c })];
  if (from === undefined || to === undefined) return { number: "–", act: to === undefined ? w("wheel.none") : "" };
  const by = showKpa(Math.abs(to.kpa - from.kpa), scene.unit);
  const act = by === showKpa(0, scene.unit) ? w("card.same") : to.kpa < from.kpa ? w("card.out", { by }) : w("card.in", { by });
  return { number: to.text, act };
}
