// The words of wheel tags in German; the keys are those of ../en/tags.ts.

import type { Entry } from "../entry.ts";
import type { tagWords as english } from "../en/tags.ts";

export const tagWords = {
  "tags.title": "Laufradanhänger",
  "tags.code": "Code auf einem Anhänger",
  "tags.open": "Laufrad öffnen",
  "tags.unknown": "Kein Laufrad in diesem Buch hat den Code {code}.",
  "tags.several": "Mehrere Laufräder haben diesen Code. Welches ist es?",
  "tags.camera": "Mit der Kamera lesen",
  "tags.cameraNone": "Die Kamera gab kein Bild. Trag den Code ein.",
  "tags.stop": "Kamera stoppen",
  "tags.print": "Drucken, ausschneiden und an die Laufräder binden. Die Kamera eines Telefons öffnet das Laufrad über das Quadrat; der Code lässt sich auch eintippen.",
  "tags.only": "Nur Ersatzräder",
  "tags.spoken": "Quadratischer Code, der {name} öffnet",
  "tags.none": "Im Buch ist noch kein Laufrad.",
  "tags.progress": "{done} von {of} gezeichnet",
} as const satisfies Partial<Record<keyof typeof english, Entry>>;
