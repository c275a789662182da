import type { Ctx } from "../../ui/screen.ts";

export function measure(host: HTMLElement, ctx: Ctx): void {
  void host;
  void ctx;
}
