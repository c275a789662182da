// Another pressure unit: what was typed is written anew in it, so that no number changes its meaning.

import { allFields } from "./fields.ts";
import { parse, type PressureUnit, typedKpa } from "./quantity.ts";

// restated rewrites the pressures among the typed texts. What cannot be read stays as typed.
export function restated(texts: Readonly<Record<string, string>>, from: PressureUnit, to: PressureUnit): Readonly<Record<string, string>> {
  const out = { ...texts };
  for (const { id, dimension } of allFields) {
    const text = texts[id];
    if (dimension !== "pressure" || text === undefined) continue;
    const parsed = parse(text, dimension, from);
    if ("si" in parsed) out[id] = typedKpa(parsed.si / 1000, to);
  }
  return out;
}
