// The words of the first screen in German; the keys are those of ../en/first.ts.

import { recordWords } from "./records.ts";

export const first = {
  ...recordWords,
} as const;
