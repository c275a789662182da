// What of Pressure comes when it is first wanted: its scripts, and their loading after the start.

import { Later } from "../../ui/later.ts";

export const printScript = new Later(() => import("./print/index.ts"));
export const whyScript = new Later(() => import("./why/whys.ts"));

// loadLater loads all of them. It rejects when one is not to be had; the others come all the same.
export async function loadLater(): Promise<void> {
  await Promise.all([printScript.load(), whyScript.load()]);
}
