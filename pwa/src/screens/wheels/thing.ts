import type { Ctx } from "../../ui/screen.ts";

export function thing(host: HTMLElement, ctx: Ctx, rec: string): void {
  void host;
  void ctx;
  void rec;
}
