// The words of all other places in German; the keys are those of ../en/later.ts.

import { carWords } from "./car.ts";
import { cautionWords } from "./cautions.ts";
import { checkRowWords } from "./check_rows.ts";
import { checkWords } from "./checks.ts";
import { guideWords } from "./guide.ts";
import { packingWords } from "./packing.ts";

export const later = {
  ...cautionWords,
  ...carWords,
  ...checkWords,
  ...checkRowWords,
  ...packingWords,
  ...guideWords,
} as const;
