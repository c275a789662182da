// From what was typed to a question: every field read, every fault named, every assumption said.

import type { Requests } from "../../contract/contract.ts";
import { type Side, sides } from "./answer.ts";
import type { PressureDraft, StretchDraft } from "./draft.ts";
import { partOf } from "./edits.ts";
import { allFields, type FieldSpec, groundKinds, stretchFields } from "./fields.ts";
import { type ParseFault, type PressureUnit, readIn } from "../value/quantity.ts";
import { type Bound, type Tables, usualInnerFor } from "./tables.ts";

// Fault is why a field cannot be used; its bound is in the request's unit.
export interface Fault {
  readonly why: ParseFault | "bounds" | "missing" | "measure" | "part" | "scales";
  readonly bound?: Bound;
}

export type Assumption = "bike" | "sidewall" | "inner.front" | "inner.rear" | "km" | "weather" | "setup" | "edge";

// RequestBody is the question.
export type RequestBody = Requests["pressure"];
export type WheelBody = RequestBody["front"];
export type TyreBody = WheelBody["tyre"];
export type RimBody = WheelBody["rim"];

export interface Reading {
  readonly faults: ReadonlyMap<string, Fault>; // by field id; stretches as "ground.<id>.km"
  readonly assumed: readonly Assumption[];
  readonly body: RequestBody | undefined; // nothing to ask while a field is wrong or missing; a gauge's reading may be
  readonly values: ReadonlyMap<string, number>; // what was read, by field id, in the request's unit
}

// What is taken when nothing was typed (our choice; each is said on the screen).
const assumedBike = 11;
const assumedShare = 0.42;
const assumedBead = 622;
const assumedCelsius = 20;
const scaleSlack = 0.05; // a bottle more, a jacket less

// read turns a draft into a question.
// What was not read is taken as expected, if there is something to expect.
export function read(draft: PressureDraft, unit: PressureUnit, tables: Tables, expected: ExpectedReadings = {}): Reading {
  const form = new Form(draft, unit, tables, expected);
  const body = form.body();
  // With no fault every needed field has been read, so the body is whole. A wrong reading concerns only its wheel's action.
  const whole = [...form.faults.keys()].every((id) => id.startsWith("now."));
  return { faults: form.faults, assumed: form.assumed, values: form.values, body: whole ? (body as RequestBody) : undefined };
}

// ExpectedReadings are what the gauge should read, in kPa.
export type ExpectedReadings = Readonly<Partial<Record<Side, number>>>;

class Form {
  readonly faults = new Map<string, Fault>();
  readonly assumed: Assumption[] = [];
  readonly values = new Map<string, number>();

  constructor(readonly draft: PressureDraft, readonly unit: PressureUnit, readonly tables: Tables, readonly expected: ExpectedReadings) {
    for (const spec of allFields) {
      if (this.#asked(spec.id)) this.#take(spec.id, spec, draft.texts[spec.id] ?? "");
    }
    this.#unveil();
  }

  // What a rider weighs counts, also where it is not shown.
  #unveil(): void {
    const hidden = this.draft.based["person/mass_kg"];
    const typed = (this.draft.texts["rider"] ?? "").trim() !== "";
    if (!typed && hidden?.veiled === true && typeof hidden.value === "number") this.values.set("rider", hidden.value);
  }

