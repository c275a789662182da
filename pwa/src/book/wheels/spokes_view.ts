// What the spokes page says: how each side stands, what stands out, what to do about it, and what changed since last time.

import { spokeLeastN, spokeOutlier } from "../../contract/contract.ts";
import { lacingFields as fields } from "../../contract/lacing_fields.ts";
import { type RecordState, valueOf } from "../../log/op/merge.ts";
import { sentences, w } from "../../words/index.ts";
import { fixed, plain } from "../../words/number.ts";
import { dayWords } from "../value/when.ts";
import { type Build, changeOf, type Flange, flanges, type Heard, knowsNewtons, type Lacing, perSide, sideChange } from "./spokes.ts";

export interface SpokeShown {
  readonly key: string;
  readonly side: Flange;
  readonly n: number;
  readonly line: string; // "" while it was not heard
  readonly deviation: number | undefined;
  readonly mark: "none" | "out" | "slack" | "unheard";
}

export interface SpokesShown {
  readonly spokes: readonly SpokeShown[];
  readonly sides: readonly string[];
  readonly worst: readonly { readonly severity: "stop" | "care" | "note"; readonly text: string }[];
  readonly aid: readonly string[]; // "" for none
  readonly since: readonly string[];
  readonly picture: string;
}

export interface SpokesKnown {
  readonly heard: readonly Heard[];
  readonly build: Build;
  readonly lacing: Lacing | undefined;
  readonly before: { readonly entry: RecordState; readonly heard: readonly Heard[] } | undefined;
  readonly now: number;
}

const noticed = 0.1; // share by which one spoke must have changed to be named (our choice)

export function spokeWords({ side, n }: Pick<Heard, "side" | "n">): string {
  return w(`spokes.one.${side}`, { n });
}

// beginWords name a spoke at the beginning of a sentence.
function beginWords({ side, n }: Pick<Heard, "side" | "n">): string {
  return w(`spokes.begin.${side}`, { n });
}

// spokesShown is the page's result.
export function spokesShown(known: SpokesKnown): SpokesShown {
  const { heard, lacing } = known;
  const told = (one: Heard): Lacing["spokes"][number] | undefined => lacing?.spokes[heard.indexOf(one)];
  const sides = lacing === undefined ? [] : flanges.flatMap((side) => sideWords(side, known, lacing));
  const worst = [...slackWords(heard), ...outWords(heard, told), ...levelWords(known)];
  const alike = lacing !== undefined && worst.length === 0 ? [calmWords(lacing)] : [];
  const all = [...worst, ...alike];
  return {
    spokes: flanges.flatMap((side) => Array.from({ length: perSide(known.build) }, (_, i) => oneOf(side, i + 1, heard, told))),
    sides, worst: all, aid: aidFor(heard, told), since: sinceWords(known),
    picture: w("spokes.picture", { n: 2 * perSide(known.build), told: sentences(all.map(({ text }) => text)) }),
  };
}

type ToldOf = (one: Heard) => Lacing["spokes"][number] | undefined;

function oneOf(side: Flange, n: number, heard: readonly Heard[], told: ToldOf): SpokeShown {
  const one = heard.find((each) => each.side === side && each.n === n);
  const base = { key: `${side} ${n}`, side, n };
  if (one === undefined) return { ...base, line: "", deviation: undefined, mark: "unheard" };
  if (one.hz === null) return { ...base, line: w("spokes.lineSlack", { spoke: spokeWords(one) }), deviation: undefined, mark: "slack" };
  const said = told(one);
  const deviation = said?.deviation ?? undefined;
  const by = deviation === undefined ? "" : deviation >= 0 ? w("spokes.byMore", { percent: percent(deviation) }) : w("spokes.byLess", { percent: percent(deviation) });
  return { ...base, line: w("spokes.line", { spoke: spokeWords(one), hz: fixed(one.hz, 1), by }), deviation, mark: said?.outlier === true ? "out" : "none" };
}

function percent(share: number): string {
  return fixed(Math.abs(share) * 100, 0);
}

