// Which screen the address names, and which page of it: #/settings/history/ab12 is the page "history", "ab12" of the
// screen "settings". An unknown screen leads to the first; what a path means is the screen's own affair.

import type { Screen, Visit } from "./ui/screen.ts";

// renamed are places that had another name: an old link still leads there.
const renamed: Readonly<Record<string, string>> = { support: "car" };

export class Router {
  readonly #screens: readonly [Screen, ...Screen[]];
  readonly #go: (visit: Visit) => void;
  #current: string | undefined;

  constructor(screens: readonly [Screen, ...Screen[]], go: (visit: Visit) => void) {
    this.#screens = screens;
    this.#go = go;
    addEventListener("hashchange", () => this.#arrive()); // the browser's back button comes this way too
  }

  // start opens the first screen whole: a frame that is filled later would jump.
  async start(): Promise<void> {
    const { screen, path } = this.#named();
    await screen.load?.(path).catch(() => undefined); // opening tries again, and tells
    this.#arrive();
  }

  #named(): { readonly screen: Screen; readonly path: readonly string[]; readonly known: boolean } {
    const [named = "", ...path] = location.hash.replace(/^#/, "").split("/").filter((part) => part !== "");
    const name = renamed[named] ?? named;
    const screen = this.#screens.find((each) => each.name === name);
    return screen === undefined ? { screen: this.#screens[0], path: [], known: false } : { screen, path, known: true };
  }

  #arrive(): void {
    const { screen, path, known } = this.#named();
    if (!known) history.replaceState(null, "", `#/${screen.name}`);
    const visit = { screen, path, first: this.#current === undefined };
    const here = [screen.name, ...path].join("/");
    if (here === this.#current) return;
    this.#current = here;
    this.#go(visit);
  }
}
