// How old a measure is, and when it is due again, in German; the keys are those of ../en/measure_age.ts.

import type { Entry } from "../entry.ts";
import type { measureAgeWords as english } from "../en/measure_age.ts";

export const measureAgeWords = {
  "measureAge.today": "heute",
  "measureAge.yesterday": "gestern",
  "measureAge.measured": "gemessen {age}",
  "measureAge.due": "{age}. {due}",
  "measureDue.grown": "Noch einmal messen: Er war damals neu, und Reifen wachsen in der ersten Woche (unsere Wahl, übliche Praxis).",
  "measureDue.moved": "Noch einmal messen: Das war, bevor er hier montiert wurde.",
} as const satisfies Partial<Record<keyof typeof english, Entry>>;
