// The words of the repair page in German; the keys are those of ../en/recover.ts. The page loads these alone: it must work when
// little else does.

import type { Entry } from "../entry.ts";
import type { recoverWords as english } from "../en/recover.ts";

export const recoverWords = {
  "recover.title": "Rimside reparieren",
  "recover.text": "Wenn Rimside nicht öffnet oder auf einer alten Version stehen bleibt, wirft diese Seite die gespeicherten Programmdateien der App weg; der nächste Besuch holt sie neu. Für diesen Besuch brauchst du Netz.",
  "recover.keeps": "Was du eingegeben und gespeichert hast, bleibt: Diese Seite rührt es nicht an.",
  "recover.go": "Programmdateien wegwerfen",
  "recover.busy": "Läuft…",
  "recover.done": "Fertig: Die gespeicherten Programmdateien sind weg. Was du eingegeben und gespeichert hast, ist unberührt.",
  "recover.failed": "Es hat nicht geklappt: {reason} Schließ alle anderen Tabs mit Rimside und versuch es noch einmal.",
  "recover.back": "Rimside öffnen",
} as const satisfies Record<keyof typeof english, Entry>;
