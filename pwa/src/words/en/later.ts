// The words of every place but the first: they come with the script of such a place.

import { carWords } from "./car.ts";
import { cautionWords } from "./cautions.ts";
import { checkRowWords } from "./check_rows.ts";
import { checkWords } from "./checks.ts";
import { eraseWords } from "./erase.ts";
import { eventWholeWords } from "./event_whole.ts";
import { fitWords } from "./fit.ts";
import { courseWords } from "./course.ts";
import { groundMeasureWords } from "./ground_measure.ts";
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
import { spareBikeWords } from "./spare_bikes.ts";
import { spokesWords } from "./spokes.ts";
import { tagWords } from "./tags.ts";
import { trialWords } from "./trial.ts";
import { wheelsWords } from "./wheels.ts";
import { whyWords } from "./why.ts";

export const later = {
  ...printWords,
  ...whyWords,
  ...settingsWords,
  ...cautionWords,
  ...historyWords,
  ...sourceWords,
  ...wheelsWords,
  ...spokesWords,
  ...trialWords,
  ...carWords,
  ...morningWords,
  ...tagWords,
  ...spareBikeWords,
  ...eventWholeWords,
  ...checkWords,
  ...checkRowWords,
  ...packingWords,
  ...measureWords,
  ...guideWords,
  ...courseWords,
  ...groundMeasureWords,
  ...fitWords,
  ...listWords,
  ...eraseWords,
  ...phoneWords,
} as const;
