// When a trip leaves, in German; the keys are those of ../en/trip_day.ts.

import type { Entry } from "../entry.ts";
import type { tripDayWords as english } from "../en/trip_day.ts";

export const tripDayWords = {
  "trip.noDay": "Kein Tag gewählt.",
  "trip.leaves": { by: "n", one: "Abreise in {n} Tag", other: "Abreise in {n} Tagen" },
  "trip.tomorrow": "Abreise morgen",
  "trip.today": "Abreise heute",
  "trip.away": "Unterwegs",
  "trip.over": "Vorbei",
} as const satisfies Partial<Record<keyof typeof english, Entry>>;
