// The cautions in German; the keys are those of ../en/cautions.ts.

import type { Entry } from "../entry.ts";
import type { cautionWords as english } from "../en/cautions.ts";

export const cautionWords = {
  "cautions.title": "Vorsicht",
  "cautions.intro": "Der Aufdruck auf dem Teil und die Anleitung des Herstellers gehen dieser App vor. Ebenso die Vorschriften am Ort und eine Fachwerkstatt.",
  "cautions.seating.title": "Einen Wulst setzen",
  "cautions.seating.text": "Schütze deine Augen und halte Gesicht und Körper aus der Ebene des Laufrads. Hör beim niedrigeren Grenzwert von Reifen und Felge auf. Sitzt der Wulst bis dahin nicht, lass die Luft ab, seif ihn ein und fang neu an; etwas mehr Luft ist nie die Lösung. Ein Reifen, der nicht für schlauchlos gebaut ist, auf einer umgerüsteten Felge: höchstens 2,76 bar (40 psi).",
  "cautions.hookless.title": "Hakenlose Felgen",
  "cautions.hookless.text": "Hakenlos heißt: gerades Felgenhorn, ohne Haken. Nur ein Reifen, der hakenlos ausdrücklich nennt, mit Wulst für schlauchlos und breit genug für die Felge. Nie über 5 bar und nie über den niedrigeren Aufdruck auf Felge oder Reifen. Lass ihn nicht mit Höchstdruck in der Hitze stehen. Sieh dir die Wulstlinie rundum an. Im Zweifel nicht aufpumpen.",
  "cautions.co2.title": "CO2-Kartuschen",
  "cautions.co2.text": "Sie werden viel kälter als Eis und frieren an der Haut fest: Nimm Handschuh oder Hülle. Richte sie von Menschen weg und schraube nie eine unter Druck ab. Halte sie unter 50 °C, also nicht im geparkten Auto in der Sonne. Im Auto oder Zelt ein Fenster öffnen. Eine ganze Kartusche kann einen schmalen Reifen sprengen.",
  "cautions.brakes.title": "Bremsen",
  "cautions.brakes.text": "Ist das Laufrad draußen, lass den Bremshebel in Ruhe, außer zwischen den Belägen steckt eine Transportsicherung. An Bremsscheiben verbrennst du dir nach einer Abfahrt die Finger. Kein Spray in der Nähe einer Bremsscheibe. Neue Beläge oder Scheiben bremsen schwach, bis sie eingebremst sind. Brems zweimal kräftig, bevor du losfährst.",
  "cautions.held.title": "Das Laufrad im Rahmen",
  "cautions.held.text": "Nimm die Hände nicht vom Lenker, bevor die Achse fest ist, im eigenen Gewinde, und das Laufrad frei dreht. Geht ein Gewinde schwer, hör auf.",
  "cautions.carbon.title": "Carbon",
  "cautions.carbon.text": "Nach einem Sturz, einem Fall oder einer überdrehten Schraube kann es heil aussehen und später brechen. Klemm den Montageständer an die Sattelstütze, nie an ein Rohr. Splitter: Trag Handschuhe.",
  "cautions.torque.title": "Drehmoment",
  "cautions.torque.text": "Die Zahl auf dem Teil gilt. Ein Bereich in dieser App ist keine Erlaubnis, ihn zu nutzen.",
  "cautions.spinning.title": "Alles, was sich dreht",
  "cautions.spinning.text": "Finger weg von Speichen, Bremsscheibe und Kette, solange sich etwas bewegt.",
  "cautions.flying.title": "Fliegen",
  "cautions.flying.text": "Die Regeln sind je nach Land verschieden und ändern sich. Eine volle Kartusche kann dich den Flug kosten. Frag die Fluggesellschaft.",
  "cautions.roadside.title": "Am Straßenrand",
  "cautions.roadside.text": "Stell dich hinter die Leitplanke oder das Auto, trag helle Kleidung und bring zuerst den Fahrer von der Straße. Ein zweifelhaftes Laufrad kommt ins Auto, nicht zurück ins Rennen.",
  "cautions.tool.title": "Diese App",
  "cautions.tool.text": "Sie gibt Rat nach Modellen und Faustregeln. Sie kann keinen Riss sehen, und manche ihrer Zahlen sind nicht durch Messung bestätigt.",
} as const satisfies Partial<Record<keyof typeof english, Entry>>;
