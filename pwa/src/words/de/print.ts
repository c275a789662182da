// The words of what is printed, in German; the keys are those of ../en/print.ts.

import type { Entry } from "../entry.ts";
import type { printWords as english } from "../en/print.ts";

export const printWords = {
  "print.button": "Drucken",
  "print.back": "Zurück",
  "print.washboard": "{kind}, Waschbrett",
  "print.share": "{kind} {n} %",
  "print.wet": "nass",
  "print.ground": "Untergrund: {list}",
  "print.none": "Noch kein Rad zum Drucken da.",
  "print.go": "Zu „Druck“",
  "print.made": "Gedruckt {when}",

  "team.progress": "{done} von {total} gerechnet",
  "team.readyOne": "1 Rad",
  "team.ready": "{total} Räder",
  "team.bike": "Rad",
  "team.rider": "Fahrer",
  "team.unit": "{side}, {unit}",
  "team.caption": "Was jeder Druckmesser dort zeigen soll, wo die Reifen eingestellt werden",
  "team.choose": "Räder auf der Liste",
  "team.all": "Alle",
  "team.clear": "Keins",
  "team.nobody": "Wähle unten mindestens ein Rad.",

  "team.whyOne": "{side}: {why}",

  "card.atStart": "{p} {unit} bis zum Start",
  "card.least": "nie unter {p}",
  "card.most": "nie über {p}",
  "card.else": "Kommt es am Start anders, stell stattdessen ein",
  "card.start": "Start",
  "card.colder": "{by} kälter",
  "card.warmer": "{by} wärmer",
  "card.lower": "{by} tiefer",
  "card.higher": "{by} höher",
  "card.degrees": "{n} °C",
  "card.metres": "{n} m",
  "card.same": "so lassen",
  "card.out": "{by} ablassen",
  "card.in": "{by} aufpumpen",
  "card.caution": "Die Zahl auf dem Teil und die Anleitung des Herstellers gehen vor.",
} as const satisfies Partial<Record<keyof typeof english, Entry>>;
