// A screen whose script and words come when it is first wanted; after the start all come, so that no place has to wait later.

import { Later } from "./ui/later.ts";
import type { Screen } from "./ui/screen.ts";

export interface LazyScreen extends Screen {
  // load fetches the script. It rejects when that is not to be had.
  load(): Promise<void>;
}

export function lazy(name: string, title: () => string, fetch: () => Promise<{ readonly screen: Screen }>): LazyScreen {
  const script = new Later(fetch);
  return {
    name, title,
    load: async () => void (await script.load()),
    open(host, ctx) {
      if (script.here !== undefined) return script.here.screen.open(host, ctx);
      void script.load().then(({ screen }) => {
        if (!ctx.closed.aborted) screen.open(host, ctx);
      }).catch((error: unknown) => ctx.trouble(error));
    },
    close: () => script.here?.screen.close?.(),
  };
}
