// What a press on the Pressure screen does to the draft.

import { plain } from "../../words/number.ts";
import { parse } from "../value/quantity.ts";
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
  return { ground: draft.ground.map((each) => (each.id === id ? { ...("gd0" in change || "kind" in change ? unmeasured(each) : each), ...change } : each)) };
}

// unmeasured is a stretch without the interval that was measured: it belongs to the roughness that was.
function unmeasured({ low: _, high: __, ...stretch }: StretchDraft): StretchDraft {
  return stretch;
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

// groundByEdit shows lengths in km or in percent of the day: two views of the same stretches, so no kilometre changes.
export function groundByEdit(draft: PressureDraft, by: "km" | "share"): Edit {
  if (by === draft.groundBy) return {};
  return { groundBy: by, ground: draft.ground.map(({ part: _, ...each }) => each) };
}

const unsaidKm = 100; // a day whose length nobody said

// partEdit takes a share of the day: the day stays as long, the other stretches share what is left as they did before.
export function partEdit(draft: PressureDraft, id: string, text: string): Edit {
  const share = partOf(text);
  const keep = (km: readonly number[]): Edit => ({ ground: draft.ground.map(({ part: _, ...each }, n) => ({ ...each, km: written(km[n] ?? 0), ...(each.id === id && { part: text }) })) });
  if (share === undefined) return { ground: draft.ground.map((each) => (each.id === id ? { ...each, part: text } : each)) };
  const lengths = kilometres(draft.ground);
  const whole = lengths.reduce((sum, x) => sum + x, 0) || unsaidKm;
  const rest = lengths.reduce((sum, x, n) => (draft.ground[n]?.id === id ? sum : sum + x), 0);
  const left = whole * (1 - share);
  return keep(lengths.map((km, n) => (draft.ground[n]?.id === id ? whole * share : rest > 0 ? (left * km) / rest : left / (lengths.length - 1))));
}

// partOf reads a share of several: more than nothing, less than all.
export function partOf(text: string): number | undefined {
  const parsed = parse(text, "plain", "%");
  const share = "si" in parsed ? parsed.si / 100 : 0;
  return share > 0 && share < 1 ? share : undefined;
}

// kilometres are the stretches' lengths; one that cannot be read counts as nothing.
export function kilometres(ground: readonly StretchDraft[]): readonly number[] {
  return ground.map(({ km }) => {
    const parsed = parse(km, "distance", "km");
    return "si" in parsed && parsed.si > 0 ? parsed.si / 1000 : 0;
  });
}

// partTexts are the shares as they are shown, which add up to 100: what rounding leaves over goes to the longest.
export function partTexts(ground: readonly StretchDraft[]): readonly string[] {
  const lengths = kilometres(ground);
  const whole = lengths.reduce((sum, x) => sum + x, 0);
  if (!(whole > 0)) return ground.map(({ part }) => part ?? "");
  const tenths = lengths.map((km) => Math.round((km / whole) * 1000));
  const longest = lengths.indexOf(Math.max(...lengths));
  tenths[longest] = (tenths[longest] ?? 0) + 1000 - tenths.reduce((sum, x) => sum + x, 0);
  return ground.map(({ part }, n) => part ?? plain((tenths[n] ?? 0) / 10));
}

function written(km: number): string {
  return plain(Math.round(km * 1000) / 1000);
}

const readings = ["now.front", "now.rear"] as const;

// placeEdit moves to the other place. A reading belongs to the place where it was taken: it is put aside, and comes back there.
export function placeEdit(draft: PressureDraft, here: PressureDraft["here"], now: number): Edit {
  if (draft.here === here) return { hereAt: now };
  const texts: Record<string, string> = { ...draft.texts };
  for (const id of readings) {
    texts[`aside.${draft.here}.${id}`] = texts[id] ?? "";
    texts[id] = texts[`aside.${here}.${id}`] ?? "";
  }
  return { here, hereAt: now, texts };
}
