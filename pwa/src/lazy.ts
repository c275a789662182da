// A screen whose script and words come when it is first wanted; after the start all come, so that no place has to wait later.

import type { Screen } from "./ui/screen.ts";
import { learn } from "./words/locale.ts";

export interface LazyScreen extends Screen {
  // load fetches the script. It rejects when that is not to be had.
  load(): Promise<void>;
}

export function lazy(name: string, title: () => string, fetch: () => Promise<{ readonly screen: Screen }>): LazyScreen {
  let loaded: Screen | undefined;
  const load = async (): Promise<void> => {
    const [script] = await Promise.all([fetch(), learn("later")]);
    loaded = script.screen;
  };
  return {
    name, title, load,
    open(host, ctx) {
      if (loaded !== undefined) return loaded.open(host, ctx);
      void load().then(() => {
        if (!ctx.closed.aborted) loaded?.open(host, ctx);
      }).catch((error: unknown) => ctx.trouble(error));
    },
    close: () => loaded?.close?.(),
  };
}
