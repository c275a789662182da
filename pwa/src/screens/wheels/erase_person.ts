import type { Ctx } from "../../ui/screen.ts";

export function erasePerson(host: HTMLElement, ctx: Ctx): void {
  void host;
  void ctx;
}
