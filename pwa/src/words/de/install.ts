// How the app is put on a home screen, in German; the keys are those of ../en/install.ts.

import type { Entry } from "../entry.ts";
import type { installWords as english } from "../en/install.ts";

export const installWords = {
  "install.hint": "Installiere zu Hause, bevor du kein Netz mehr hast",
  "install.dismiss": "Nicht mehr zeigen",
  "install.button": "Installieren",
  "install.ios.1": "Öffne diese Seite im Browser des Telefons und tipp auf „Teilen“.",
  "install.ios.2": "Wähle „Zum Home-Bildschirm“.",
  "install.ios.3": "Öffne Rimside einmal vom Home-Bildschirm, solange du noch Netz hast.",
  "install.ios.storage": "Unter iOS hat die installierte App ihren eigenen Speicher: Was du im Browser eingegeben hast, ist nicht darin. Also erst installieren, dann eingeben.",
  "install.menu.1": "Öffne das Menü des Browsers.",
  "install.menu.2": "Wähle „Installieren“ oder „Zum Startbildschirm hinzufügen“.",
  "install.menu.3": "Öffne Rimside einmal vom Startbildschirm, solange du noch Netz hast.",
  "install.done": "Das ist die installierte App. Sie öffnet sich ohne Netz.",
} as const satisfies Partial<Record<keyof typeof english, Entry>>;
