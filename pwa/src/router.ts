// Which screen the address names: #/checks is the screen "checks". What is unknown leads to the first.

import type { Screen } from "./ui/screen.ts";

export class Router {
  readonly #screens: readonly [Screen, ...Screen[]];
  readonly #go: (screen: Screen, first: boolean) => void;
  #current: Screen | undefined;

  constructor(screens: readonly [Screen, ...Screen[]], go: (screen: Screen, first: boolean) => void) {
    this.#screens = screens;
    this.#go = go;
    addEventListener("hashchange", () => this.#arrive());
  }

  start(): void {
    this.#arrive();
  }

  #arrive(): void {
    const name = location.hash.replace(/^#\//, "").split("/")[0];
    const known = this.#screens.find((screen) => screen.name === name);
    const screen = known ?? this.#screens[0];
    if (known === undefined) history.replaceState(null, "", `#/${screen.name}`);
    if (screen === this.#current) return;
    const first = this.#current === undefined;
    this.#current = screen;
    this.#go(screen, first);
  }
}
