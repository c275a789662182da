// When to meet the server: at the start, after each save, when the app comes into view, when the network comes back, and
// now and then while somebody looks. A server that does not let this phone in is not asked after each save, nor now and then.

import type { BookLog } from "../book_log.ts";
import { isOutside, type Sync } from "./sync.ts";

// Page is what the triggers need to know of the page.
export interface Page {
  readonly visible: () => boolean;
  readonly on: (event: "visible" | "online" | "revived", hear: () => void) => void;
  readonly every: (ms: number, work: () => void) => void;
}

const rhythm = 30_000; // ms

export function startSync(sync: Sync, log: BookLog, page: Page = thisPage): void {
  const round = (): void => void sync.round();
  const unlessOutside = (): void => {
    if (!isOutside(sync.state)) round();
  };
  log.onSaved(unlessOutside);
  page.on("visible", round);
  page.on("online", round);
  page.on("revived", () => {
    log.refresh();
    round();
  });
  page.every(rhythm, () => {
    if (page.visible()) unlessOutside();
  });
  round();
}

const thisPage: Page = {
  visible: () => document.visibilityState === "visible",
  on(event, hear) {
    if (event === "online") addEventListener("online", hear);
    else if (event === "visible") document.addEventListener("visibilitychange", () => thisPage.visible() && hear());
    // A page kept aside by the browser was deaf meanwhile.
    else addEventListener("pageshow", (shown) => shown.persisted && hear());
  },
  every: (ms, work) => void setInterval(work, ms),
};
