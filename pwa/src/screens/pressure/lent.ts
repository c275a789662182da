// What the desk lends to those who work beside the answer.

import type { PressureAnswer } from "../../book/pressure/answer.ts";
import type { PressureDraft } from "../../book/pressure/draft.ts";
import type { Learned } from "../../book/pressure/learned.ts";
import type { PressureUnit } from "../../book/value/quantity.ts";
import type { Reading } from "../../book/pressure/request.ts";
import type { Tables } from "../../book/pressure/tables.ts";
import type { RecordState } from "../../log/op/merge.ts";

export interface Lent {
  readonly draft: PressureDraft;
  readonly reading: Reading;
  readonly answer: PressureAnswer | undefined;
  readonly learned: Learned | undefined;
  readonly unit: PressureUnit;
  readonly tables: Tables;
  readonly sets: readonly RecordState[];
  readonly notes: readonly RecordState[];
  readonly bike: RecordState | undefined; // the open one
}

export interface Lender {
  readonly lend: () => Lent;
  readonly settle: () => Promise<void>; // writes what was edited
  readonly renew: () => Promise<PressureAnswer | undefined>; // looks at the book again, and asks
  readonly show: () => void;
}
