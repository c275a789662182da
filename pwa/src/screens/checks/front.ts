// The front page of Checks: which bike, when it was looked at last, what is still open, and the walk-arounds to begin.

import "./checks.css";
import { ageOf } from "../../book/value/age.ts";
import { bikeName } from "../../book/pressure/bikes.ts";
import { type Moment, moments, readWalk, type Severity } from "../../book/checks/walk.ts";
import { checksOf, openFindings, severityOf, textOf } from "../../book/checks/walk_save.ts";
import type { RecordState } from "../../log/op/merge.ts";
import { chosen } from "../../ui/choice.ts";
import { el } from "../../ui/el.ts";
import { keyed } from "../../ui/keyed.ts";
import { listen, setAttr, setHidden, setText } from "../../ui/part.ts";
import { Picker } from "../../ui/picker.ts";
import type { Ctx } from "../../ui/screen.ts";
import { showWay, way } from "../../ui/way.ts";
import { w } from "../../words/index.ts";
import { follow } from "../shared/follow.ts";
import { bikePicker, pickBike, pickedBike } from "../shared/picked_bike.ts";
import { walkDraft } from "./walk.ts";

export function front(host: HTMLElement, ctx: Ctx): void {
  new Front(host, ctx);
}

class Front {
  readonly #ctx: Ctx;
  readonly #page = el("div", { class: "stack looking" });
  readonly #picker = new Picker();
  readonly #goOn = el("a", { class: "button primary big" });
  readonly #last = el("p", { class: "quiet" });
  readonly #open = el("ul", { class: "unmarked ways" });
  readonly #openCard = el("section", { class: "card stack" }, el("h2", {}, w("checks.open")), this.#open);
  readonly #moments = el("ul", { class: "unmarked moments" });
  readonly #others = el("ul", { class: "unmarked ways" });
  readonly #none = el("section", { class: "card stack" }, el("p", {}, w("checks.noBike")), el("p", {}, el("a", { class: "button primary", href: "#/wheels/new/bike" }, w("checks.toWheels"))));
  readonly #again: () => Promise<void>;

  constructor(host: HTMLElement, ctx: Ctx) {
    this.#ctx = ctx;
    host.append(this.#page);
    listen(host, chosen, ({ value }) => {
      pickBike(ctx, value);
      void this.#again();
    }, ctx.closed);
    this.#again = follow(ctx, () => this.#look(), (words) => setText(this.#last, words));
  }

  async #look(): Promise<void> {
    const { book, drafts } = this.#ctx;
    const bike = await pickedBike(this.#ctx);
    const [bikes, checks, findings, closed] = await Promise.all(["bike", "check", "finding", "finding_closed"].map((kind) => book.all(kind)));
    const begun = bike === undefined ? undefined : readWalk(await drafts.load(walkDraft(bike.rec)));
    if (this.#ctx.closed.aborted) return;
    if (bike === undefined) return this.#page.replaceChildren(this.#none);
    if (!this.#page.contains(this.#moments)) this.#page.replaceChildren(this.#picker, this.#openCard, el("section", { class: "card stack" }, this.#last, this.#goOn, this.#moments), el("section", { class: "card" }, this.#others));
    this.#ctx.heading(`${w("place.checks")} · ${bikeName(bike) || w("head.bike")}`);
    bikePicker(this.#picker, bikes ?? [], bike);
    this.#showBegun(bike.rec, begun?.moment, begun?.started ?? 0);
    this.#showLast(checksOf(checks ?? [], bike.rec)[0]);
    this.#showOpen(openFindings(findings ?? [], closed ?? [], bike.rec));
    keyed(this.#moments, moments, (moment) => moment, () => way(), (node, moment) => {
      showWay(node, `#/checks/walk/${bike.rec}/${moment}`, w(`checks.moment.${moment}`), w(`checks.when.${moment}`));
    });
    const others = [["due", "checks.toDue"], ["sweat", "checks.toSweat"], ["history", "checks.history"]] as const;
    keyed(this.#others, [...others, ["rotor", "checks.toRotor"] as const], ([page]) => page, () => way(), (node, [page, words]) => {
      showWay(node, page === "rotor" ? "#/checks/rotor" : `#/checks/${page}/${bike.rec}`, w(words), "");
    });
  }

  #showBegun(bike: string, moment: Moment | undefined, started: number): void {
    setHidden(this.#goOn, moment === undefined);
    if (moment === undefined) return;
    setAttr(this.#goOn, "href", `#/checks/walk/${bike}/${moment}`);
    setText(this.#goOn, w("checks.goOn", { age: ageOf(Date.now() - started) }));
  }

  #showLast(check: RecordState | undefined): void {
    const outcome = textOf(check, "outcome");
    const known = outcome === "nothing_found" || outcome === "ride_with_care" || outcome === "do_not_ride";
    setText(this.#last, check === undefined || !known ? w("checks.none") : w("checks.last", { what: w(`checks.outcome.${outcome}`), when: ageOf(Date.now() - check.newest) }));
  }

  #showOpen(open: readonly RecordState[]): void {
    setHidden(this.#openCard, open.length === 0);
    keyed(this.#open, open, ({ rec }) => rec, () => way(), (node, finding) => {
      showWay(node, `#/checks/finding/${finding.rec}`, textOf(finding, "words"), badWords(severityOf(finding)));
    });
  }
}

export const badWords = (severity: Severity): string => w(`checks.bad.${severity}`);