  // A rear that is the same as the front is not asked, and of share and scales only one is.
  #asked(id: string): boolean {
    if (id.startsWith("rear.")) return !this.draft.rearSame;
    if (id === "share") return this.draft.weigh === "share";
    return !id.startsWith("load.") || this.draft.weigh === "scale";
  }

  #take(id: string, spec: FieldSpec, typed: string): void {
    const parsed = readIn(typed, spec.dimension, spec.unit || this.unit, spec.to);
    const bound = this.tables.bounds.get(spec.path);
    if ("fault" in parsed) {
      if (parsed.fault !== "empty") this.faults.set(id, { why: parsed.fault, ...(bound && { bound }) });
      return;
    }
    const value = parsed.value / (spec.parts ?? 1);
    const slack = 1e-9 * Math.max(1, Math.abs(value)); // 7.2519 psi is the 50 kPa it was made from
    if (bound !== undefined && (value < bound.min - slack || value > bound.max + slack)) {
      this.faults.set(id, { why: "bounds", bound });
      return;
    }
    this.values.set(id, bound === undefined ? value : Math.min(bound.max, Math.max(bound.min, value)));
  }

  #need(id: string): number | undefined {
    const value = this.values.get(id);
    if (value === undefined && !this.faults.has(id)) this.faults.set(id, { why: "missing" });
    return value;
  }

  #or(id: string, fallback: number, said?: Assumption): number {
    if (said !== undefined && !this.values.has(id) && !this.faults.has(id)) this.assumed.push(said);
    return this.values.get(id) ?? fallback;
  }

  body(): object {
    const set = { c: this.#or("set.c", assumedCelsius, "weather"), m: this.#or("set.m", 0) };
    return {
      rider_kg: this.#need("rider"), bike_kg: this.#or("bike", assumedBike, "bike"), ...this.#load(),
      front: this.#wheel("front"), rear: this.#wheel("rear"), ground: this.#ground(),
      set, ride: { c: this.#or("ride.c", set.c), m: this.#or("ride.m", set.m) },
      ...this.#maybe("warmest_c", "warmest.c"), ...this.#along(), gauge_error_kpa: this.#or("gaugeError", 0),
      wet: this.draft.wet, firmness: this.draft.firmness, here: this.draft.here, shift: { front: 0, rear: 0 }, ...this.#now(),
    };
  }

  // along are the highest and the lowest point of a course, where they are known.
  #along(): object {
    const along = (["high", "low"] as const).filter((at) => this.values.has(`${at}.m`)).map((at) => ({ m: this.values.get(`${at}.m`), ...this.#maybe("c", `${at}.c`) }));
    return along.length === 0 ? {} : { along };
  }

  #maybe(name: string, id: string): object {
    const value = this.values.get(id);
    return value === undefined ? {} : { [name]: value };
  }

  #load(): object {
    if (this.draft.weigh === "share") return { front_share: this.#or("share", assumedShare) };
    const [front, rear] = [this.#need("load.front"), this.#need("load.rear")];
    // Both readings together are the rider with the bike, give or take what was put on or off meanwhile.
    const [rider, bike] = [this.values.get("rider"), this.values.get("bike") ?? assumedBike];
    const all = (front ?? 0) + (rear ?? 0);
    const off = front !== undefined && rear !== undefined && rider !== undefined && (all < rider || all > rider + bike * (1 + scaleSlack) + rider * scaleSlack);
    if (off) this.faults.set("load.rear", { why: "scales", bound: { min: rider, max: rider + bike } });
    return { front_load_kg: front, rear_load_kg: rear };
  }

  #now(): object {
    const now = {
      ...this.#reads("front"), ...this.#reads("rear"), ...this.#maybe("pump_stroke_ml", "pump"),
    };
    return Object.keys(now).length === 0 ? {} : { now };
  }

  #reads(side: Side): object {
    const kpa = this.values.get(`now.${side}`) ?? (this.faults.has(`now.${side}`) ? undefined : this.expected[side]);
    return kpa === undefined ? {} : { [`${side}_gauge_kpa`]: kpa };
  }

  #wheel(side: Side): object {
    const from = this.draft.rearSame ? "front" : side; // the side whose fields count
    const pick = (name: string): string => this.draft.picks[`${from}.${name}`] ?? "";
    if (side === from && pick("sidewall") === "") this.#say("sidewall");
    if (side === from && pick("setup") === "") this.#say("setup");
    const profile = pick("profile") || "unknown";
    if (side === from && pick("profile") === "") this.#say("edge");
    return {
      tyre: {
        label_mm: this.#need(`${from}.label`), ...this.#maybe("measured_mm", `${from}.measured`),
        sidewall: pick("sidewall") || "glove", setup: pick("setup") || "tubeless",
        ...this.#maybe("max_kpa", `${from}.tyreMax`), ...this.#maybe("min_kpa", `${from}.tyreMin`),
        hookless_ok: pick("hookless") === "yes",
      },
      rim: {
        bead_seat_mm: this.#or(`${from}.bead`, assumedBead), inner_mm: this.#inner(from, side, profile), profile,
        ...this.#maybe("max_kpa", `${from}.rimMax`), ...this.#maybe("table_min_label_mm", `${from}.tableMin`),
        ...this.#maybe("table_max_label_mm", `${from}.tableMax`), ...this.#maybe("table_max_kpa", `${from}.tableKpa`),
      },
    };
  }

  #say(what: Assumption): void {
    if (!this.assumed.includes(what)) this.assumed.push(what);
  }

  // On a hooked rim an unknown inner width is taken from the tyre's measuring rim, and said. On a straight or unknown edge
  // it decides whether the tyre may be mounted at all: it must be read or measured.
  #inner(from: Side, side: Side, profile: string): number | undefined {
    const id = `${from}.inner`;
    const known = this.values.get(id);
    if (known !== undefined || this.faults.has(id)) return known;
    if (profile !== "hooked") {
      this.faults.set(id, { why: "measure" });
      return undefined;
    }
    if (side === from) this.#say(`inner.${from}`);
    return usualInnerFor(this.values.get(`${from}.label`) ?? 0, this.tables);
  }

  #ground(): readonly object[] {
    const lone = this.draft.ground.length === 1;
    if (lone && (this.draft.ground[0]?.km ?? "") === "") this.assumed.push("km");
    return this.draft.ground.map((stretch) => this.#stretch(stretch, lone));
  }

  #stretch(stretch: StretchDraft, lone: boolean): object {
    const id = (name: string): string => `ground.${stretch.id}.${name}`;
    for (const name of ["km", "kmh", "gd0"] as const) {
      if (name !== "gd0" || stretch.kind === "typed") this.#take(id(name), stretchFields[name], stretch[name]);
    }
    // A share that cannot be read has moved no kilometre yet: it waits under its reason.
    if (this.draft.groundBy === "share" && stretch.part !== undefined && partOf(stretch.part) === undefined && !lone) this.faults.set(id("km"), { why: "part" });
    const share = lone ? this.#or(id("km"), 1) : this.#need(id("km"));
    const washboard = stretch.washboard ? { washboard: true } : {};
    if (stretch.kind === "typed") {
      const gd0 = this.#need(id("gd0"));
      return { gd0, ...interval(stretch, gd0), share, kmh: this.#need(id("kmh")), ...washboard };
    }
    const kind = groundKinds.find((key) => key === stretch.kind) ?? "patched";
    return { kind, share, ...this.#maybe("kmh", id("kmh")), ...washboard };
  }
}

// interval is that of a measured roughness, where it stands round it.
function interval({ low, high }: StretchDraft, gd0: number | undefined): object {
  const [from, to] = [Number(low) / 1e6, Number(high) / 1e6];
  return gd0 !== undefined && from > 0 && from <= gd0 && to >= gd0 ? { gd0_low: from, gd0_high: to } : {};
}

// faultsOf lists the faults that keep a side from an answer: not those of the other wheel's own fields.
export function faultsOf(side: Side, draft: PressureDraft, faults: ReadonlyMap<string, Fault>): readonly string[] {
  const own = draft.rearSame ? "front" : side;
  return [...faults.keys()].filter((id) => !id.startsWith("now.") && !sides.some((each) => each !== own && id.startsWith(`${each}.`)));
}
