// The catalogue: every word a person reads, in English. Keys are flat; {name} is a placeholder.
// A line "family: prefix" allows keys that the code puts together as w(`prefix${...}`); all others stand in full.

import { bookWords } from "./book.ts";
import { checkRowWords } from "./check_rows.ts";
import { checkWords } from "./checks.ts";
import { listWords } from "./lists.ts";
import { measureWords } from "./measure.ts";
import { phoneWords } from "./phones.ts";
import { packingWords } from "./packing.ts";
import { pressureWords } from "./pressure.ts";
import { printWords } from "./print.ts";
import { readyWords } from "./ready.ts";
import { recordWords } from "./records.ts";
import { recoverWords } from "./recover.ts";
import { sourceWords } from "./sources.ts";
import { rideWords } from "./ride.ts";
import { wheelsWords } from "./wheels.ts";

export const en = {
  "app.titled": "{screen} · Rimside",
  "joint.facts": " · ",
  "joint.sentences": " ",

  // family: place.
  "place.pressure": "Pressure",
  "place.checks": "Checks",
  "place.packing": "Packing",
  "place.support": "Support",
  "place.wheels": "Wheels",
  "place.settings": "Settings",
  "bar.label": "Places",

  // family: later.
  "later.title": "Not built yet",
  "later.support": "Here you will type a race number and read which spare wheel to give, and where in the car it hangs.",
  "later.go": "Go to Pressure",

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

  "install.hint": "Install at home, before you lose signal",
  "install.dismiss": "Do not show this again",
  "install.button": "Install",
  "install.ios.1": "Open this page in the phone’s own browser and tap the share button.",
  "install.ios.2": "Choose “Add to Home Screen”.",
  "install.ios.3": "Open Rimside from the home screen once while you still have signal.",
  "install.ios.storage": "On iOS the installed app keeps its own storage: what you typed in the browser is not in it. So install first, then type.",
  "install.menu.1": "Open the browser’s menu.",
  "install.menu.2": "Choose “Install” or “Add to home screen”.",
  "install.menu.3": "Open Rimside from the home screen once while you still have signal.",
  "install.done": "This is the installed app. It opens without signal.",

  "settings.units": "Pressure in",
  // family: settings.unit.
  "settings.unit.bar": "bar",
  "settings.unit.psi": "psi",
  "settings.unit.kpa": "kPa",
  "settings.theme": "Look",
  // family: settings.theme.
  "settings.theme.system": "As the phone",
  "settings.theme.day": "Day",
  "settings.theme.night": "Night",

  "storage.title": "Kept on this phone",
  // family: storage.state.
  "storage.state.asking": "Asking the browser…",
  "storage.state.kept": "The browser has agreed to keep what you typed, even when the phone runs short of space.",
  "storage.state.evictable": "What you typed is saved, but the browser may clear it when the phone runs short of space. Installing the app helps.",
  "storage.state.unknown": "This browser does not say whether it keeps what you typed when the phone runs short of space.",
  "storage.ask": "Ask the browser to keep it",
  "storage.refused": "The browser said no for now. It may agree once the app is installed or used more often.",
  "storage.used": "In use: {used} MB of {quota} GB",

  "settings.install": "Install",
  "version.title": "Version",
  "version.number": "This is version {version}.",
  "version.recover": "App broken or stuck on an old version? Repair it",

  // family: cautions.
  "cautions.title": "Cautions",
  "cautions.intro": "What is printed on the part and the maker’s manual come before this app. So do local rules and a qualified mechanic.",
  "cautions.seating.title": "Seating a bead",
  "cautions.seating.text": "Cover your eyes and keep face and body out of line with the wheel. Stop at the lower of the tyre’s and the rim’s limit. If the bead is not up by then, let the air out, soap it and start again; a little more air is never the answer. A tyre not made for tubeless on a converted rim: 2.76 bar (40 psi) at most.",
  "cautions.hookless.title": "Straight-sided (hookless) rims",
  "cautions.hookless.text": "Only a tyre that names hookless, with a tubeless bead, and wide enough for the rim. Never above 5 bar, or the lower mark on rim or tyre. Do not leave it in the heat at the limit. Look along the bead line all round. In doubt, do not inflate it.",
  "cautions.co2.title": "CO2 cartridges",
  "cautions.co2.text": "They turn far colder than ice and stick to skin: use a glove or the sleeve. Point them away from people and never unscrew one under pressure. Keep them below 50 °C, so not in a parked car in the sun. In a car or tent, open a window. One whole cartridge can burst a narrow tyre.",
  "cautions.brakes.title": "Brakes",
  "cautions.brakes.text": "With the wheel out, leave the lever alone unless a spacer sits between the pads. Discs burn fingers after a descent. No spray anywhere near a disc. New pads or discs brake weakly until bedded in. Brake hard twice before you move off.",
  "cautions.held.title": "The wheel in the frame",
  "cautions.held.text": "No hands off the bars until the axle is tight, in its own thread, and the wheel spins free. If a thread turns stiffly, stop.",
  "cautions.carbon.title": "Carbon",
  "cautions.carbon.text": "After a crash, a fall or a bolt turned too far it can look sound and fail later. Clamp a work stand to the seat post, never to a tube. Splinters: wear gloves.",
  "cautions.torque.title": "Torque",
  "cautions.torque.text": "The number on the part wins. A range in this app is no permission to use it.",
  "cautions.spinning.title": "Anything that turns",
  "cautions.spinning.text": "Keep fingers clear of spokes, disc and chain while anything moves.",
  "cautions.flying.title": "Flying",
  "cautions.flying.text": "Rules differ by country and change. A filled cartridge can cost you the flight. Ask the airline.",
  "cautions.roadside.title": "At the roadside",
  "cautions.roadside.text": "Stand behind the barrier or the car, in bright clothing, and get the rider off the road first. A doubtful wheel goes into the car, not back into the race.",
  "cautions.tool.title": "This app",
  "cautions.tool.text": "It gives advice from models and rules of thumb. It cannot see a crack, and some of its numbers are not confirmed by measurement.",

  ...recoverWords,
  ...pressureWords,
  ...rideWords,
  ...recordWords,
  ...bookWords,
  ...printWords,
  ...sourceWords,
  ...wheelsWords,
  ...checkWords,
  ...checkRowWords,
  ...readyWords,
  ...packingWords,
  ...measureWords,
  ...listWords,
  ...phoneWords,
} as const;
