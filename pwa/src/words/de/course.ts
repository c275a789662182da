// The words of a course from a file in German; the keys are those of ../en/course.ts.

import type { Entry } from "../entry.ts";
import type { courseWords as english } from "../en/course.ts";

export const courseWords = {
  "course.title": "Strecke aus einer Datei",
  "course.why": "Eine GPX-Datei mit einem Track oder einer Route. Sie wird auf diesem Telefon gelesen; nichts davon wird gesendet, nur die Abschnitte, die du malst.",
  "course.pick": "GPX-Datei wählen",
  "course.reading": "Wird gelesen: {part} %",
  "course.read": "{km} km, {points} Punkte",
  "course.heights": "Höhen über {m} m nach beiden Seiten gemittelt. Höchster Punkt {high} m bei km {highAt}, tiefster {low} m bei km {lowAt}.",
  "course.noHeights": "Die Datei nennt keine Höhen.",
  "course.profile": "Höhenprofil: {list}",
  "course.flat": "{km} km ohne Höhen",
  "course.brush": "Malen mit",
  "course.how": "Zieh am Profil entlang, um zu malen, oder trag die Kilometer ein.",
  "course.from": "Von km",
  "course.to": "Bis km",
  "course.paint": "Malen",
  "course.stretch": "{kind}: km {from} bis {to}",
  "course.many": "Ein Tag fasst {n} Abschnitte. Übermal einige.",
  "course.use": "Für heute nehmen",
  "course.used": "Untergrund heute und die Höhe am Start sind die der Strecke.",
  "course.no.entities": "Diese Datei wurde abgelehnt: Sie deklariert einen Dokumenttyp oder Entitäten, die keine ehrliche Strecke braucht.",
  "course.no.depth": "Diese Datei wurde abgelehnt: Sie ist für eine Strecke zu tief verschachtelt.",
  "course.no.points": "Diese Datei hat mehr als 500.000 Punkte. Dünn sie zuerst aus.",
  "course.no.size": "Diese Datei ist größer als 50 MB. Dünn sie zuerst aus.",
  "course.no.not_gpx": "Das ist keine GPX-Datei.",
  "course.no.numbers": "Eine Position oder Höhe in dieser Datei ist keine mögliche Zahl.",
  "course.no.broken": "Diese Datei ist defekt: Ihre Auszeichnungen passen nicht zusammen.",
  "course.no.cut": "Diese Datei endet zu früh. Hol sie noch einmal.",
  "course.no.empty": "Diese Datei enthält keinen Track und keine Route mit zwei Punkten.",
  "course.no.unread": "Die Datei ließ sich nicht lesen. Wähl sie noch einmal.",
} as const satisfies Partial<Record<keyof typeof english, Entry>>;
