// The question which spare fits, and its answer in words.

import type { MatchAnswer, MatchRequest } from "../../contract/contract.ts";
import { listed, w } from "../../words/index.ts";
import { clockWords } from "../value/when.ts";
import { plain } from "../../words/number.ts";
import type { SpareWheel } from "./fleet.ts";
import type { End } from "./hub.ts";

export type Verdict = MatchAnswer[number];
type Reason = Verdict["reasons"][number];

// matchRequest asks for one end. Stopped says which spares may not be ridden.
export function matchRequest(end: End, spares: readonly SpareWheel[], stopped: ReadonlySet<string>): MatchRequest {
  return { bike: end, spares: spares.map((spare) => spareRequest(spare, stopped)) };
}

export function spareRequest({ rec, hub, bare, tyreMm, loan }: SpareWheel, stopped: ReadonlySet<string>): MatchRequest["spares"][number] {
  return {
    id: rec, ...hub, bare, ...(tyreMm !== undefined && { tyre_mm: tyreMm }), ...(loan !== undefined && { out_with: loan.number || "?" }),
    ...(stopped.has(rec) && { state: "stop" as const }),
  };
}

// GiveView is what the screen says: one spare in large words, and the others below.
export interface GiveView {
  readonly give: { readonly rec: string; readonly spare: string; readonly words: string; readonly facts: string; readonly change: string } | undefined;
  readonly others: readonly { readonly rec: string; readonly spare: string; readonly name: string; readonly why: string; readonly can: boolean }[];
}

// giveView words an answer. Pressure turns kPa into the person's unit with its name.
export function giveView(verdicts: readonly Verdict[], spares: readonly SpareWheel[], missing: ReadonlySet<string>, pressure: (kpa: number) => string, now: number): GiveView {
  const by = new Map(spares.map((spare) => [spare.rec, spare]));
  const known = verdicts.flatMap((verdict) => {
    const spare = by.get(verdict.id);
    return spare === undefined ? [] : [{ verdict, spare }];
  });
  const first = known.find(({ verdict, spare }) => verdict.fits !== "no" && !missing.has(spare.rec));
  const give = first === undefined ? undefined : {
    rec: first.spare.rec, spare: first.spare.name, words: w("car.give", { spare: first.spare.name.toUpperCase() }), facts: factsOf(first.spare, pressure, now),
    change: first.verdict.fits === "yes" ? "" : reasonsWords(first.verdict, first.spare, now),
  };
  const others = known.filter((each) => each !== first).map(({ verdict, spare }) => ({
    rec: spare.rec, spare: spare.name, name: spare.place === "" ? spare.name : w("car.named", { spare: spare.name, place: spare.place }),
    why: missing.has(spare.rec) ? w("car.notThere") : verdict.fits === "yes" ? w("car.fits") : reasonsWords(verdict, spare, now),
    can: verdict.fits !== "no" && !missing.has(spare.rec),
  }));
  return { give, others };
}

function factsOf(spare: SpareWheel, pressure: (kpa: number) => string, now: number): string {
  const pumped = spare.kpa === undefined ? w("car.notPumped") : w("car.pumped", { p: pressure(spare.kpa), clock: clockWords(spare.pumpedAt, now) });
  return spare.place === "" ? pumped : w("car.at", { place: spare.place, pumped });
}

// reasonsWords tells why not, or what to change.
export function reasonsWords({ fits, minutes, reasons }: Verdict, spare: SpareWheel, now: number): string {
  const why = listed(reasons.map((reason) => reasonWords(reason, spare, now)));
  if (fits === "no") return w("car.no", { why });
  return minutes > 0 ? w("car.changeIn", { why, minutes: plain(Math.ceil(minutes)) }) : w("car.change", { why });
}

function reasonWords({ code, values }: Reason, { loan }: SpareWheel, now: number): string {
  const [bike, have] = [Number(values["bike"] ?? 0), Number(values["spare"] ?? 0)];
  switch (code) {
    case "out": return loan === undefined || loan.number === "" ? w("carWhy.outUnknown") : w("carWhy.out", { number: loan.number, clock: clockWords(loan.at, now) });
    case "stopped": return w("carWhy.stopped");
    case "other_side": return w("carWhy.otherSide");
    case "hub_width": return w("carWhy.hubWidth", { bike, have });
    case "axle": return w("carWhy.axle", { bike, have });
    case "bead_seat": return w("carWhy.beadSeat", { bike, have });
    case "brake": return w("carWhy.brake");
    case "rotor": return w("carWhy.rotor", { bike, have });
    case "sprocket": return w("carWhy.sprocket", { bike, have });
    case "tyre_too_wide": return w("carWhy.tyreWide", { bike, have });
    case "rotor_mount": return w("carWhy.mount");
    case "freehub_body": return w("carWhy.body");
    case "speeds": return w("carWhy.speeds", { bike, have });
    case "spacing": return w("carWhy.spacing");
    case "tyre_too_narrow": return w("carWhy.tyreNarrow", { bike, have });
    case "move_parts": return w("carWhy.moveParts");
    case "add_spacer": return w("carWhy.spacer");
    case "no_tyre": return w("carWhy.noTyre");
    case "look_first": return lookWords(String(values["what"] ?? ""));
  }
}

function lookWords(what: string): string {
  switch (what) {
    case "hub_width_mm": return w("carLook.hubWidth");
    case "axle_mm": return w("carLook.axle");
    case "bead_seat_mm": return w("carLook.beadSeat");
    case "rotor_mm": return w("carLook.rotor");
    case "tyre_mm": return w("carLook.tyre");
    case "max_cog": return w("carLook.sprocket");
    case "speeds": return w("carLook.speeds");
    case "mount": return w("carLook.mount");
    default: return w("carLook.body");
  }
}

// endWords is a bike's end in one line: "12 × 142 mm · rotor 160 · 12 sprockets · room for 42 mm".
export function endWords(end: End): string {
  const parts = [
    end.axle_mm !== undefined && end.hub_width_mm !== undefined ? w("carEnd.axle", { axle: end.axle_mm, width: end.hub_width_mm }) : "",
    end.brake === "rim" ? w("carEnd.rimBrake") : end.rotor_mm === undefined ? w("carEnd.disc") : w("carEnd.rotor", { mm: end.rotor_mm }),
    end.speeds === undefined ? "" : w("carEnd.speeds", { n: end.speeds }), end.room_mm === undefined ? "" : w("carEnd.room", { mm: end.room_mm }),
  ];
  return parts.filter((part) => part !== "").join(w("carEnd.between"));
}
