// How this phone stands with the server, in German; the keys are those of ../en/sync.ts.

import type { Entry } from "../entry.ts";
import type { syncWords as english } from "../en/sync.ts";

export const syncWords = {
  "sync.unsent": "{n} noch nicht auf dem Server",
  "sync.held": { by: "n", one: "{n} Löschung wartet: siehe Einstellungen", other: "{n} Löschungen warten: siehe Einstellungen" },
  "sync.met": "zuletzt abgeglichen {when}",
  "sync.sending": "sende {done} von {total}",
  "sync.fetching": "hole {done} von {total}",
  "sync.phase.never": "Dieses Telefon hat noch nie abgeglichen. Alles geht ohne Server.",
  "sync.phase.even": "Der Server hat auch alles.",
  "sync.phase.waiting": "Der Rest geht von selbst zum Server.",
  "sync.phase.sending": "Der Server erfährt, was hier neu ist.",
  "sync.phase.fetching": "Neues kommt vom Server.",
  "sync.fault.damaged": "Das Buch des Servers ist beschädigt. Was hier ist, ist sicher und geht dorthin, sobald jemand auf dem Server eine Sicherung zurückspielt.",
  "sync.fault.damaged_page": "Was der Server geschickt hat, wurde unterwegs beschädigt und nicht übernommen. Es wird noch einmal angefragt.",
  "sync.fault.full": "Der Speicher des Servers ist voll. Was hier ist, ist sicher und geht dorthin, sobald jemand dort Platz schafft.",
  "sync.fault.read_only": "Der Server darf sein Buch nicht schreiben. Was hier ist, ist sicher und geht dorthin, sobald jemand ihn in seinen Ordner schreiben lässt.",
  "sync.fault.busy": "Ein anderes Programm benutzt das Buch des Servers. Was hier ist, ist sicher und geht von selbst dorthin.",
  "sync.fault.too_small": "Etwas zwischen hier und dem Server lässt nicht durch, was gesendet werden soll. Was hier ist, ist sicher.",
  "sync.fault.internal": "Mit dem Server stimmt etwas nicht. Was hier ist, ist sicher und geht dorthin, sobald der Server wieder arbeitet.",
  "sync.phase.unreachable": "Der Server ist nicht erreichbar. Alles geht ohne ihn.",
  "sync.phase.otherBook": "Der Server hat ein anderes Buch: Es geht nichts dorthin.",
  "sync.phase.notPaired": "Nicht mit diesem Server gekoppelt: Es wird nichts gesendet. Alles funktioniert und geht dorthin, sobald du es unter Telefone koppelst.",
  "sync.phase.shutOut": "Von diesem Server ausgesperrt: Es wird nichts gesendet. Was hier ist, bleibt hier, und du kannst eine Kopie davon speichern.",
  "clock.ahead": "Die Uhr dieses Telefons geht gegenüber dem Server {by} vor. Stell sie richtig: Neue Einträge tragen ihre Zeit, und der Verlauf zeigt sie.",
  "clock.behind": "Die Uhr dieses Telefons geht gegenüber dem Server {by} nach. Stell sie richtig: Neue Einträge tragen ihre Zeit, und der Verlauf zeigt sie.",
  "span.minutes": "{n} min",
  "span.hours": "{n} h",
  "span.days": { by: "n", one: "{n} Tag", other: "{n} Tage" },
  "book.failed": "Es hat nicht geklappt. Nichts wurde geändert.",
  "book.back": "Zurück",
} as const satisfies Partial<Record<keyof typeof english, Entry>>;
