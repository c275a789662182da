// The words of all other places in German; the keys are those of ../en/later.ts.

import { cautionWords } from "./cautions.ts";
import { checkRowWords } from "./check_rows.ts";
import { checkWords } from "./checks.ts";

export const later = {
  ...cautionWords,
  ...checkWords,
  ...checkRowWords,
} as const;
