// The steps, as the bead goes round: each with what is said, what to mind, and what its drawing shows. Angles are degrees from the
// valve, clockwise.

import { w } from "../../words/index.ts";
import { fixed, plain } from "../../words/number.ts";
import type { FitAnswer, SeatAnswer } from "./fit_asks.ts";

export const ways = ["off", "on", "seat"] as const;
export type Way = (typeof ways)[number];

export type Scene = "wheel" | "eyes" | "limit" | "line" | "search";
export type Tool = "soap" | "lever" | "valve" | "arrow" | "tube" | "sealant" | "";

export interface Step {
  readonly id: string;
  readonly words: string;
  readonly notes: readonly string[]; // what to mind, each a sentence
  readonly scene: Scene;
  readonly off: { readonly at: number; readonly wide: number }; // of the bead in work, outside the edge
  readonly hands: readonly number[];
  readonly tool: Tool;
}

// Known is what decides which steps there are, and what they say.
export interface Known {
  readonly setup: "tube" | "tubeless" | "insert";
  readonly carbon: boolean; // or not known
  readonly hookless: boolean; // or not known
  readonly seat: SeatAnswer | undefined;
  readonly limit: string; // the pressure that seating never passes, in words
  readonly fit: FitAnswer | undefined;
  readonly edgeMm: number; // radius of the edge, for the arc that may still be off
}

export function stepsOf(way: Way, known: Known): readonly Step[] {
  switch (way) {
    case "off": return offSteps(known);
    case "on": return onSteps(known);
    case "seat": return seatSteps(known);
  }
}

type Part = Partial<Omit<Step, "id">>;

function step(id: string, words: string, part: Part = {}): Step {
  return { id, words, notes: [], scene: "wheel", off: { at: 0, wide: 0 }, hands: [], tool: "", ...part };
}

const opposite = (wide: number): Step["off"] => ({ at: 180, wide });
const atValve = (wide: number): Step["off"] => ({ at: 0, wide });
const all = atValve(360);

function when(holds: boolean, ...steps: readonly Step[]): readonly Step[] {
  return holds ? steps : [];
}

function offSteps({ setup }: Known): readonly Step[] {
  return [
    step("air", w("fitStep.air"), { tool: "valve", notes: [w("fitNote.hot")] }),
    step("airOff", w("fitStep.airOff"), { hands: [60, 120, 240, 300], notes: setup === "insert" ? [w("fitNote.insert")] : [] }),
    step("opposite", w("fitStep.opposite"), { hands: [180, 0] }),
    step("lever", w("fitStep.lever"), { off: opposite(24), tool: "lever", notes: [w("fitNote.noDeep")] }),
    step("around", w("fitStep.around"), { off: opposite(200), hands: [80, 280] }),
    ...when(setup === "tube", step("tubeOut", w("fitStep.tubeOut"), { off: all, tool: "tube" })),
    step("secondOff", w("fitStep.secondOff"), { off: opposite(120), hands: [120, 240] }),
    step("search", w("fitStep.search"), { off: all, scene: "search", notes: [w("fitNote.glass")] }),
  ];
}

function onSteps(known: Known): readonly Step[] {
  const { setup, carbon, seat, fit } = known;
  const sealant = seat?.sealant_ml ?? null;
  return [
    step("look", w("fitStep.look"), { off: all, scene: "search", notes: [...(fit?.goes_on === "not_like_this" ? [w("fitNote.notLikeThis")] : []), ...(carbon ? [w("fitNote.carbon")] : []), ...(setup === "insert" ? [w("fitNote.insert")] : [])] }),
    step("arrow", w("fitStep.arrow"), { off: all, tool: "arrow" }),
    step("firstBead", w("fitStep.firstBead"), { off: atValve(70), hands: [35, 325], notes: [w("fitNote.noLevers")] }),
    ...when(setup === "tube", step("tubeIn", w("fitStep.tubeIn"), { off: all, tool: "tube" })),
    ...when(sealant !== null, step("sealantIn", w("fitStep.sealantIn", { low: plain(sealant?.[0] ?? 0), high: plain(sealant?.[1] ?? 0) }), { off: all, tool: "sealant" })),
    step("soap", w("fitStep.soap"), { off: all, tool: "soap" }),
    step("start", w("fitStep.start"), { off: atValve(300), hands: [180] }),
    step("well", w("fitStep.well"), { off: atValve(200), hands: [100, 180, 260] }),
    step("both", w("fitStep.both"), { off: atValve(100), hands: [50, 310] }),
    step("valveUp", w("fitStep.valveUp"), { off: atValve(60), tool: "valve", hands: [30, 330] }),
    lastStep(known),
    step("tight", w("fitStep.tight"), { off: atValve(lastWide(known)), hands: [120, 180, 240], tool: "soap", notes: [w("fitNote.noLevers"), w("fitNote.stop")] }),
  ];
}

// lastWide is the arc that may still be off, in degrees; 40 where nobody measured.
function lastWide({ fit, edgeMm }: Known): number {
  const arc = fit?.free_arc_mm.finish_at_valve ?? 0;
  return arc <= 0 ? 40 : Math.min(120, (arc / edgeMm) * (180 / Math.PI));
}

function lastStep(known: Known): Step {
  const arc = known.fit?.free_arc_mm.finish_at_valve ?? 0;
  const words = arc > 0 ? w("fitStep.lastRoom", { mm: fixed(arc, 0) }) : w("fitStep.last");
  const wide = lastWide(known);
  return step("last", words, { off: atValve(wide), hands: [wide / 2, 360 - wide / 2], notes: [w("fitNote.noLevers")] });
}

function seatSteps({ setup, hookless, seat, limit }: Known): readonly Step[] {
  const missing = seat?.limited_by === "unread" && seat.missing !== null ? [w("fitNote.unread", { missing: w(`fitMissing.${seat.missing}`) })] : [];
  const low = seat !== undefined && (seat.gauge_kpa ?? 0) < (seat.ceiling_kpa ?? 0) ? [w("fitNote.gaugeLow")] : [];
  const straight = hookless ? [w("fitNote.hookless")] : [];
  return [
    ...when(setup === "tube", step("between", w("fitStep.between"), { tool: "tube" })),
    step("eyes", w("fitStep.eyes"), { scene: "eyes", notes: straight }),
    step("never", w("fitStep.never", { limit }), { scene: "limit", notes: [...missing, ...low, w("fitNote.seat")] }),
    step("inflate", w("fitStep.inflate"), { scene: "limit", notes: [w("fitNote.co2")] }),
    step("line", w("fitStep.line"), { scene: "line", notes: straight }),
    step("spot", w("fitStep.spot"), { scene: "line", tool: "soap", notes: [w("fitNote.seat")] }),
    ...when(setup !== "tube", step("settle", w("fitStep.settle"), { tool: "sealant" })),
    step("down", w("fitStep.down"), { scene: "line" }),
  ];
}

// drawnWords says what a step's drawing shows of the bead.
export function drawnWords({ off }: Step): string {
  return w(off.wide === 0 ? "fitDrawn.on" : off.wide >= 360 ? "fitDrawn.off" : "fitDrawn.part");
}
