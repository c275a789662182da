// What is asked before a list is made, and where an answer belongs: to the trip, the bike, or the wheel of that end.

import type { Change } from "../../log/book_log.ts";
import type { Json } from "../../log/op/json.ts";
import type { RecordState } from "../../log/op/merge.ts";
import { w } from "../../words/index.ts";
import type { Side } from "../pressure/answer.ts";
import { fieldOf } from "../value/kinds.ts";
import { optionWords } from "../value/kind_words.ts";
import type { Pack } from "./pack_view.ts";

type Ask = Pack["ask"][number];

export interface Question {
  readonly key: string;
  readonly label: string;
  readonly options: readonly { readonly value: string; readonly label: string }[];
  readonly change: (value: string) => Change;
}

export interface AskedBike {
  readonly name: string;
  readonly state: RecordState;
  readonly wheels: Readonly<Record<Side, RecordState | undefined>>;
  readonly ask: readonly Ask[];
}

// questionsOf are the open ones of a trip; what concerns no record yet, as the axle of a wheel that is not in the book, is left to Wheels.
export function questionsOf(trip: RecordState, bikes: readonly AskedBike[]): readonly Question[] {
  const legs = bikes.some(({ ask }) => ask.some(({ field }) => field === "legs_us")) ? [legsQuestion(trip)] : [];
  return [...legs, ...bikes.flatMap((bike) => bike.ask.flatMap((ask) => questionOf(ask, bike, bikes.length > 1) ?? []))];
}

// legsQuestion is asked while the way is not known too.
export function legsQuestion(trip: RecordState): Question {
  const options = [{ value: "no", label: w("trip.no") }, { value: "yes", label: w("trip.yes") }];
  return { key: "legs_us", label: w("trip.us"), options, change: (value) => setting(trip, "legs_us", value === "yes") };
}

function questionOf(ask: Ask, bike: AskedBike, several: boolean): Question | undefined {
  const { field, side } = ask;
  if (field === "legs_us") return undefined;
  const wheel = side === "" ? undefined : bike.wheels[side];
  const of = side === "" ? bike.state : wheel ?? (field === "brake" ? bike.state : undefined);
  if (of === undefined) return undefined;
  const words = side === "" ? w(`packAsk.${field}`) : w("trip.asksSided", { side: w(`side.${side}`), what: w(`packAsk.${field}`) });
  const label = several ? w("trip.asksSided", { side: bike.name, what: words }) : words;
  const name = field === "axle" ? "axle_mm" : field;
  const options = field === "axle" ? axles(side === "rear" ? "rear" : "front") : (fieldOf(of.kind, name)?.options ?? []).map((value) => ({ value, label: optionWords(name, value) }));
  return { key: `${of.rec} ${name} ${side}`, label, options, change: (value) => setting(of, name, field === "axle" ? Number(value) : value) };
}

function setting(of: RecordState, field: string, value: Json): Change {
  return { rec: of.rec, kind: of.kind, set: { [field]: value }, shown: of };
}

// The axles of trade guides: a thin one is a quick release.
const quick = { front: [9], rear: [10] } as const;
const through = { front: [12, 15, 20], rear: [12] } as const;

function axles(side: Side): Question["options"] {
  return [
    ...quick[side].map((mm) => ({ value: String(mm), label: w("packAsk.quickRelease", { mm }) })),
    ...through[side].map((mm) => ({ value: String(mm), label: w("packAsk.throughAxle", { mm }) })),
  ];
}

