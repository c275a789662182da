// The pages below Settings lead back there.

import { openPage as open, type Way } from "../../ui/page.ts";
import type { Ctx } from "../../ui/screen.ts";
import { w } from "../../words/index.ts";

export function openPage(ctx: Ctx, title: string, ...ways: readonly Way[]): void {
  open(ctx, title, { href: "#/settings", words: w("place.settings") }, ...ways);
}

export const historyOf = (rec: string): string => `#/settings/history/${rec}`;
