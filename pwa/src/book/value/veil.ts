// What a person weighs, told on other people's phones.

import { w } from "../../words/index.ts";
import type { PressureDraft } from "../pressure/draft.ts";
import { weightWords } from "./value_words.ts";

// veiledWords say roughly what is recorded where the number is not for this phone; "" where it is shown.
export function veiledWords(draft: PressureDraft): string {
  const hidden = draft.based["person/mass_kg"];
  return hidden?.veiled === true && typeof hidden.value === "number" ? w("hint.veiled", { weight: weightWords(hidden.value) }) : "";
}
