// What the form knows of the pressure calculation's fields: the bounds that it says before they are broken.

import type { FieldRow } from "../../contract/contract.ts";
import { pressureFields } from "../../contract/pressure_fields.ts";

export interface Bound {
  readonly min: number;
  readonly max: number;
}

export interface Tables {
  readonly bounds: ReadonlyMap<string, Bound>; // by dotted path, in the request's unit
  readonly usualInner: readonly { readonly up_to: number; readonly value: number }[]; // measuring rims by printed width
}

export const tables: Tables = { bounds: boundsOf(pressureFields), usualInner: pressureFields["front.rim.inner_mm"].usual };

function boundsOf(fields: Readonly<Record<string, FieldRow>>): Tables["bounds"] {
  return new Map(Object.entries(fields).flatMap(([path, { min, max }]) => (min === undefined || max === undefined ? [] : [[path, { min, max }]])));
}

// usualInnerFor is the inner width of the rim on which a tyre of this printed width is measured.
export function usualInnerFor(label: number, { usualInner }: Tables): number | undefined {
  return usualInner.find((row) => Math.round(label) <= row.up_to)?.value;
}
