// "Sweat since last wash": what rides have left on a bike, which metals in its wheels mind, and when a wet wash is due.

import "./checks.css";
import { bikeName } from "../../book/pressure/bikes.ts";
import { coupleWords, logOf, logWords, rideKinds, saltLog, sweats } from "../../book/checks/salt_view.ts";
import { readTyped } from "../../book/value/typed_value.ts";
import { dayOf } from "../../book/wheels/measure_days.ts";
import type { Teller } from "../../book/value/record_words.ts";
import { dayWords } from "../../book/value/when.ts";
import { newRec } from "../../log/book_log.ts";
import type { Json } from "../../log/op/json.ts";
import type { RecordState } from "../../log/op/merge.ts";
import { Choice, chosen } from "../../ui/choice.ts";
import "../../ui/way.css";
import { saltWhy } from "../../book/checks/due_view.ts";
import { el } from "../../ui/el.ts";
import { Field, typed } from "../../ui/field.ts";
import { keyed } from "../../ui/keyed.ts";
import { Outcome } from "../../ui/outcome.ts";
import { openPage } from "../../ui/page.ts";
import { listen, setHidden, setText } from "../../ui/part.ts";
import type { Ctx } from "../../ui/screen.ts";
import { all, w } from "../../words/index.ts";
import { attempt, follow, tellerFor } from "../shared/follow.ts";
import { askSalt, type SaltAsked } from "./salt_asks.ts";

const shown = 20; // lines of the log

export function sweat(host: HTMLElement, ctx: Ctx): void {
  new SweatPage(host, ctx, ctx.path[1] ?? "");
}

class SweatPage {
  readonly #ctx: Ctx;
  readonly #bike: string;
  readonly #page = el("div", { class: "stack looking" });
  readonly #due = el("h2");
  readonly #why = el("p");
  readonly #indoors = el("p", { class: "small" });
  readonly #couples = el("ul", {});
  readonly #noMetals = el("p", { class: "small" }, w("salt.noMetals"));
  readonly #kind = new Choice();
  readonly #hours = new Field();
  readonly #sweat = new Choice();
  readonly #outcome = new Outcome();
  readonly #log = el("ul", { class: "unmarked ways" });
  readonly #again: () => Promise<void>;
  #picked = { kind: "indoor", sweat: "mean", hours: "" };
  #fault = "";

