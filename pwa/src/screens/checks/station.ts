// One station of the walk-around: what to look at, one button when all is well, and a form for what is not.

import type { Ask, Found, Station } from "../../book/checks/walk.ts";
import { el } from "../../ui/el.ts";
import { keyed } from "../../ui/keyed.ts";
import { actName, define, Part, setAttr, setHidden, setText } from "../../ui/part.ts";
import { w } from "../../words/index.ts";
import { FoundForm, type FoundView } from "./found_form.ts";

export interface AskView {
  readonly ask: Ask;
  readonly found: Found | undefined;
  readonly form: FoundView | undefined; // while it is being written
}

export interface StationView {
  readonly station: Station;
  readonly n: number; // of six
  readonly asks: readonly AskView[];
  readonly done: boolean;
  readonly skipped: boolean; // something was not looked at
}

export const stationOk = actName<Station>("rs-station-ok");
export const stationSkip = actName<Station>("rs-station-skip");
export const stationAgain = actName<Station>("rs-station-again");
export const askFound = actName<string>("rs-ask-found");

export class StationPart extends Part<StationView> {
  readonly #title = el("h2", { tabindex: -1 });
  readonly #asks = el("ul", { class: "unmarked stack" });
  readonly #ok = el("button", { type: "button", class: "button primary big", on: { click: () => this.#say(stationOk) } }, w("checks.ok"));
  readonly #skip = el("button", { type: "button", class: "button big", on: { click: () => this.#say(stationSkip) } }, w("checks.skip"));
  readonly #presses = el("div", { class: "okay" }, this.#ok, this.#skip);
  readonly #said = el("strong");
  readonly #again = el("button", { type: "button", class: "button", on: { click: () => this.#say(stationAgain) } }, w("checks.again"));
  readonly #done = el("div", { class: "row spread" }, this.#said, this.#again);

  protected override build(): void {
    this.append(el("section", { class: "card stack" }, this.#title, this.#asks, this.#presses, this.#done));
  }

  #say(name: typeof stationOk): void {
    if (this.view !== undefined) this.act(name, this.view.station);
  }

  protected override show({ station, n, asks, done, skipped }: StationView): void {
    const words = w(`checks.station.${station}`);
    setText(this.#title, `${words} · ${w("checks.at", { n })}`);
    const shown = done ? asks.filter(({ found }) => found !== undefined) : asks;
    keyed(this.#asks, shown, ({ ask }) => ask.id, () => new AskPart(), (part, each) => (part.view = each));
    setHidden(this.#asks, shown.length === 0);
    setHidden(this.#presses, done);
    setHidden(this.#done, !done);
    setText(this.#said, skipped ? w("checks.wasSkipped") : `✓ ${w("checks.seen")}`);
    setAttr(this.#ok, "aria-label", w("checks.okOf", { station: words }));
    setAttr(this.#skip, "aria-label", w("checks.skipOf", { station: words }));
    setAttr(this.#again, "aria-label", w("checks.againOf", { station: words }));
  }

  // toTitle takes a person to this station: what is next is at the top of the screen.
  toTitle(): void {
    this.#title.focus({ preventScroll: true });
    this.scrollIntoView({ block: "start" });
  }
}

class AskPart extends Part<AskView> {
  readonly #title = el("strong");
  readonly #look = el("p");
  readonly #how = el("p");
  readonly #limit = el("p");
  readonly #source = el("p", { class: "quiet" });
  readonly #summary = el("summary", {}, w("checks.how"));
  readonly #fold = el("details", { class: "small" }, this.#summary, this.#how, this.#limit, this.#source);
  readonly #find = el("button", { type: "button", class: "button", on: { click: () => this.act(askFound, this.view?.ask.id ?? "") } });
  readonly #form = el("div");

  protected override build(): void {
    setAttr(this, "role", "listitem");
    this.append(el("div", { class: "ask" }, el("div", {}, this.#title, this.#look), this.#find), this.#fold, this.#form);
  }

  protected override show({ ask, found, form }: AskView): void {
    setText(this.#title, ask.title);
    setText(this.#look, ask.look_for);
    setText(this.#how, ask.how);
    setHidden(this.#how, ask.how === "");
    setText(this.#limit, ask.limit === "" ? "" : w("checks.limit", { limit: ask.limit }));
    setHidden(this.#limit, ask.limit === "");
    setText(this.#source, w("checks.source", { source: ask.source }));
    setAttr(this.#summary, "aria-label", w("checks.howOf", { title: ask.title }));
    setText(this.#find, found === undefined ? w("checks.find") : `! ${w(`checks.bad.${found.severity ?? "care"}`)}`);
    setAttr(this.#find, "aria-label", found === undefined ? w("checks.findOf", { title: ask.title }) : `${ask.title}: ${w(`checks.bad.${found.severity ?? "care"}`)}`);
    setAttr(this.#find, "aria-expanded", form !== undefined);
    this.#showForm(form);
  }

  #showForm(form: FoundView | undefined): void {
    const part = this.#form.firstElementChild;
    if (form === undefined) this.#form.replaceChildren();
    else if (part instanceof FoundForm) part.view = form;
    else {
      const fresh = new FoundForm();
      fresh.view = form;
      this.#form.replaceChildren(fresh);
    }
  }
}

define("rs-ask", AskPart);
define("rs-station", StationPart);
