// The words of an event as a whole: named, exported, erased.

export const eventWholeWords = {
  "eventWhole.name": "Name of the event",
  "eventWhole.list": "Events in the book",
  "eventWhole.holds": "What it holds",
  "eventWhole.stays": "Bikes and riders that were in the book before the event, and the spares in the car, are not part of it.",
  "eventWhole.export": "Save all of it",
  "eventWhole.file": "The file holds names and weights in full. Keep it as safe as the start list.",
  "eventWhole.erase": "Erase the event",
  "eventWhole.erasing": "Erasing is for good. It takes the riders, what they weigh, their bikes and all that was noted of them off this phone and every server and phone that hears of it. It cannot be undone.",
  "eventWhole.gone": "The event is erased on this phone. The server and every other phone forget it when they meet.",
  "eventWhole.unknown": "This event is not in the book.",
} as const;
