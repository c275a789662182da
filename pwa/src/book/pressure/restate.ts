// Another pressure unit: what was typed is written anew in it, so that no number changes its meaning.

import { bonds, idIn } from "../bind/bonds.ts";
import type { Based, PressureDraft } from "./draft.ts";
import { allFields } from "./fields.ts";
import { parse, type PressureUnit, typedKpa } from "../value/quantity.ts";

// restated rewrites the pressures among the typed texts. What cannot be read stays as typed.
export function restated(draft: PressureDraft, to: PressureUnit): PressureDraft {
  const { texts, unit: from } = draft;
  if (from === to) return draft;
  const out: Record<string, string> = { ...texts };
  const based: Record<string, Based> = { ...draft.based };
  for (const { id, dimension } of allFields) {
    const text = texts[id];
    if (dimension !== "pressure" || text === undefined) continue;
    const parsed = parse(text, dimension, from);
    if (!("si" in parsed) || /[a-z]/i.test(text)) continue; // a unit that was typed stays
    out[id] = typedKpa(parsed.si / 1000, to);
    for (const bond of bonds.filter((each) => each.id === id || idIn(each, draft) === id)) {
      // A text that nobody edited still stands for its record's value.
      const before = based[bond.key];
      if (before?.text === text) based[bond.key] = { ...before, text: out[id] ?? "" };
    }
  }
  return { ...draft, texts: out, unit: to, based };
}
