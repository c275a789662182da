// How old a measure is, and when it is due again.

export const measureAgeWords = {
  "measureAge.today": "today",
  "measureAge.yesterday": "yesterday",
  "measureAge.measured": "measured {age}",
  "measureAge.due": "{age}. {due}",
  "measureDue.grown": "Measure again: it was new then, and tyres grow in their first week (our choice, common practice).",
  "measureDue.moved": "Measure again: that was before it was fitted here.",
} as const;
