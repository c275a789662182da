// One finding, while it is being written: how bad, what, where on the wheel, what was measured, photos.

import "./checks.css";
import { type Found, type Severity, severities } from "../../book/checks/walk.ts";
import { Choice, chosen } from "../../ui/choice.ts";
import { el } from "../../ui/el.ts";
import { LongEntry } from "../../ui/entry.ts";
import { Field, typed } from "../../ui/field.ts";
import { actName, define, listen, Part, setHidden, setText } from "../../ui/part.ts";
import { w } from "../../words/index.ts";
import { Photos, photoAway, photoTaken } from "./photos.ts";
import { placed, WheelPlace } from "./place.ts";

export interface FoundView {
  readonly ask: string; // its id
  readonly title: string;
  readonly found: Found;
  readonly wheel: boolean; // has a place on a wheel
  readonly sized: boolean; // has a size to measure that its row does not ask for
  readonly photoFault: string;
  readonly picture: (sha256: string) => Promise<Blob | undefined>;
}

export interface FoundChange {
  readonly ask: string;
  readonly change: Partial<Found>;
}

export const foundChanged = actName<FoundChange>("rs-found-changed");
export const foundDone = actName<string>("rs-found-done");
export const foundAway = actName<string>("rs-found-away");
export const foundPhoto = actName<{ readonly ask: string; readonly file: File }>("rs-found-photo");

export class FoundForm extends Part<FoundView> {
  readonly #title = el("h3");
  readonly #severity = new Choice();
  readonly #words = new LongEntry();
  readonly #mm = new Field();
  readonly #side = new Choice();
  readonly #place = new WheelPlace();
  readonly #where = el("div", { class: "stack" }, this.#side, this.#place);
  readonly #photos = new Photos();
  readonly #fault = el("p", { class: "notice care", role: "alert" });

  protected override build(): void {
    this.append(el("div", { class: "found stack" }, this.#title, this.#severity, this.#words, this.#where, el("div", { class: "fields" }, this.#mm), this.#photos, this.#fault,
      el("div", { class: "row" },
        el("button", { type: "button", class: "button", on: { click: () => this.act(foundDone, this.#ask()) } }, w("checks.foundDone")),
        el("button", { type: "button", class: "button quiet", on: { click: () => this.act(foundAway, this.#ask()) } }, w("checks.foundAway")))));
    const change = (what: Partial<Found>): void => this.act(foundChanged, { ask: this.#ask(), change: what });
    listen(this, typed, ({ id, text }, event) => {
      event.stopPropagation();
      change(id.endsWith(".mm") ? { mm: text } : { words: text });
    });
    listen(this, chosen, ({ name, value }, event) => {
      event.stopPropagation();
      change(name.endsWith(".side") ? { side: value as Found["side"] } : { severity: value as Severity });
    });
    listen(this, placed, (clock) => change({ clock }));
    listen(this, photoTaken, (file) => this.act(foundPhoto, { ask: this.#ask(), file }));
    listen(this, photoAway, (rec) => change({ photos: (this.view?.found.photos ?? []).filter((each) => each.rec !== rec) }));
  }

  #ask(): string {
    return this.view?.ask ?? "";
  }

  protected override show({ ask, title, found, wheel, sized, photoFault, picture }: FoundView): void {
    setText(this.#title, title);
    this.#severity.view = { name: `${ask}.severity`, legend: w("checks.severity"), options: severities.map((value) => ({ value, label: w(`checks.bad.${value}`) })), value: found.severity ?? "" };
    this.#words.view = { id: `${ask}.words`, label: w("checks.words"), text: found.words, fault: "" };
    this.#mm.view = { id: `${ask}.mm`, label: w("checks.mm"), spoken: w("checks.mm"), text: found.mm, unit: w("unit.mm"), range: null, fault: "", signed: false, step: 0 };
    setHidden(this.#mm, !sized);
    setHidden(this.#where, !wheel);
    this.#side.view = { name: `${ask}.side`, legend: w("checks.side"), options: (["left", "right"] as const).map((value) => ({ value, label: w(`checks.sideOf.${value}`) })), value: found.side };
    this.#place.view = { name: ask, clock: found.clock };
    this.#photos.view = { photos: found.photos, picture, away: true };
    setText(this.#fault, photoFault);
    setHidden(this.#fault, photoFault === "");
  }
}

define("rs-found-form", FoundForm);
