// The words of all other places in German; the keys are those of ../en/later.ts.

import { carWords } from "./car.ts";
import { cautionWords } from "./cautions.ts";
import { checkRowWords } from "./check_rows.ts";
import { checkWords } from "./checks.ts";
import { eraseWords } from "./erase.ts";
import { guideWords } from "./guide.ts";
import { historyWords } from "./history.ts";
import { listWords } from "./lists.ts";
import { measureWords } from "./measure.ts";
import { packingWords } from "./packing.ts";
import { phoneWords } from "./phones.ts";
import { settingsWords } from "./settings.ts";
import { sourceWords } from "./sources.ts";
import { wheelsWords } from "./wheels.ts";

export const later = {
  ...settingsWords,
  ...cautionWords,
  ...historyWords,
  ...sourceWords,
  ...wheelsWords,
  ...carWords,
  ...checkWords,
  ...checkRowWords,
  ...packingWords,
  ...measureWords,
  ...guideWords,
  ...listWords,
  ...eraseWords,
  ...phoneWords,
} as const;
