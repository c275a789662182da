// The words of the car's morning list in German; the keys are those of ../en/morning.ts.

import type { Entry } from "../entry.ts";
import type { morningWords as english } from "../en/morning.ts";

export const morningWords = {
  "morning.title": "Drücke am Morgen",
  "morning.why": "Ein Druck je Ersatzrad, der allen dient, die es bekommen können: nach Gewicht, Untergrund heute und den Grenzen.",
  "morning.spares": "Ersatzräder",
  "morning.riders": "Fahrer",
  "morning.rider": "Fahrer",
  "morning.for": "für {riders}",
  "morning.andMore": "{n} weitere",
  "morning.spread": "höchstens {percent}\u00A0% daneben",
  "morning.exact": "genau richtig",
  "morning.compromise": "am meisten bei {riders}",
  "morning.missing": { by: "n", one: "{n} Fahrer hat keine Zahl: siehe unten", other: "{n} Fahrer haben keine Zahl: siehe unten" },
  "morning.changed": "nur mit einer Änderung",
  "morning.nobody": "passt niemandem",
  "morning.noTyre": "kein Reifen darauf",
  "morning.noShared": "Kein einzelner Druck hält alle über der Untergrenze und unter den Grenzen.",
  "morning.noNumber": "Für niemanden, dem es dient, eine Zahl: Ein Gewicht, eine Breite, ein Felgenhorn oder eine Grenze ist nicht bekannt.",
  "morning.stopped": "Darf nicht gefahren werden. Nicht aufpumpen; nimm es aus dem Auto.",
  "morning.pumped": "Aufgepumpt",
  "morning.pumpedSpoken": "Aufgepumpt: {spare} auf {p}",
  "morning.pumpedAll": "Alle wie oben aufgepumpt",
  "morning.done": "{spare} ist mit {p} notiert.",
  "morning.doneAll": { by: "n", one: "{n} Ersatzrad ist notiert.", other: "{n} Ersatzräder sind notiert." },
  "morning.noted": "notiert, {clock}",
  "morning.progress": "{done} von {of} berechnet",
  "morning.note": "Wie der Druckmesser zeigt, mit dem die Laufräder eingestellt werden. Felgen und Reifen sind aus dem Buch gelesen: Die Zahl auf dem Teil geht vor.",
} as const satisfies Partial<Record<keyof typeof english, Entry>>;
