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
import { printWords } from "./print.ts";
import { sourceWords } from "./sources.ts";
import { spokesWords } from "./spokes.ts";
import { trialWords } from "./trial.ts";
import { wheelsWords } from "./wheels.ts";
import { whyWords } from "./why.ts";
import { courseWords } from "./course.ts";
import { eventWholeWords } from "./event_whole.ts";
import { groundMeasureWords } from "./ground_measure.ts";
import { spareBikeWords } from "./spare_bikes.ts";
import { tagWords } from "./tags.ts";

export const later = {
  ...printWords,
  ...whyWords,
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
  ...courseWords,
  ...eventWholeWords,
  ...groundMeasureWords,
  ...spareBikeWords,
  ...tagWords,
} as const;
