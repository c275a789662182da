// What a press on the Pressure screen does to the draft.

import type { PressureDraft, StretchDraft } from "./draft.ts";

type Edit = Partial<PressureDraft>;

// rearEdit says whether the rear wheel is asked apart. A rear of its own starts as a copy of the front, so that only what
// differs is typed; what was once typed for it comes back.
export function rearEdit(draft: PressureDraft, same: boolean): Edit {
  const copy = (of: Readonly<Record<string, string>>): Record<string, string> => {
    const out = { ...of };
    for (const [id, value] of Object.entries(of)) {
      const rear = id.replace(/^front\./, "rear.");
      if (rear !== id && !(rear in of)) out[rear] = value;
    }
    return out;
  };
  return same ? { rearSame: true } : { rearSame: false, texts: copy(draft.texts), picks: copy(draft.picks) };
}

export function stretchEdit(draft: PressureDraft, id: string, change: Partial<StretchDraft>): Edit {
  return { ground: draft.ground.map((each) => (each.id === id ? { ...each, ...change } : each)) };
}

// stretchAddition adds a stretch of the kind of the last.
export function stretchAddition(draft: PressureDraft, id: string): Edit {
  const last = draft.ground.at(-1);
  return { ground: [...draft.ground, { id, kind: last?.kind ?? "patched", km: "", kmh: "", gd0: "", washboard: false }] };
}

// stretchRemoval takes a stretch away and tells which it was; the last one stays.
export function stretchRemoval(draft: PressureDraft, id: string): { readonly edit: Edit; readonly n: number } | undefined {
  const n = draft.ground.findIndex((each) => each.id === id) + 1;
  if (n === 0 || draft.ground.length === 1) return undefined;
  return { edit: { ground: draft.ground.filter((each) => each.id !== id) }, n };
}
