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

// stretchMove puts a stretch at another place of the day.
export function stretchMove(draft: PressureDraft, id: string, to: number): Edit {
  const from = draft.ground.findIndex((each) => each.id === id);
  const moved = draft.ground[from];
  if (moved === undefined || to < 0 || to >= draft.ground.length || to === from) return {};
  const rest = draft.ground.filter((each) => each.id !== id);
  return { ground: [...rest.slice(0, to), moved, ...rest.slice(to)] };
}

// groundByEdit asks for lengths in km or in percent of the day; what is typed is turned into the other where it can be.
export function groundByEdit(draft: PressureDraft, by: "km" | "share"): Edit {
  if (by === draft.groundBy) return {};
  const lengths = draft.ground.map(({ km }) => Number(km.trim().replace(",", ".")));
  const whole = lengths.reduce((sum, x) => sum + x, 0);
  if (by === "km" || !(whole > 0) || lengths.some((x) => !(x > 0))) return { groundBy: by };
  return { groundBy: by, ground: draft.ground.map((each, n) => ({ ...each, km: String(Math.round(((lengths[n] ?? 0) / whole) * 100)) })) };
}
