// The frame round every screen: heading and gear, what is wrong if anything, the screen, the status line, the places.

import "./base.css";
import "./shell.css";
import { w } from "../words/index.ts";
import { Bar } from "./bar.ts";
import { el } from "./el.ts";
import { icon } from "./icons.ts";
import { InstallHint } from "./install.ts";
import { Offer } from "./offer.ts";
import { Outage } from "./outage.ts";
import { define, Part, setAttr, setText } from "./part.ts";
import { Voice } from "./say.ts";
import type { CalcState } from "./screen.ts";
import { Status, type StatusView } from "./status.ts";
import { Trouble } from "./trouble.ts";

export interface ShellView {
  readonly place: string;
  readonly heading: string;
  readonly save: StatusView["save"];
  readonly server: string; // of the status line
  readonly calc: CalcState;
  readonly update: boolean; // a new version waits
  readonly installHint: boolean;
}

export class Shell extends Part<ShellView> {
  readonly voice = new Voice();
  readonly trouble = new Trouble();
  readonly #bar = new Bar();
  readonly #offer = new Offer();
  readonly #hint = new InstallHint();
  readonly #outage = new Outage();
  readonly #status = new Status();
  readonly #heading = el("h1", { tabindex: -1 });
  readonly #gear = el("a", { class: "gear", href: "#/settings", "aria-label": w("place.settings") }, icon("settings"));
  readonly #head = el("div", { class: "head" });
  readonly #stage = el("div");

  protected override build(): void {
    this.append(
      el("div", { class: "foot" }, this.#offer, this.#bar),
      el("div", { class: "page" },
        el("header", {}, this.#heading, this.#gear, this.#head),
        el("main", {}, this.#hint, this.#outage, this.#stage),
        el("footer", {}, this.#status)),
      this.voice.node, this.trouble);
  }

  protected override show(view: ShellView): void {
    setText(this.#heading, view.heading);
    document.title = w("app.titled", { screen: view.heading });
    setAttr(this.#gear, "aria-current", view.place === "settings" ? "page" : null);
    this.#bar.view = { current: view.place };
    this.#offer.view = { ready: view.update };
    this.#hint.view = { wanted: view.installHint && view.place !== "settings" }; // Settings tells it in full
    const saves = view.save === "saved" || view.save === "saving";
    this.#outage.view = { calc: view.calc, saves };
    this.#status.view = { save: view.save, sums: view.calc.where !== "none", server: view.server };
  }

  // stage clears the screen's spaces and lends them anew: its own in the header, and the host.
  stage(): { head: HTMLElement; host: HTMLElement } {
    const head = el("div");
    const host = el("div");
    this.#head.replaceChildren(head);
    this.#stage.replaceChildren(host);
    return { head, host };
  }

  // arrive takes a person who changed place to the top and to the heading.
  arrive(): void {
    scrollTo(0, 0);
    this.#heading.focus({ preventScroll: true });
  }
}

define("rs-shell", Shell);
