// Waits for a book that may be on its way, so that a first visit does not show an empty form and then something else.

import type { Ctx } from "../../ui/screen.ts";

const patience = 2500; // ms: a phone with no signal is not kept waiting

// firstMeeting ends when the server has been met once, or cannot be, or has taken too long.
export function firstMeeting(sync: Ctx["sync"]): Promise<void> {
  const pending = (): boolean => navigator.onLine && ["never", "sending", "fetching"].includes(sync.state.phase);
  return new Promise((resolve) => {
    if (!pending()) return resolve();
    const timer = setTimeout(end, patience);
    const stop = sync.on(() => {
      if (!pending()) end();
    });
    function end(): void {
      clearTimeout(timer);
      stop();
      resolve();
    }
  });
}
