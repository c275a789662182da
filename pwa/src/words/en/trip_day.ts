// When a trip leaves, beside its name.

export const tripDayWords = {
  "trip.noDay": "No day is set.",
  "trip.leaves": "Leaves in {n} days",
  "trip.tomorrow": "Leaves tomorrow",
  "trip.today": "Leaves today",
  "trip.away": "Away",
  "trip.over": "Over",
} as const;