function sideWords(side: Flange, { build }: SpokesKnown, lacing: Lacing): readonly string[] {
  const { mean_n: mean, spokes, spread } = lacing[side];
  if (mean === null) return [];
  return [sentences([
    w("spokes.sideLine", { side: w(`spokes.side.${side}`), n: spokes, all: perSide(build) }),
    ...(knowsNewtons(build) ? [w("spokes.mean", { n: fixed(mean, 0) })] : []),
    ...(spokes > 2 && spread !== null ? [w("spokes.spread", { percent: percent(spread) })] : []),
  ])];
}

function slackWords(heard: readonly Heard[]): SpokesShown["worst"] {
  return heard.filter(({ hz }) => hz === null).map((one) => ({ severity: "stop", text: w("spokes.isSlack", { spoke: beginWords(one) }) }));
}

function outWords(heard: readonly Heard[], told: ToldOf): SpokesShown["worst"] {
  return heard.flatMap((one) => {
    const said = told(one);
    if (said?.outlier !== true || said.deviation === null) return [];
    const how = w(said.deviation > 0 ? "spokes.how.tighter" : "spokes.how.looser");
    return [{ severity: "care", text: w("spokes.out", { spoke: beginWords(one), percent: percent(said.deviation), how }) } as const];
  });
}

// levelWords: newtons are judged only where they can be named.
function levelWords({ build, lacing }: SpokesKnown): SpokesShown["worst"] {
  if (lacing === undefined || !knowsNewtons(build)) return [];
  const most = build.values.most ?? fields.most_n.instead;
  return flanges.flatMap((side) => {
    const { level } = lacing[side];
    const words = level === "above" ? w("spokes.above", { n: plain(most) }) : level === "below" ? w("spokes.below", { n: plain(spokeLeastN) }) : "";
    return words === "" ? [] : [{ severity: level === "above" ? "care" : "note", text: w("field.sided", { side: w(`spokes.side.${side}`), label: words }) } as const];
  });
}

function calmWords(lacing: Lacing): SpokesShown["worst"][number] {
  const few = flanges.every((side) => lacing[side].spokes < 3);
  return { severity: "note", text: few ? w("spokes.noneOut") : w("spokes.allAlike", { percent: percent(spokeOutlier) }) };
}

// aidFor are first-aid words for what was found.
function aidFor(heard: readonly Heard[], told: ToldOf): readonly string[] {
  const deviations = heard.flatMap((one) => (told(one)?.outlier === true ? [told(one)?.deviation ?? -1] : []));
  const loose = deviations.some((by) => by < 0);
  const tight = deviations.some((by) => by > 0);
  return deviations.length === 0 ? [] : [...(loose ? [w("spokes.aidLoose"), w("spokes.aidTurn")] : []), ...(tight ? [w("spokes.aidTight")] : []), w("spokes.aidShop")];
}

function sinceWords({ heard, before, now }: SpokesKnown): readonly string[] {
  if (before === undefined || heard.length === 0) return [];
  const day = valueOf(before.entry, "day");
  const sides = flanges.flatMap((side) => {
    const by = sideChange(side, heard, before.heard);
    return by === undefined ? [] : [w("spokes.sinceSide", { side: w(`spokes.side.${side}`), by: changeWords(by) })];
  });
  const ones = heard.flatMap((one) => {
    const by = changeOf(one, before.heard);
    return by === undefined || Math.abs(by) < noticed ? [] : [w("spokes.sinceOne", { spoke: beginWords(one), by: changeWords(by) })];
  });
  return sides.length === 0 ? [] : [w("spokes.since", { day: typeof day === "string" ? dayWords(day, now) : "" }), ...sides, ...ones];
}

function changeWords(by: number): string {
  const words = { percent: percent(by) };
  return words.percent === fixed(0, 0) ? w("spokes.same") : by > 0 ? w("spokes.more", words) : w("spokes.less", words);
}

// lastWords tell of the newest measurement, for the wheel's own page.
export function lastWords(last: SpokesKnown["before"], now: number): string {
  if (last === undefined) return w("spokes.never");
  const day = valueOf(last.entry, "day");
  const slack = last.heard.filter(({ hz }) => hz === null).length;
  const words = { day: typeof day === "string" ? dayWords(day, now) : "", n: last.heard.length };
  return slack === 0 ? w("spokes.last", words) : w("spokes.lastSlack", { ...words, slack });
}
