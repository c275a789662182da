// One station of the walk-around fills the screen: what can hurt first, the rest on demand, and one button when all is well.

import type { Ask, Found, Severity, Station } from "../../book/checks/walk.ts";
import { el } from "../../ui/el.ts";
import { keyed } from "../../ui/keyed.ts";
import { actName, define, Part, setAttr, setHidden, setText } from "../../ui/part.ts";
import { w } from "../../words/index.ts";
import type { FoundView } from "./found_form.ts";
import { AskPart } from "./ask.ts";

export interface AskView {
  readonly ask: Ask;
  readonly found: Found | undefined;
  readonly bad: Severity | undefined; // of finding and value
  readonly skipped: boolean;
  readonly value: string; // what was measured, as typed
  readonly verdict: string; // what the value comes to, in words
  readonly fault: string; // why the value cannot be read
  readonly before: string; // what was written down earlier
  readonly mark: string; // where a rotor's mark is noted that nobody has read; "" where there is none to note
  readonly form: FoundView | undefined; // while it is being written
}

export interface StationView {
  readonly station: Station;
  readonly n: number;
  readonly of: number;
  readonly asks: readonly AskView[]; // those that are asked
  readonly rest: number; // rows that nobody unfolded
  readonly back: boolean; // there is a station before
}

export const stationOk = actName<Station>("rs-station-ok");
export const stationSkip = actName<Station>("rs-station-skip");
export const stationBack = actName<Station>("rs-station-back");
export const stationRest = actName<Station>("rs-station-rest");

const settle = 350; // ms: the second tap of a double tap meets no button (our choice)

export class StationPart extends Part<StationView> {
  readonly #title = el("h2", { tabindex: -1 });
  readonly #asks = el("ul", { class: "unmarked stack" });
  readonly #rest = el("button", { type: "button", class: "button", on: { click: () => this.#say(stationRest) } });
  readonly #ok = el("button", { type: "button", class: "button primary big", on: { click: () => this.#say(stationOk) } }, w("checks.ok"));
  readonly #skip = el("button", { type: "button", class: "button big", on: { click: () => this.#say(stationSkip) } }, w("checks.skip"));
  readonly #back = el("button", { type: "button", class: "button quiet flush", on: { click: () => this.#say(stationBack) } }, w("checks.back"));
  #settled: ReturnType<typeof setTimeout> | undefined;
  #shown: Station | undefined;

  protected override build(): void {
    this.append(el("section", { class: "card stack" }, this.#title, this.#asks, el("p", {}, this.#rest), el("div", { class: "okay" }, this.#ok, this.#skip), el("p", {}, this.#back)));
  }

  #say(name: typeof stationOk): void {
    if (this.view !== undefined) this.act(name, this.view.station);
  }

  protected override show({ station, n, of, asks, rest, back }: StationView): void {
    const words = w(`checks.station.${station}`);
    if (this.#shown !== station) this.#unsettle(station);
    setText(this.#title, w("checks.at", { station: words, n, of }));
    keyed(this.#asks, asks, ({ ask }) => ask.id, () => new AskPart(), (part, each) => (part.view = each));
    setHidden(this.#rest, rest === 0);
    setText(this.#rest, w("checks.rest", { n: rest }));
    setAttr(this.#rest, "aria-label", w("checks.restOf", { station: words, n: rest }));
    setHidden(this.#back, !back);
    setAttr(this.#ok, "aria-label", w("checks.okOf", { station: words }));
    setAttr(this.#skip, "aria-label", w("checks.skipOf", { station: words }));
  }

  // unsettle keeps the buttons shut for a moment when another station comes under the finger.
  #unsettle(station: Station): void {
    const first = this.#shown === undefined;
    this.#shown = station;
    if (first) return;
    const shut = (yes: boolean): void => {
      for (const button of [this.#ok, this.#skip, this.#rest, this.#back]) button.disabled = yes;
    };
    clearTimeout(this.#settled);
    shut(true);
    this.#settled = setTimeout(() => shut(false), settle);
  }

  disconnectedCallback(): void {
    clearTimeout(this.#settled);
  }

  // toTitle takes a person to the station: what is next is at the top of the screen.
  toTitle(): void {
    this.#title.focus({ preventScroll: true });
    this.scrollIntoView({ block: "start" });
  }
}

define("rs-station", StationPart);
