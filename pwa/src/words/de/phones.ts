// The words of the page about who may come in, in German; the keys are those of ../en/phones.ts.

import type { Entry } from "../entry.ts";
import type { phoneWords as english } from "../en/phones.ts";

export const phoneWords = {
  "phones.intro": "Diese Telefone und Computer teilen dieses Buch über den Server.",
  "phones.alone": "Der Server ist außer Reichweite. Wer hereindarf, lässt sich nur mit ihm sehen und ändern.",
  "phones.none": "Noch ist kein Telefon gekoppelt. Auf dem Computer, auf dem der Server läuft, muss es niemand sein.",
  "phones.other": "Der Server hat ein anderes Buch, darum geht nichts dorthin. Du kannst jenes Buch getrennt öffnen: Geh zurück zu den Einstellungen.",
  "phones.here": "dieses Telefon",
  "phones.seen": "zuletzt gesehen: {when}",
  "phones.never": "hier noch nicht gesehen",
  "phones.out": "ausgesperrt",
  "phones.unnamed": "Telefon ohne Namen",
  "phones.change": "Ändern",
  "phones.changeOf": "Ändern: {name}",
  "phones.name": "Name",
  "phones.save": "Namen speichern",
  "phones.renamed": "Name gespeichert: {name}",
  "phones.shutOut": "Aussperren",
  "phones.means": "Der Server weist {name} sofort und für immer ab, und ebenso jeder andere Server dieses Buchs, sobald er davon hört. Jenes Telefon behält, was es hat, und kann eine Kopie speichern; was es schrieb, bleibt im Buch. Um zurückzukommen, braucht es einen neuen Code.",
  "phones.forEver": "Für immer aussperren",
  "phones.leave": "Lassen",
  "phones.isOut": "Ausgesperrt: {name}",

  "pair.title": "Dieses Telefon koppeln",
  "pair.intro": "Lass dir einen Code geben: Ein gekoppeltes Telefon macht einen, ebenso der Computer, auf dem der Server läuft (rimside pair). Willst du die installierte App, dann installiere zuerst und tipp den Code dort ein.",
  "pair.code": "Code aus sechs Ziffern",
  "pair.label": "Name dieses Telefons",
  "pair.done": "Dieses Telefon ist gekoppelt.",
  "pair.busy": "Der Server wird gefragt…",
  "pair.digits": "Der Code hat sechs Ziffern, etwa 123 456.",
  "pair.wrong": "Dieser Code stimmt nicht, ist älter als zehn Minuten oder verbraucht. Lass dir einen neuen geben.",
  "pair.noLabel": "Gib diesem Telefon einen Namen mit 1 bis 60 Zeichen.",
  "pair.tooMany": "Zu viele Codes wurden versucht. Warte eine halbe Minute und versuch es dann noch einmal.",
  "pair.alone": "Der Server antwortet nicht. Nichts wurde geändert: Versuch es wieder, wenn er erreichbar ist.",
  "pair.refused": "Der Server hat es nicht getan. Nichts wurde geändert.",

  "code.title": "Ein anderes Telefon hereinlassen",
  "code.steps": "Öffne auf dem anderen Telefon {address}. Installiere die App dort zuerst und tipp den Code dann in der installierten App ein, unter Einstellungen, Telefone.",
  "code.stepsPlain": "Öffne auf dem anderen Telefon {address} und tipp den Code dort ein, unter Einstellungen, Telefone.",
  "code.local": "Diese Adresse gilt nur auf diesem Computer. Für Telefone starte den Server mit -lan.",
  "code.make": "Code machen",
  "code.left": "Gültig bis {time}, noch {n} min, für ein Telefon.",
  "code.over": "Dieser Code gilt nicht mehr. Mach einen neuen.",

  "trust.title": "Was als sicher gilt",
  "trust.by.https": "Diese App kommt über https von {host}: Niemand unterwegs kann sie lesen oder ändern.",
  "trust.by.here": "Diese App kommt von diesem Computer selbst. Andere Konten auf diesem Computer erreichen sie auch.",
  "trust.by.plain": "Diese App kommt über einfaches http von {host}. Wer im selben Netz ist, kann sie lesen und ändern. Browser installieren so eine App nicht und öffnen sie nicht ohne Empfang: Starte den Server mit -lan oder setz https davor.",
  "trust.in": "Ein gekoppeltes Telefon darf alles in diesem Buch lesen und schreiben und andere hereinlassen: Ein Team traut seinen Leuten. Wer etwas schrieb, ist, was das Telefon sagte.",
  "trust.out": "Ein ausgesperrtes Telefon behält, was es hatte, und bekommt von hier nichts mehr.",
} as const satisfies Partial<Record<keyof typeof english, Entry>>;
