// What a person has typed and chosen on the Pressure screen, kept as typed: also what is wrong or half done.

import { maxFirmness } from "../../contract/contract.ts";
import type { Json } from "../../log/op/json.ts";
import { isObject } from "./answer.ts";
import { type PressureUnit, pressureUnits } from "../value/quantity.ts";

export interface StretchDraft {
  readonly id: string;
  readonly kind: string; // a ground's key, or "typed" for a roughness
  readonly km: string;
  readonly part?: string; // a share as it was typed last; it has moved km already, unless it cannot be read
  readonly kmh: string;
  readonly gd0: string;
  readonly low?: string; // ends of the interval where the roughness was measured, as gd0 is written
  readonly high?: string;
  readonly washboard: boolean;
}

// Based is the record's value that stands behind a text, and the text it was shown as.
export interface Based {
  readonly text: string;
  readonly value: Json;
  readonly veiled?: boolean; // counts in the sums, but is not for this phone to show
}

export interface PressureDraft {
  readonly started: boolean; // the first-run screen is done
  readonly demo: boolean;
  readonly unit: PressureUnit; // in which bare pressures are typed
  readonly bike: string;
  readonly texts: Readonly<Record<string, string>>;
  readonly picks: Readonly<Record<string, string>>;
  readonly ground: readonly StretchDraft[];
  readonly groundBy: "km" | "share"; // what a stretch's length is typed in
  readonly rearSame: boolean;
  readonly weigh: "share" | "scale";
  readonly firmness: number;
  readonly wet: boolean;
  readonly setAt: number; // when Home's air was last typed, ms; 0 never
  readonly weatherAt: number; // when the start's was
  readonly here: "set" | "ride"; // where a person stands: Home, or the start
  readonly hereAt: number; // since when, ms; the next day begins at Home again
  readonly plain: boolean; // notes after rides are left out
  readonly links: Readonly<Record<string, string>>; // role -> the record that plays it
  readonly based: Readonly<Record<string, Based>>; // by bond
}

export const emptyDraft: PressureDraft = {
  started: false, demo: false, unit: "bar", bike: "", texts: {}, picks: {},
  ground: [{ id: "first", kind: "patched", km: "", kmh: "", gd0: "", washboard: false }],
  groundBy: "km", rearSame: true, weigh: "share", firmness: 0, wet: false, setAt: 0, weatherAt: 0, here: "set", hereAt: 0, plain: false, links: {}, based: {},
};

// readDraft takes what was stored, from whatever version, and fills what is missing or not understood.
export function readDraft(stored: unknown): PressureDraft {
  if (!isObject(stored)) return emptyDraft;
  const ground = readStretches(stored["ground"]);
  return {
    started: stored["started"] === true,
    demo: stored["demo"] === true,
    unit: pressureUnits.find((unit) => unit === stored["unit"]) ?? "bar",
    bike: text(stored["bike"]),
    texts: strings(stored["texts"]),
    picks: strings(stored["picks"]),
    ground: ground.length > 0 ? ground : emptyDraft.ground,
    groundBy: stored["groundBy"] === "share" ? "share" : "km",
    rearSame: stored["rearSame"] !== false,
    weigh: stored["weigh"] === "scale" ? "scale" : "share",
    firmness: clampSteps(stored["firmness"]),
    wet: stored["wet"] === true,
    setAt: moment(stored["setAt"] ?? stored["weatherAt"]), // one moment held for both before
    weatherAt: moment(stored["weatherAt"]),
    here: stored["here"] === "ride" ? "ride" : "set",
    hereAt: moment(stored["hereAt"]),
    plain: stored["plain"] === true,
    links: strings(stored["links"]),
    based: readBased(stored["based"]),
  };
}

// readStretches takes stretches of any age or damage.
export function readStretches(stored: unknown): readonly StretchDraft[] {
  return Array.isArray(stored) ? stored.filter(isObject).map(readStretch) : [];
}

function readStretch(from: Record<string, unknown>, index: number): StretchDraft {
  return {
    id: text(from["id"]) || `stretch${index}`, kind: text(from["kind"]) || "patched", km: text(from["km"]),
    kmh: text(from["kmh"]), gd0: text(from["gd0"]), washboard: from["washboard"] === true,
    ...(typeof from["part"] === "string" && { part: from["part"] }),
    ...(typeof from["low"] === "string" && typeof from["high"] === "string" && { low: from["low"], high: from["high"] }),
  };
}

function readBased(value: unknown): Record<string, Based> {
  const out: Record<string, Based> = {};
  for (const [key, each] of Object.entries(isObject(value) ? value : {})) {
    if (isObject(each) && typeof each["text"] === "string" && "value" in each) out[key] = { text: each["text"], value: each["value"] as Json, ...(each["veiled"] === true && { veiled: true }) };
  }
  return out;
}

function moment(value: unknown): number {
  return typeof value === "number" ? value : 0;
}

function text(value: unknown): string {
  return typeof value === "string" ? value : "";
}

function strings(value: unknown): Record<string, string> {
  const out: Record<string, string> = {};
  for (const [name, each] of Object.entries(isObject(value) ? value : {})) {
    if (typeof each === "string") out[name] = each;
  }
  return out;
}


function clampSteps(value: unknown): number {
  return typeof value === "number" ? Math.max(-maxFirmness, Math.min(maxFirmness, Math.round(value))) : 0;
}
