// The whole Pressure screen as a pure function of what was typed, what was answered, and the time.

import { w } from "../../words/index.ts";
import { fixed, plain } from "../../words/number.ts";
import { ageOf } from "../value/age.ts";
import { type Side, sides } from "./answer.ts";
import { type CurveView, curveView } from "./chart_view.ts";
import type { PressureDraft } from "./draft.ts";
import { labelOf } from "./field_view.ts";
import { asked, type Kept } from "./kept.ts";
import { type NoticeView, noticeViews } from "./notices.ts";
import type { PressureUnit } from "../value/quantity.ts";
import { faultsOf, type Reading, type RequestBody } from "./request.ts";
import { veiledWords } from "../value/veil.ts";
import { type Scene, type WheelView, wheelView } from "./wheel_view.ts";
import { type Row, whyRows } from "./why_view.ts";

export interface ScreenView {
  readonly heading: string;
  readonly headline: string;
  readonly stale: string; // the weather is old: a warning, or ""
  readonly wheels: readonly WheelView[];
  readonly notices: readonly NoticeView[];
  readonly assumed: string;
  readonly firm: string;
  readonly curves: readonly { readonly side: Side; readonly curve: CurveView | undefined; readonly rows: readonly Row[]; readonly remark: string }[];
  readonly spoken: string; // for those who listen
}

export interface Facts {
  readonly draft: PressureDraft;
  readonly reading: Reading;
  readonly kept: Kept | undefined;
  readonly unit: PressureUnit;
  readonly broken: string; // why no answer comes; "" while one does
  readonly now: number;
  readonly ages?: Ages;
}

// Ages tell how old the measured widths are; "" where nothing was measured.
export type Ages = Readonly<Record<Side, string>>;

export function screenView(facts: Facts): ScreenView {
  const { draft, kept, unit, reading } = facts;
  const question = kept === undefined ? undefined : asked(kept);
  const scene: Scene = { unit, setC: question?.set.c ?? 20, rideC: question?.ride.c ?? 20 };
  const notices = kept === undefined || question === undefined ? []
    : noticeViews(kept.answer, unit);
  const wheels = sides.map((side) => wheelOf(side, facts, notices, scene, question));
  return {
    heading: draft.bike || w("head.bike"), headline: headline(draft, question), stale: stale(draft, facts.now), wheels,
    notices: notices.filter((each) => each.severity !== "stop" && each.code !== underWhy),
    assumed: reading.assumed.length === 0 ? "" : w("assumed.list", { what: reading.assumed.map((each) => w(`assumed.${each}`)).join(", ") }),
    firm: firmness(draft),
    curves: kept === undefined ? [] : curvesOf(kept, scene, notices, veiledWords(draft) !== ""),
    spoken: wheels.map((each) => w("said.wheel", { side: each.title, what: spokenOf(each) })).join(" "),
  };
}

type Curves = ScreenView["curves"];

// The same answer in the same unit gives the same curves, also the same object, so that they need not be drawn again.
const drawn = new WeakMap<Kept, { readonly unit: PressureUnit; readonly veiled: boolean; readonly curves: Curves }>();

function curvesOf(kept: Kept, scene: Scene, notices: readonly NoticeView[], veiled: boolean): Curves {
  const before = drawn.get(kept);
  if (before?.unit === scene.unit && before.veiled === veiled) return before.curves;
  const question = asked(kept);
  const curves = sides.map((side) => ({
    side, curve: curveView(side, kept.answer[side], scene), rows: whyRows(kept.answer[side], { side, question, unit: scene.unit, veiled }), remark: remarkOf(side, notices),
  }));
  drawn.set(kept, { unit: scene.unit, veiled, curves });
  return curves;
}

// How far the sums hold is told with the reasons, not on the face.
const underWhy = "wheel_leaves_ground";

function remarkOf(side: Side, notices: readonly NoticeView[]): string {
  return notices.find((each) => each.code === underWhy && (each.wheel === side || each.wheel === "both"))?.text ?? "";
}

function spokenOf(wheel: WheelView): string {
  if (wheel.old !== "") return w("wheel.oldWhy", { reason: wheel.old });
  if (wheel.number === "") return [w("wheel.none"), ...wheel.stops].join(". ");
  return `${wheel.number} ${wheel.unit}, ${wheel.act}`;
}

function wheelOf(side: Side, facts: Facts, notices: readonly NoticeView[], scene: Scene, question: RequestBody | undefined): WheelView {
  const { draft, kept, reading } = facts;
  const faults = faultsOf(side, draft, reading.faults);
  const inner = faults.find((id) => id.endsWith(".inner"));
  const missing = faults.filter((id) => reading.faults.get(id)?.why === "missing");
  const blank = { side, title: w(`side.${side}`), number: "", unit: w(`unit.${facts.unit}`), act: "", strokes: "", good: undefined, facts: [], old: "" };
  // An edge or width that decides whether the tyre may be mounted at all blanks the number: it is not merely old.
  if (inner !== undefined && reading.faults.get(inner)?.why === "measure") {
    return { ...blank, stops: [w("wheel.measureInner")], wanting: "inner" };
  }
  if (kept === undefined) {
    const text = missing.length > 0 ? w("wheel.missing", { fields: missing.map(labelOf).join(", ") })
      : faults[0] !== undefined ? w("wheel.oldField", { field: labelOf(faults[0]) })
        : facts.broken || w("wheel.waiting");
    return { ...blank, stops: [text], wanting: "" };
  }
  const bad = faults[0] ?? [...reading.faults.keys()][0]; // a fault of the other wheel holds up this one's answer too
  const old = bad === undefined ? facts.broken : reading.faults.get(bad)?.why === "missing"
    ? w("wheel.missing", { fields: labelOf(bad) }) : w("wheel.oldField", { field: labelOf(bad) });
  const now = side === "front" ? question?.now?.front_gauge_kpa : question?.now?.rear_gauge_kpa;
  const isRead = reading.values.has(`now.${side}`);
  return wheelView(side, kept.answer, notices, scene, now === undefined ? undefined : { kpa: now, isRead }, old, facts.ages?.[side]);
}

function headline(draft: PressureDraft, question: RequestBody | undefined): string {
  const typed = ["set.c", "set.m", "ride.c", "ride.m"].some((id) => (draft.texts[id] ?? "") !== "");
  if (!typed || question === undefined) return w("head.unsaid");
  const degrees = (c: number): string => `${plain(Math.round(c * 10) / 10)} ${w("unit.c")}`;
  const metres = (m: number): string => fixed(m, 0);
  return w("head.at", { c: degrees(question.ride.c), m: metres(question.ride.m), setC: degrees(question.set.c), setM: metres(question.set.m) });
}

const staleAfter = 6 * 3600e3; // ms; weather older than this is not today's any more

function stale(draft: PressureDraft, now: number): string {
  if (draft.weatherAt === 0) return "";
  const age = ageOf(now - draft.weatherAt);
  const typed = w("head.typed", { age });
  return now - draft.weatherAt > staleAfter ? `${typed}. ${w("head.old", { age })}` : typed;
}

function firmness(draft: PressureDraft): string {
  const n = Math.abs(draft.firmness);
  const steps = draft.firmness === 0 ? w("firm.none") : draft.firmness < 0 ? w("firm.softer", { n }) : w("firm.firmer", { n });
  return draft.wet ? `${steps}, ${w("firm.wet")}` : steps;
}
