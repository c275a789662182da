import type { Ctx } from "../../ui/screen.ts";

export function newThing(host: HTMLElement, ctx: Ctx): void {
  void host;
  void ctx;
}
