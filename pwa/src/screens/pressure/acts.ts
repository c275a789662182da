// What a person does on the Pressure screen, turned into changes of the draft and of the book.

import { type Side, sides } from "../../book/pressure/answer.ts";
import { type PressureDraft, readDraft } from "../../book/pressure/draft.ts";
import { maxFirmness } from "../../contract/contract.ts";
import { groundByEdit, placeEdit, rearEdit } from "../../book/pressure/edits.ts";
import { restated } from "../../book/pressure/restate.ts";
import type { SetFacts } from "../../book/pressure/sets.ts";
import { chosen } from "../../ui/choice.ts";
import { Field, typed } from "../../ui/field.ts";
import { listen } from "../../ui/part.ts";
import type { Ctx } from "../../ui/screen.ts";
import { w } from "../../words/index.ts";
import { BikeSwitch } from "./bikes/bike_switch.ts";
import { bikeCopied, bikeOpened, setupBrought, setupShared } from "./bikes/bikes.ts";
import { firmed, wetted } from "./board/adjust.ts";
import { notesLeftOut } from "./board/learnt.ts";
import { placeChosen } from "./board/places.ts";
import { entryUndone, wasSame, wasSet } from "./board/set_bar.ts";
import { wheelSet } from "./card/wheel_card.ts";
import type { Desk } from "./desk.ts";
import { GroundDesk } from "./ground/ground_desk.ts";
import { noteSaved } from "./ride/noted.ts";
import { altitudeFound } from "./setup/altitude.ts";
import { started, unitChosen } from "./setup/first_run.ts";
import { renamed } from "./setup/setup.ts";

export class Acts {
  readonly ground: GroundDesk;
  readonly #desk: Desk;
  readonly #bikes: BikeSwitch;
  #before: Partial<PressureDraft> | undefined; // readings and place before "I set it"
  #waiting = false; // a field was being typed in while others changed something

  constructor(desk: Desk) {
    this.#desk = desk;
    this.ground = new GroundDesk(desk.entries, { draft: () => desk.draft, change: (change) => desk.change(change), show: () => desk.show(), trouble: (error) => desk.ctx.trouble(error),
      lent: () => ({ sums: () => ({ body: desk.read().body, answer: desk.sums.kept?.answer }), calc: desk.ctx.calc, unit: () => desk.unit, closed: desk.ctx.closed }) });
    this.#bikes = new BikeSwitch(desk.ctx, desk.holder, desk.records, desk.entries);
  }

