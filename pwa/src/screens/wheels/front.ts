import type { Ctx } from "../../ui/screen.ts";

export function front(host: HTMLElement, ctx: Ctx): void {
  void host;
  void ctx;
}
