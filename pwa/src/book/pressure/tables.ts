// The calculation's own field table, as it describes itself: the bounds that the form says before they are broken.

import { isObject } from "./answer.ts";

export interface Bound {
  readonly min: number;
  readonly max: number;
}

export interface Tables {
  readonly bounds: ReadonlyMap<string, Bound>; // by dotted path, in the request's unit
  readonly usualInner: readonly { readonly up_to: number; readonly value: number }[]; // measuring rims by printed width
}

// readTables takes the pressure calculation out of the description of all.
export function readTables(described: readonly unknown[]): Tables {
  const bounds = new Map<string, Bound>();
  let usualInner: Tables["usualInner"] = [];
  const pressure = described.filter(isObject).find((each) => each["name"] === "pressure");
  const fields: unknown = pressure?.["fields"];
  for (const field of Array.isArray(fields) ? fields.filter(isObject) : []) {
    const { path, min, max, usual } = field;
    if (typeof path !== "string") continue;
    if (typeof min === "number" && typeof max === "number") bounds.set(path, { min, max });
    if (path === "front.rim.inner_mm" && Array.isArray(usual)) usualInner = usual as Tables["usualInner"];
  }
  return { bounds, usualInner };
}

// usualInnerFor is the inner width of the rim on which a tyre of this printed width is measured.
export function usualInnerFor(label: number, tables: Tables): number | undefined {
  return tables.usualInner.find((row) => Math.round(label) <= row.up_to)?.value;
}
