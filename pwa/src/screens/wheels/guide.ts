import type { Ctx } from "../../ui/screen.ts";

export function guide(host: HTMLElement, ctx: Ctx): void {
  void host;
  void ctx;
}
