// The catalogue: every word a person reads, in English. Keys are flat; {name} is a placeholder.
// A line "family: prefix" allows keys that the code puts together as w(`prefix${...}`); all others stand in full.

import { carWords } from "./car.ts";
import { cautionWords } from "./cautions.ts";
import { checkRowWords } from "./check_rows.ts";
import { checkWords } from "./checks.ts";
import { eraseWords } from "./erase.ts";
import { guideWords } from "./guide.ts";
import { historyWords } from "./history.ts";
import { installWords } from "./install.ts";
import { listWords } from "./lists.ts";
import { measureWords } from "./measure.ts";
import { packingWords } from "./packing.ts";
import { phoneWords } from "./phones.ts";
import { pressureWords } from "./pressure.ts";
import { printWords } from "./print.ts";
import { readyWords } from "./ready.ts";
import { recordWords } from "./records.ts";
import { recoverWords } from "./recover.ts";
import { rideWords } from "./ride.ts";
import { settingsWords } from "./settings.ts";
import { sourceWords } from "./sources.ts";
import { wheelsWords } from "./wheels.ts";

export const en = {
  "app.titled": "{screen} · Rimside",
  "joint.facts": " · ",
  "joint.sentences": " ",

  // family: place.
  "place.pressure": "Pressure",
  "place.checks": "Checks",
  "place.packing": "Packing",
  "place.car": "Team car",
  "place.wheels": "Wheels",
  "place.settings": "Settings",
  "bar.label": "Places",


  "device.phone": "Phone",
  "device.computer": "Computer",

  "status.saved": "All saved on this phone",
  "status.saving": "Saving…",
  // family: status.cannot.
  "status.cannot.refused": "Cannot save on this phone: the browser refuses its storage.",
  "status.cannot.full": "Cannot save on this phone: its storage is full. Free some space, then change anything to try again.",
  "status.cannot.silent": "Cannot save on this phone: its storage does not answer. Close the app and open it again.",
  "status.works.sums": "The sums still work; what you typed lasts until you close this page.",
  "status.works.none": "What you typed lasts until you close this page.",

  "outage.care": "Care.",
  "outage.server": "This browser cannot run the calculator, so the server does the sums. Without signal there will be none.",
  "outage.none": "No new sums: this browser cannot run the calculator, and the server does not answer.",
  "outage.saved": "What you type is still saved on this phone, and the cautions can be read.",
  "outage.unsaved": "The cautions can still be read.",
  "outage.why": "Why",
  "outage.again": "Try again",

  "trouble.title": "Something broke",
  "trouble.text": "This is a fault in Rimside, not in what you typed. What was saved is still there. Go on, or reload the page.",
  "trouble.details": "Details",
  "trouble.copy": "Copy details",
  "trouble.copied": "Copied",
  "trouble.marked": "The browser does not let the page copy. The details are marked: copy them from the menu.",
  "trouble.reload": "Reload",
  "trouble.close": "Go on",

  "offer.text": "A new version is ready",
  "offer.reload": "Reload",

  ...recoverWords,
  ...pressureWords,
  ...rideWords,
  ...recordWords,
  ...settingsWords,
  ...installWords,
  ...cautionWords,
  ...historyWords,
  ...printWords,
  ...sourceWords,
  ...wheelsWords,
  ...carWords,
  ...checkWords,
  ...checkRowWords,
  ...readyWords,
  ...packingWords,
  ...measureWords,
  ...guideWords,
  ...listWords,
  ...eraseWords,
  ...phoneWords,
} as const;
