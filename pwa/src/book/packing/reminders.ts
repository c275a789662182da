// The reminders of a trip: rotors and batteries on the evening before each departure, the bike on the day it arrives.

import type { RecordState } from "../../log/op/merge.ts";
import { w } from "../../words/index.ts";
import type { Reminder } from "../checks/calendar.ts";
import { textOf } from "../checks/walk_save.ts";

const evening = -5; // hours after midnight of the day: 19:00 before
const earlier = -6;
const afternoon = 16;

// tripReminders: a day that is not known of an arrival is that of its departure.
export function tripReminders(trip: RecordState, rotors: boolean): readonly Reminder[] {
  const name = textOf(trip, "name") || w("recKind.trip");
  const make = (kind: string, day: string, what: string, alarmHours: number): Reminder[] =>
    isDay(day) ? [{ uid: `${kind}.${trip.rec}@rimside`, day, title: w("trip.remind", { name, what }), text: w("trip.reminderText"), alarmHours }] : [];
  const [from, to] = [textOf(trip, "from"), textOf(trip, "to")];
  const [there, back] = [textOf(trip, "arrives") || from, textOf(trip, "home_arrives") || to];
  return [
    ...(rotors ? make("rotors-off", from, w("trip.remind.rotorsOff"), earlier) : []), ...make("batteries", from, w("trip.remind.batteries"), evening),
    ...(rotors ? make("rotors-on", there, w("trip.remind.rotorsOn"), afternoon) : []), ...make("arrival", there, w("trip.remind.arrival"), afternoon + 1),
    ...(rotors ? make("rotors-off-back", to, w("trip.remind.homeOff"), earlier) : []), ...make("batteries-back", to, w("trip.remind.batteries"), evening),
    ...make("home", back, w("trip.remind.home"), afternoon + 1),
  ];
}

function isDay(day: string): boolean {
  return /^\d{4}-\d\d-\d\d$/.test(day);
}
