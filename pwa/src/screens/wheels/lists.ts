import type { Ctx } from "../../ui/screen.ts";

export function lists(host: HTMLElement, ctx: Ctx): void {
  void host;
  void ctx;
}
