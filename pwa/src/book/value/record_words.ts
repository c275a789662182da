// What records are called, and who did something to them: "Tyre · Ochre 40s", "Ana".

import { member } from "../../log/op/json.ts";
import { type RecordState, valueOf } from "../../log/op/merge.ts";
import { listed, w } from "../../words/index.ts";
import { kindWords } from "./kind_words.ts";
import type { PressureUnit } from "./quantity.ts";
import { type Teller, valueWords } from "./value_words.ts";

export type { Teller } from "./value_words.ts";

// Title tells by which fields a record is known: the first of head that is filled in, then all of also.
interface Title {
  readonly head: readonly string[];
  readonly also?: readonly string[];
}

const titles: Readonly<Record<string, Title>> = {
  person: { head: ["name", "number"] },
  bike: { head: ["name", "number"] },
  wheel: { head: ["name"] },
  tyre: { head: ["name", "label_mm"] },
  spare: { head: ["name", "wheel"], also: ["place"] },
  trip: { head: ["name", "from"] },
  event: { head: ["name", "day"] },
  device: { head: ["label"] },
  measure: { head: ["what"], also: ["of", "day"] },
  pressure_set: { head: ["bike"], also: ["side", "day"] },
  note: { head: ["bike"], also: ["side", "day"] },
  ride: { head: ["bike"], also: ["day"] },
  wash: { head: ["kind"], also: ["bike", "day"] },
  check: { head: ["moment"], also: ["bike", "day"] },
  finding: { head: ["words", "item"], also: ["bike"] },
  finding_closed: { head: ["finding"] },
  service: { head: ["what"], also: ["of", "day"] },
  pack_tick: { head: ["step"], also: ["trip"] },
  spare_out: { head: ["spare", "spare_bike"], also: ["number"] },
  spare_in: { head: ["spare", "spare_bike"] },
  photo: { head: ["of"], also: ["day"] },
  ground: { head: ["name", "day"] },
  trial: { head: ["what"], also: ["day"] },
};

const anyTitle: Title = { head: ["name", "label"] }; // gauge, pump, template, setting, and what a newer app knows

// titleOf is what a record is called, without its kind; "" when it has no name yet.
function titleOf(state: RecordState, teller: Teller): string {
  const { head, also = [] } = member(titles, state.kind) ?? anyTitle;
  const filled = (field: string): string => {
    const value = valueOf(state, field);
    return value === undefined || value === null || value === "" ? "" : valueWords({ rec: state.rec, kind: state.kind, field, value }, teller);
  };
  const first = head.map(filled).find((words) => words !== "") ?? "";
  // Wheels and tyres often go without a name: then it helps to know where they belong.
  const named = typeof valueOf(state, "name") === "string" && first !== "";
  const place = named ? "" : teller.placeOf(state.rec);
  return listed([first, ...also.map(filled), place]);
}

// describeRecord is a record's kind and name.
export function describeRecord(state: RecordState, teller: Teller): string {
  const kind = kindWords(state.kind);
  if (state.erased) return w("recName.erased", { kind });
  const name = titleOf(state, teller);
  return name === "" ? w("recName.plain", { kind }) : w("recName.of", { kind, name });
}

// shortNameOf leaves out where the record belongs, for where that is told already.
export function shortNameOf(state: RecordState, teller: Teller): string {
  return titleOf(state, { ...teller, placeOf: () => "" }) || nameIn(state, teller);
}

// nameIn is a record's name where it is clear what kind of thing is meant.
function nameIn(state: RecordState, teller: Teller): string {
  if (state.erased) return w("recValue.gone");
  return titleOf(state, teller) || w("recName.plain", { kind: kindWords(state.kind) });
}

export interface Known {
  readonly states: readonly RecordState[]; // all that may have to be named
  readonly unit: PressureUnit;
  readonly now: number;
  readonly me: string;
  readonly device: string;
}

// tellerOf names records by what is known of them.
export function tellerOf({ states, ...rest }: Known): Teller {
  const known = new Map(states.map((state) => [state.rec, state]));
  const places = placesIn(states);
  const busy = new Set<string>(); // records that are being named: two that name each other must not do so for ever
  const teller: Teller = {
    ...rest,
    find: (rec) => known.get(rec),
    nameOf(rec) {
      const state = known.get(rec);
      if (state === undefined) return w("recValue.unknown");
      if (busy.has(rec)) return kindWords(state.kind);
      busy.add(rec);
      const name = nameIn(state, teller);
      busy.delete(rec);
      return name;
    },
    placeOf(rec) {
      const place = places.get(rec);
      if (place === undefined || busy.has(place.bike)) return "";
      return w(`recPlace.${place.as}`, { bike: teller.nameOf(place.bike) });
    },
  };
  return teller;
}

const joints = ["front", "rear", "rider", "gauge", "pump"] as const; // fields of a bike that point to its parts and people

interface Place {
  readonly bike: string;
  readonly as: (typeof joints)[number];
}

// placesIn finds what belongs to which bike: its wheels, and through them its tyres.
function placesIn(states: readonly RecordState[]): Map<string, Place> {
  const places = new Map<string, Place>();
  const put = (from: RecordState, field: string, place: Place): void => {
    const rec = valueOf(from, field);
    if (typeof rec === "string" && rec !== "" && !places.has(rec)) places.set(rec, place);
  };
  for (const bike of states) {
    if (bike.kind === "bike") for (const as of joints) put(bike, as, { bike: bike.rec, as });
  }
  for (const wheel of states) {
    const place = wheel.kind === "wheel" ? places.get(wheel.rec) : undefined;
    if (place !== undefined) put(wheel, "tyre", place);
  }
  return places;
}

export interface By {
  readonly author: string;
  readonly device: string;
}

// whoWords names who did something: the person, or else the phone it was done on.
export function whoWords({ author, device }: By, teller: Teller): string {
  if (teller.find(author)?.erased === false) return teller.nameOf(author);
  if (device === teller.device && device !== "") return w("who.here");
  return labelOf(device, teller) || w("who.somebody");
}

// phoneWords names the phone that something was done on.
export function phoneWords(device: string, teller: Teller): string {
  const label = labelOf(device, teller);
  if (device === teller.device) return label === "" ? w("who.here") : w("who.named", { name: label });
  return label || w("who.elsewhere");
}

function labelOf(device: string, teller: Teller): string {
  const label = valueOf(teller.find(device), "label");
  return typeof label === "string" ? label : "";
}