  constructor(host: HTMLElement, ctx: Ctx, bike: string) {
    this.#ctx = ctx;
    this.#bike = bike;
    openPage(ctx, w("salt.title"), { href: "#/checks", words: w("place.checks") });
    const wash = (kind: "wash" | "wipe", words: "salt.washed" | "salt.wiped"): HTMLElement =>
      el("button", { type: "button", class: "button big", on: { click: () => void this.#add("wash", { kind }, w("salt.noted")) } }, w(words));
    host.append(this.#page);
    this.#page.append(
      el("section", { class: "card stack" }, this.#due, this.#why, this.#indoors, el("div", { class: "okay" }, wash("wash", "salt.washed"), wash("wipe", "salt.wiped")), this.#outcome),
      el("section", { class: "card stack" }, el("h2", {}, w("salt.addRide")), this.#kind, el("div", { class: "fields" }, this.#hours), this.#sweat,
        el("p", {}, el("button", { type: "button", class: "button primary", on: { click: () => void this.#ride() } }, w("salt.add")))),
      el("section", { class: "card stack" }, el("h2", {}, w("salt.metals")), this.#couples, this.#noMetals, el("p", { class: "small quiet" }, w("salt.gapWhy"))),
      el("section", { class: "card stack" }, el("h2", {}, w("salt.advice")), el("ul", { class: "stack" },
        ...(["wash", "wipe", "indoor", "build", "look"] as const).map((each) => el("li", {}, w(`salt.advice.${each}`))))),
      el("section", { class: "card stack" }, el("h2", {}, w("salt.log")), this.#log));
    listen(host, chosen, ({ name, value }) => this.#pick({ [name.replace("salt.", "")]: value }), ctx.closed);
    listen(host, typed, ({ text }) => this.#pick({ hours: text }), ctx.closed);
    void ctx.drafts.load(`ride/${bike}`).then((stored) => {
      if (typeof stored === "object" && stored !== null) this.#picked = { ...this.#picked, ...(stored as object) };
      this.#form();
    });
    this.#form();
    this.#again = follow(ctx, () => this.#look(), (words) => (this.#outcome.view = { words, failed: true }));
  }

  #pick(change: Partial<{ kind: string; sweat: string; hours: string }>): void {
    this.#picked = { ...this.#picked, ...change };
    this.#fault = "";
    void this.#ctx.drafts.save(`ride/${this.#bike}`, this.#picked);
    this.#form();
  }

  #form(): void {
    const { kind, sweat: much, hours } = this.#picked;
    this.#kind.view = { name: "salt.kind", legend: w("salt.kind"), options: rideKinds.map((value) => ({ value, label: w(`salt.kindOf.${value}`) })), value: kind };
    this.#hours.view = { id: "hours", label: w("recField.hours"), spoken: w("recField.hours"), text: hours, unit: w("recUnit.h"), range: null, fault: this.#fault, signed: false, step: 0 };
    this.#sweat.view = { name: "salt.sweat", legend: w("salt.sweat"), options: sweats.map((value) => ({ value, label: w(`salt.sweatLevel.${value}`) })), value: much };
    setHidden(this.#sweat, kind !== "indoor");
  }

  async #ride(): Promise<void> {
    const { kind, sweat: much, hours } = this.#picked;
    const read = readTyped("ride", "hours", hours, this.#ctx.settings.units);
    this.#fault = "fault" in read ? read.fault : read.value === null ? w("fault.missing") : "";
    this.#form();
    if ("fault" in read || read.value === null) return this.#hours.focus();
    if (await this.#add("ride", { kind, hours: read.value, ...(kind === "indoor" && { sweat: much }) }, w("salt.noted"))) this.#pick({ hours: "" });
  }

  async #add(kind: "ride" | "wash", set: Record<string, Json>, words: string): Promise<boolean> {
    const { book } = this.#ctx;
    let made: readonly RecordState[] = [];
    const failed = await attempt(this.#ctx, async () => {
      made = await book.save([{ rec: newRec(), kind, set: { bike: this.#bike, day: dayOf(Date.now()), ...set } }]);
    });
    await this.#again();
    const undo = async (): Promise<void> => {
      const trouble = await attempt(this.#ctx, () => book.remove(...made));
      this.#outcome.view = { words: trouble || w("things.undone"), failed: trouble !== "" };
    };
    this.#outcome.view = failed === "" ? { words, undo: () => void undo() } : { words: failed, failed: true };
    return failed === "";
  }

  async #look(): Promise<void> {
    const { book, closed } = this.#ctx;
    await book.ready;
    const [bike, rides, washes] = await Promise.all([book.get(this.#bike), book.all("ride"), book.all("wash")]);
    const entries = [...rides, ...washes];
    const asked = await askSalt(this.#ctx, bike, saltLog(entries, this.#bike));
    const teller = await tellerFor(this.#ctx, asked.trainers);
    if (closed.aborted) return;
    const { answers } = asked;
    setText(this.#indoors, indoorsWords(asked, teller));
    setHidden(this.#indoors, asked.spared.length === 0);
    this.#page.classList.remove("looking");
    this.#ctx.heading(`${w("salt.title")} · ${bikeName(bike) || w("head.bike")}`);
    const [first] = answers;
    setText(this.#due, first === undefined ? w("checks.waiting") : first.wash_due === "" ? w("salt.notDue") : w("salt.due", { day: dayWords(first.wash_due, Date.now()) }));
    setText(this.#why, first === undefined ? "" : saltWhy(first.why.code, first.why.values));
    const couples = [...new Set(answers.flatMap((answer) => answer.couples).map(coupleWords))];
    keyed(this.#couples, couples, (words) => words, () => el("li"), setText);
    setHidden(this.#noMetals, couples.length > 0);
    const log = logOf(entries, this.#bike).slice(0, shown);
    keyed(this.#log, log, ({ rec }) => rec, () => el("li", {}, el("a", { class: "way" })), (node, entry) => {
      const link = node.firstElementChild;
      if (!(link instanceof HTMLAnchorElement)) return;
      link.href = `#/settings/history/${entry.rec}`;
      setText(link, logWords(entry, Date.now()));
    });
  }
}

// indoorsWords tells which ends are spared, and which wheels take their places.
function indoorsWords({ spared, trainers }: SaltAsked, teller: Teller): string {
  const ends = all(spared.map((side) => w(`salt.end.${side}`)));
  return trainers.length === 0 ? w("salt.spared", { ends }) : w("salt.sparedBy", { ends, wheels: all(trainers.map(({ rec }) => teller.nameOf(rec))) });
}
