// The box for a gauge's reading on each card: what was typed, or else what is expected and why.

import { w } from "../../words/index.ts";
import { type Side } from "./answer.ts";
import type { PressureDraft } from "./draft.ts";
import type { BothExpected } from "./expected.ts";
import { expectedWords, isWarm } from "./expected_view.ts";
import { fieldView } from "./field_view.ts";
import { dayFields } from "./fields.ts";
import type { Reading } from "./request.ts";
import type { Tables } from "./tables.ts";
import { type PressureUnit, showKpa } from "../value/quantity.ts";

export interface OneReading {
  readonly side: Side;
  readonly text: string;
  readonly shown: string;
  readonly expected: string;
  readonly fault: string;
  readonly warm: string;
  readonly why: string;
}

interface Facts {
  readonly draft: PressureDraft;
  readonly reading: Reading;
  readonly expected: BothExpected;
  readonly unit: PressureUnit;
  readonly now: number;
  readonly tables: Tables;
}

export function readingViews(facts: Facts): Readonly<Record<Side, OneReading>> {
  return { front: one("front", facts), rear: one("rear", facts) };
}

function one(side: Side, { draft, reading, expected, unit, now, tables }: Facts): OneReading {
  const id = `now.${side}`;
  const text = draft.texts[id] ?? "";
  const spec = dayFields.find((each) => each.id === id);
  const fault = spec === undefined ? "" : fieldView(spec, id, text, reading.faults.get(id), unit, tables).fault;
  const each = expected[side];
  return {
    side, text, shown: text.trim(), fault, expected: each === undefined ? "" : showKpa(each.gauge_kpa, unit),
    warm: isWarm(reading.values.get(id), each) ? w("expect.sun") : "", why: each === undefined ? "" : expectedWords(side, each, unit, now),
  };
}
