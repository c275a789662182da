// The words of spare bikes in German; the keys are those of ../en/spare_bikes.ts.

import type { Entry } from "../entry.ts";
import type { spareBikeWords as english } from "../en/spare_bikes.ts";

export const spareBikeWords = {
  "spareBike.one": "Fahrrad",
  "spareBike.others": "Andere Ersatzfahrräder",
  "spareBike.none": "Kein Ersatzfahrrad ist frei. Unter Laufräder, Teamwagen, wird ein Fahrrad dazu.",
  "spareBike.saddle": "Sattel auf {mm} mm",
  "spareBike.saddleStays": "Sattel bleibt auf {mm} mm",
  "spareBike.saddleAsk": "Sattel nach Augenmaß einstellen",
  "spareBike.longer": "{mm} mm mehr Reichweite",
  "spareBike.shorter": "{mm} mm weniger Reichweite",
  "spareBike.reachUnknown": "Reichweite nach Augenmaß vergleichen",
  "spareBike.pedals": "Pedale umbauen",
  "spareBike.pedalsHex": "Pedale umbauen: Innensechskant",
  "spareBike.pedalsSpanner": "Pedale umbauen: Pedalschlüssel",
  "spareBike.pedalsBoth": "Pedale umbauen: Innensechskant und Pedalschlüssel",
  "spareBike.asItIs": "wie es ist: {why}",
  "spareBike.on": "Fährt {spare} seit {clock}.",
  "spareBike.caution": "Sattelstütze nie über ihre Markierung herausziehen. Das linke Pedal hat Linksgewinde. Vor dem Losfahren beide Bremshebel probieren: vorn und hinten können vertauscht sein.",
} as const satisfies Partial<Record<keyof typeof english, Entry>>;