  hear(): void {
    const desk = this.#desk;
    const { closed } = desk.ctx;
    const on = <D>(name: Parameters<typeof listen<D>>[1], hear: (detail: D) => void): void => void listen(desk.host, name, hear, closed);
    on(typed, ({ id, text }) => this.#type(id, text));
    on(chosen, ({ name, value }) => this.#choose(name.replace(/^first\./, ""), value));
    on(firmed, (by) => desk.change({ firmness: Math.max(-maxFirmness, Math.min(maxFirmness, desk.draft.firmness + by)) }));
    on(wetted, (wet) => desk.change({ wet }));
    on(placeChosen, (here) => desk.change(placeEdit(desk.draft, here, Date.now())));
    on(notesLeftOut, (plain) => desk.change({ plain }));
    on(renamed, (bike) => desk.change({ bike }));
    on(started, () => desk.start());
    on(unitChosen, (units) => desk.ctx.changeSettings({ units }));
    this.ground.hear(desk.host, closed);
    on(altitudeFound, ({ id, metres }) => this.#type(id, String(metres)));
    on(bikeOpened, (rec) => void this.#openBike(rec));
    on(bikeCopied, () => void this.#bikes.copy().then(() => this.#opened()));
    on(setupShared, () => void this.#bikes.share(desk.draft));
    on(setupBrought, (file) => void this.#bring(file));
    on(wasSet, () => void this.#setIt(sides, (facts) => desk.entries.setIt(facts)));
    on(wasSame, () => void this.#setIt(sides, (facts) => desk.entries.sameAgain(facts)));
    on(wheelSet, (side) => void this.#setIt([side], (facts) => desk.entries.setIt(facts)));
    on(noteSaved, (text) => void this.#note(text));
    on(entryUndone, () => void this.#undo());
    this.#hearOthers(closed);
  }

  #hearOthers(closed: AbortSignal): void {
    const desk = this.#desk;
    const { drafts, book } = desk.ctx;
    closed.addEventListener("abort", drafts.follow(desk.holder.name, (value) => {
      desk.draft = restated(readDraft(value), desk.unit);
      void desk.records.look().then(() => desk.refresh(), () => desk.refresh());
    }, () => this.#editing()));
    closed.addEventListener("abort", book.on((recs) => void this.#heard(recs).catch(() => undefined)));
    desk.host.addEventListener("focusout", () => this.#left(), { signal: closed });
    document.addEventListener("visibilitychange", () => void desk.records.now(), { signal: closed });
    closed.addEventListener("abort", () => {
      desk.entries.stop();
      void desk.records.now();
    });
    desk.ctx.onSettings(({ units }) => this.#switchUnit(units));
    desk.ctx.onCalc(() => desk.refresh());
  }

  // heard is called when records changed: here, in another tab, on another phone.
  async #heard(recs: ReadonlySet<string>): Promise<void> {
    const desk = this.#desk;
    await desk.opened;
    if (desk.ctx.closed.aborted) return;
    await desk.entries.look();
    const fresh = !desk.draft.started && Object.keys(desk.draft.texts).length === 0;
    if (fresh) await desk.firstDraft(); // the book has just arrived, and nothing was typed yet
    const typing = this.#typing();
    this.#waiting = typing !== "";
    const { links } = desk.draft;
    if (desk.records.concerns(recs) && await desk.records.look(typing)) {
      if (Object.keys(links).some((role) => !(role in desk.draft.links))) {
        desk.forgetAnswer();
        desk.rides.forget(links["bike"]);
      }
      desk.keep();
    }
    desk.refresh();
  }

  // typing is the field that a person is in, "" for none.
  #typing(): string {
    const field = this.#editing() ? document.activeElement?.closest("rs-field") : null;
    return field instanceof Field ? field.view?.id ?? "" : "";
  }

  #editing(): boolean {
    const active = document.activeElement;
    return document.hasFocus() && this.#desk.host.contains(active) && (active instanceof HTMLInputElement || active instanceof HTMLTextAreaElement) && !["radio", "checkbox"].includes(active.type);
  }

  // left: a field was left, so what waited may appear and what was typed is made.
  #left(): void {
    if (this.#waiting) {
      this.#waiting = false;
      void this.#heard(new Set());
    }
    void this.#desk.records.now();
  }

  async #openBike(rec: string): Promise<void> {
    if (await this.#bikes.open(rec)) this.#opened();
  }

  async #bring(file: File): Promise<void> {
    const taken = await this.#bikes.bring(file);
    this.#desk.fault = taken ? "" : w("bikes.notOne");
    if (taken) this.#opened();
    else this.#desk.show();
  }

  // No number of the bike that was open before may stand under the other one's name.
  #opened(): void {
    this.#desk.fault = "";
    this.#before = undefined;
    this.#desk.forgetAnswer();
    scrollTo(0, 0);
    this.#desk.refresh();
  }

  async #setIt(which: readonly Side[], note: (facts: SetFacts) => Promise<boolean>): Promise<void> {
    const desk = this.#desk;
    await desk.records.now();
    const wheels = desk.told();
    const told = (side: Side): number | undefined => wheels.find((each) => each.side === side)?.kpa;
    const { draft } = desk;
    if (!(await note({ draft, reading: desk.read(), answer: desk.sums.kept?.answer, told: { front: told("front"), rear: told("rear") }, which }))) return;
    await desk.entries.look();
    const { texts, here, hereAt } = draft;
    this.#before = { texts, here, hereAt }; // the readings were of before; undoing brings them back
    const read = Object.fromEntries(which.map((side) => [`now.${side}`, ""]));
    // Set at Home, the wheels are ridden from the start: the screen opens right there.
    const away = which.length === sides.length && here === "set" ? placeEdit({ ...draft, texts: { ...texts, ...read } }, "ride", Date.now()) : { texts: { ...texts, ...read } };
    desk.change(away);
  }

  async #undo(): Promise<void> {
    const desk = this.#desk;
    await desk.entries.undo();
    await desk.entries.look();
    desk.change(this.#before ?? {});
    this.#before = undefined;
  }

  async #note(text: string): Promise<void> {
    const desk = this.#desk;
    await desk.records.now();
    if (!(await desk.entries.note(desk.draft, text))) return;
    this.#before = undefined;
    await desk.entries.look();
    desk.noteTaken();
  }

  #type(id: string, text: string): void {
    const desk = this.#desk;
    const stretch = /^ground\.(.+)\.(km|kmh|gd0)$/.exec(id);
    if (stretch?.[1] !== undefined && stretch[2] !== undefined) return this.ground.typed(stretch[1], stretch[2], text);
    const at = id.startsWith("set.") ? { setAt: Date.now() } : /^(ride|warmest)\./.test(id) ? { weatherAt: Date.now() } : {};
    desk.change({ texts: { ...desk.draft.texts, [id]: text }, ...at });
  }

  #choose(name: string, value: string): void {
    const desk = this.#desk;
    const { draft } = desk;
    if (name === "weigh") return desk.change({ weigh: value === "scale" ? "scale" : "share" });
    if (name === "ground.by") return desk.change(groundByEdit(draft, value === "share" ? "share" : "km"));
    if (name === "rear") return desk.change(rearEdit(draft, value === "same"));
    const stretch = /^ground\.(.+)\.kind$/.exec(name);
    if (stretch?.[1] !== undefined) return this.ground.stretch(stretch[1], { kind: value });
    desk.change({ picks: { ...draft.picks, [name]: value } });
  }

  #switchUnit(unit: Ctx["settings"]["units"]): void {
    const desk = this.#desk;
    if (unit === desk.unit) return;
    desk.unit = unit;
    desk.change(restated(desk.draft, unit));
  }
}
