// The words of the repair page; part of the one catalogue. The page loads these alone: it must work when little else does.

export const recoverWords = {
  "recover.title": "Repair Rimside",
  "recover.text": "If Rimside does not open, or stays on an old version, this page throws away the app’s stored program files, so that the next visit fetches them anew. You need signal for that visit.",
  "recover.keeps": "What you typed and saved stays: this page does not touch it.",
  "recover.go": "Throw away the program files",
  "recover.busy": "Working…",
  "recover.done": "Done: the stored program files are gone. What you typed and saved is untouched.",
  "recover.failed": "It did not work: {reason} Close all other tabs with Rimside and try again.",
  "recover.back": "Open Rimside",
} as const;
