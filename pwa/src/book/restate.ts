// Another pressure unit: what was typed is written anew in it, so that no number changes its meaning.

import type { PressureDraft } from "./draft.ts";
import { allFields } from "./fields.ts";
import { parse, type PressureUnit, typedKpa } from "./quantity.ts";

// restated rewrites the pressures among the typed texts. What cannot be read stays as typed.
export function restated(draft: PressureDraft, to: PressureUnit): PressureDraft {
  const { texts, unit: from } = draft;
  if (from === to) return draft;
  const out: Record<string, string> = { ...texts };
  for (const { id, dimension } of allFields) {
    const text = texts[id];
    if (dimension !== "pressure" || text === undefined) continue;
    const parsed = parse(text, dimension, from);
    if ("si" in parsed) out[id] = typedKpa(parsed.si / 1000, to);
  }
  return { ...draft, texts: out, unit: to };
}
