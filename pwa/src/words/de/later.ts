// The words of all other places in German; the keys are those of ../en/later.ts.

import { carWords } from "./car.ts";
import { cautionWords } from "./cautions.ts";
import { checkRowWords } from "./check_rows.ts";
import { checkWords } from "./checks.ts";
import { guideWords } from "./guide.ts";
import { morningWords } from "./morning.ts";
import { packingWords } from "./packing.ts";
import { fitWords } from "./fit.ts";
import { spokesWords } from "./spokes.ts";
import { trialWords } from "./trial.ts";

export const later = {
  ...cautionWords,
  ...carWords,
  ...checkWords,
  ...checkRowWords,
  ...morningWords,
  ...packingWords,
  ...guideWords,
  ...fitWords,
  ...spokesWords,
  ...trialWords,
} as const;
