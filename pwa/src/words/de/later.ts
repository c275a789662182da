// Die Wörter aller anderen Orte. Die Schlüssel stehen in ../en/later.ts.

export const later = {} as const;
