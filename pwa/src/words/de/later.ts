// The words of all other places in German; the keys are those of ../en/later.ts.

import { carWords } from "./car.ts";
import { cautionWords } from "./cautions.ts";
import { checkRowWords } from "./check_rows.ts";
import { checkWords } from "./checks.ts";
import { eraseWords } from "./erase.ts";
import { fitWords } from "./fit.ts";
import { guideWords } from "./guide.ts";
import { historyWords } from "./history.ts";
import { listWords } from "./lists.ts";
import { measureWords } from "./measure.ts";
import { morningWords } from "./morning.ts";
import { packingWords } from "./packing.ts";
import { phoneWords } from "./phones.ts";
import { settingsWords } from "./settings.ts";
import { sourceWords } from "./sources.ts";
import { spokesWords } from "./spokes.ts";
import { trialWords } from "./trial.ts";
import { wheelsWords } from "./wheels.ts";

export const later = {
  ...settingsWords,
  ...cautionWords,
  ...historyWords,
  ...sourceWords,
  ...wheelsWords,
  ...carWords,
  ...morningWords,
  ...checkWords,
  ...checkRowWords,
  ...packingWords,
  ...measureWords,
  ...guideWords,
  ...fitWords,
  ...spokesWords,
  ...trialWords,
  ...listWords,
  ...eraseWords,
  ...phoneWords,
} as const;
