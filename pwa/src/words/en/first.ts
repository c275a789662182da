// What the app says on its first screen and round every screen: these words travel with the first script.
// Keys are flat; {name} is a placeholder. A line "family: prefix" allows keys that the code puts together as
// w(`prefix${...}`); all others stand in full.

import { checkTitleWords } from "./check_titles.ts";
import { installWords } from "./install.ts";
import { measureAgeWords } from "./measure_age.ts";
import { pressureWords } from "./pressure.ts";
import { readyWords } from "./ready.ts";
import { recordWords } from "./records.ts";
import { recoverWords } from "./recover.ts";
import { rideWords } from "./ride.ts";
import { syncWords } from "./sync.ts";
import { tripDayWords } from "./trip_day.ts";

export const first = {
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
  ...syncWords,
  ...pressureWords,
  ...rideWords,
  ...recordWords,
  ...installWords,
  ...readyWords,
  ...checkTitleWords,
  ...measureAgeWords,
  ...tripDayWords,
} as const;
