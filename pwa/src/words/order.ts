// The order of names as the person's locale has it; "Wheel 9" stands before "Wheel 10".

import { locale } from "./wanted.ts";

const collators = new Map<string, Intl.Collator>();

export function byName(a: string, b: string): number {
  const tag = locale().numbers;
  let collator = collators.get(tag);
  if (collator === undefined) collators.set(tag, (collator = new Intl.Collator(tag, { numeric: true })));
  return collator.compare(a, b);
}
