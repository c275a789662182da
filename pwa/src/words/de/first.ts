// What the app says on its first screen and round every screen, in German; the keys are those of ../en/first.ts.

import type { Entry } from "../entry.ts";
import type { first as english } from "../en/first.ts";
import { checkTitleWords } from "./check_titles.ts";
import { installWords } from "./install.ts";
import { measureAgeWords } from "./measure_age.ts";
import { pressureWords } from "./pressure.ts";
import { readyWords } from "./ready.ts";
import { recordWords } from "./records.ts";
import { recoverWords } from "./recover.ts";
import { rideWords } from "./ride.ts";
import { syncWords } from "./sync.ts";
import { tripDayWords } from "./trip_day.ts";

export const first = {
  "app.titled": "{screen} · Rimside",
  "joint.facts": " · ",
  "joint.sentences": " ",

  "place.pressure": "Druck",
  "place.checks": "Prüfen",
  "place.packing": "Packen",
  "place.car": "Teamwagen",
  "place.wheels": "Laufräder",
  "place.settings": "Einstellungen",
  "bar.label": "Bereiche",

  "device.phone": "Telefon",
  "device.computer": "Computer",

  "status.saved": "Alles auf diesem Telefon gespeichert",
  "status.saving": "Wird gespeichert…",
  "status.cannot.refused": "Speichern auf diesem Telefon geht nicht: Der Browser verweigert seinen Speicher.",
  "status.cannot.full": "Speichern auf diesem Telefon geht nicht: Der Speicher ist voll. Schaff Platz, dann ändere etwas, um es noch einmal zu versuchen.",
  "status.cannot.silent": "Speichern auf diesem Telefon geht nicht: Der Speicher antwortet nicht. Schließ die App und öffne sie wieder.",
  "status.works.sums": "Gerechnet wird weiter; was du eingegeben hast, bleibt, bis du diese Seite schließt.",
  "status.works.none": "Was du eingegeben hast, bleibt, bis du diese Seite schließt.",

  "outage.care": "Vorsicht.",
  "outage.server": "Dieser Browser kann den Rechner nicht ausführen, darum rechnet der Server. Ohne Netz gibt es keine neuen Zahlen.",
  "outage.none": "Keine neuen Zahlen: Dieser Browser kann den Rechner nicht ausführen, und der Server antwortet nicht.",
  "outage.saved": "Was du eingibst, wird weiter auf diesem Telefon gespeichert, und die Hinweise unter „Vorsicht“ sind zu lesen.",
  "outage.unsaved": "Die Hinweise unter „Vorsicht“ sind weiter zu lesen.",
  "outage.why": "Warum",
  "outage.again": "Noch einmal versuchen",

  "trouble.title": "Etwas ist schiefgegangen",
  "trouble.text": "Das ist ein Fehler in Rimside, nicht in dem, was du eingegeben hast. Was gespeichert war, ist noch da. Mach weiter oder lade die Seite neu.",
  "trouble.details": "Einzelheiten",
  "trouble.copy": "Einzelheiten kopieren",
  "trouble.copied": "Kopiert",
  "trouble.marked": "Der Browser lässt die Seite nicht kopieren. Die Einzelheiten sind markiert: Kopiere sie über das Menü.",
  "trouble.reload": "Neu laden",
  "trouble.close": "Weiter",

  "offer.text": "Eine neue Version ist bereit",
  "offer.reload": "Neu laden",

  ...recoverWords,
  ...syncWords,
  ...pressureWords,
  ...rideWords,
  ...recordWords,
  ...installWords,
  ...readyWords,
  ...checkTitleWords,
  ...measureAgeWords,
  ...tripDayWords,
} as const satisfies Partial<Record<keyof typeof english, Entry>>;
