// The words of an event as a whole in German; the keys are those of ../en/event_whole.ts.

import type { Entry } from "../entry.ts";
import type { eventWholeWords as english } from "../en/event_whole.ts";

export const eventWholeWords = {
  "eventWhole.name": "Name der Veranstaltung",
  "eventWhole.list": "Veranstaltungen im Buch",
  "eventWhole.holds": "Was dazugehört",
  "eventWhole.stays": "Räder und Personen, die vor der Veranstaltung im Buch waren, und die Ersatzräder im Auto gehören nicht dazu.",
  "eventWhole.export": "Alles davon speichern",
  "eventWhole.file": "Die Datei enthält Namen und Gewichte vollständig. Bewahr sie so sicher auf wie die Startliste.",
  "eventWhole.erase": "Veranstaltung löschen",
  "eventWhole.erasing": "Löschen ist endgültig. Es nimmt die Fahrer, ihr Gewicht, ihre Räder und alles, was über sie notiert wurde, von diesem Telefon und von jedem Server und Telefon, das davon erfährt. Es lässt sich nicht rückgängig machen.",
  "eventWhole.gone": "Die Veranstaltung ist auf diesem Telefon gelöscht. Der Server und jedes andere Telefon vergessen sie beim nächsten Abgleich.",
  "eventWhole.unknown": "Diese Veranstaltung ist nicht im Buch.",
} as const satisfies Partial<Record<keyof typeof english, Entry>>;
