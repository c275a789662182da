// The foldable groups of inputs below the answer.

import type { Side } from "../../../book/pressure/answer.ts";
import { el } from "../../../ui/el.ts";
import { setHidden, setText } from "../../../ui/part.ts";
import { w } from "../../../words/index.ts";
import { answered, type Question, twoGauges } from "./answers.ts";
import { Altitude } from "./altitude.ts";
import { edgeChoice } from "./edge.ts";
import type { Inputs, Option } from "./inputs.ts";

function fields(...children: readonly Node[]): HTMLElement {
  return el("div", { class: "fields" }, ...children);
}

function section(title: string, ...children: readonly Node[]): HTMLElement {
  return el("section", { class: "card stack" }, el("h2", {}, title), ...children);
}

export const setups = (): Option[] => (["tube", "tubeless", "insert"] as const).map((value) => ({ value, label: w(`setup.${value}`) }));
export const answers = (): Option[] => (["yes", "no", "unknown"] as const).map((value) => ({ value, label: w(`answerTo.${value}`) }));
const sidewalls = (): Option[] => (["cloth", "glove", "hose"] as const).map((value) => ({ value, label: w(`sidewall.${value}`) }));

export function weatherSection(inputs: Inputs): HTMLElement {
  const here = new Altitude();
  here.view = { id: "set.m" };
  const course = el("div", { class: "stack" }, el("h3", {}, w("part.course")), el("p", { class: "small quiet" }, w("course.lapse")),
    fields(inputs.field("high.m"), inputs.field("high.c")), fields(inputs.field("low.m"), inputs.field("low.c")));
  // Who has no course from a file is not asked for its ends.
  inputs.also(({ draft }) => setHidden(course, !["high.m", "low.m"].some((id) => id in draft.texts)));
  return el("div", { class: "stack" },
    el("h3", {}, w("part.set")), fields(inputs.field("set.c"), inputs.field("set.m")), here,
    el("h3", {}, w("part.ride")), fields(inputs.field("ride.c"), inputs.field("ride.m")),
    el("h3", {}, w("part.warmest")), fields(inputs.field("warmest.c")), course);
}

export function weightSection(inputs: Inputs): HTMLElement {
  const weigh = inputs.choice("weigh", w("pick.weigh"), (["share", "scale"] as const).map((value) => ({ value, label: w(`weigh.${value}`) })), (draft) => draft.weigh);
  const share = fields(inputs.field("share"));
  const scale = fields(inputs.field("load.front"), inputs.field("load.rear"));
  inputs.also(({ draft }) => {
    setHidden(share, draft.weigh !== "share");
    setHidden(scale, draft.weigh !== "scale");
  });
  return section(w("part.weight"), fields(inputs.field("rider"), inputs.field("bike")), answered("bags"), weigh, share, scale);
}

export function gearSection(inputs: Inputs, name: Node): HTMLElement {
  return section(w("part.gear"), name, fields(inputs.field("gaugeError"), inputs.field("pump")), twoGauges(inputs));
}

export function tyreSection(inputs: Inputs, ...more: readonly Node[]): HTMLElement {
  const same = inputs.choice("rear", w("pick.rear"), (["same", "own"] as const).map((value) => ({ value, label: w(`rear.${value}`) })),
    (draft) => (draft.rearSame ? "same" : "own"));
  const rear = wheelInputs(inputs, "rear");
  inputs.also(({ draft }) => setHidden(rear, draft.rearSame));
  return section(w("part.tyres"), wheelInputs(inputs, "front"), same, rear, ...more);
}

function wheelInputs(inputs: Inputs, side: Side): HTMLElement {
  const pick = (name: string, legend: string, options: readonly Option[]): Node =>
    inputs.choice(`${side}.${name}`, legend, options, (draft) => draft.picks[`${side}.${name}`] ?? "");
  const field = (name: string): Node => inputs.field(`${side}.${name}`);
  const hookless = pick("hookless", w("pick.hookless"), answers()) as HTMLElement;
  inputs.also(({ draft }) => setHidden(hookless, draft.picks[`${side}.profile`] === "hooked"));
  const asked = (...questions: readonly Question[]): readonly Node[] => (side === "front" ? questions.map(answered) : []); // once is enough
  const heading = el("h3");
  inputs.also(({ draft }) => setText(heading, w("part.tyreOf", { side: draft.rearSame ? w("side.both") : w(`side.${side}`) })));
  return el("section", { class: "stack" },
    heading,
    fields(field("label"), field("measured"), field("inner")), ...asked("inner"),
    pick("setup", w("pick.setup"), setups()), ...asked("plug", "insert"),
    edgeChoice(inputs, side),
    hookless,
    fields(field("tyreMax"), field("rimMax"), field("tyreMin")),
    pick("sidewall", w("pick.sidewall"), sidewalls()),
    el("details", {}, el("summary", {}, w("part.table")), fields(field("tableMin"), field("tableMax"), field("tableKpa"), field("bead"))));
}
