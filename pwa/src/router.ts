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

  start(): void {
    this.#arrive();
  }

  #arrive(): void {
    const [named = "", ...path] = location.hash.replace(/^#/, "").split("/").filter((part) => part !== "");
    const name = renamed[named] ?? named;
    const known = this.#screens.find((screen) => screen.name === name);
    const screen = known ?? this.#screens[0];
    if (known === undefined) history.replaceState(null, "", `#/${screen.name}`);
    const visit = { screen, path: known === undefined ? [] : path, first: this.#current === undefined };
    const here = [screen.name, ...visit.path].join("/");
    if (here === this.#current) return;
    this.#current = here;
    this.#go(visit);
  }
}
