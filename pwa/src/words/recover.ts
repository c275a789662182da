// w for the repair page, which loads its own words only.

import { recoverWords } from "./en/recover.ts";

export function w(key: keyof typeof recoverWords, params: Readonly<Record<string, string | number>> = {}): string {
  return recoverWords[key].replace(/\{(\w+)\}/g, (whole, name: string) => String(params[name] ?? whole));
}
