// Takes the altitude from the phone, where the phone knows it and its owner lets the page ask.

import { el } from "../../../ui/el.ts";
import { actName, define, Part, setText } from "../../../ui/part.ts";
import { w } from "../../../words/index.ts";

export const altitudeFound = actName<{ readonly id: string; readonly metres: number }>("rs-altitude-found");

const patience = 20_000; // ms: a cold satellite receiver takes its time

// Altitude fills the field with this id.
export class Altitude extends Part<{ readonly id: string }> {
  readonly #said = el("p", { class: "small", role: "status" });
  readonly #ask = el("button", { type: "button", class: "button", on: { click: () => this.#look() } }, w("altitude.ask"));

  protected override build(): void {
    this.append(this.#ask, this.#said);
  }

  #look(): void {
    const { geolocation } = navigator as { readonly geolocation?: Geolocation }; // absent over plain http
    if (geolocation === undefined) return this.#say(w("altitude.none"));
    this.#ask.disabled = true;
    this.#say(w("altitude.asking"));
    geolocation.getCurrentPosition(
      ({ coords }) => this.#take(coords.altitude), ({ code }) => this.#say(code === 1 ? w("altitude.refused") : w("altitude.none")),
      { enableHighAccuracy: true, timeout: patience, maximumAge: 0 });
  }

  #take(metres: number | null): void {
    if (metres === null) return this.#say(w("altitude.none"));
    const whole = Math.round(metres / 10) * 10; // a phone is rarely right within ten metres
    this.#say(w("altitude.found", { m: whole }));
    this.act(altitudeFound, { id: this.view?.id ?? "", metres: whole });
  }

  #say(words: string): void {
    this.#ask.disabled = words === w("altitude.asking");
    setText(this.#said, words);
  }
}

define("rs-altitude", Altitude);
