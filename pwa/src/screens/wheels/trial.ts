// A trial of a bike: #/wheels/trial/<bike>. What is typed, dealt and ridden is kept at once; a result shows only when all dealt runs
// are ridden.

import "./trial.css";
import { parse } from "../../book/value/quantity.ts";
import { describeRecord } from "../../book/value/record_words.ts";
import { type ArmName, type ArmsRead, dealQuestion, type Judged, nextSlot, noTrial, readArms, readTrialDraft, readValue, type Run, trialQuestion, type TrialDraft } from "../../book/wheels/trial.ts";
import { trialChange } from "../../book/wheels/trial_save.ts";
import { runWords, whatWords } from "../../book/wheels/trial_view.ts";
import { newRec } from "../../log/book_log.ts";
import { type RecordState, valueOf } from "../../log/op/merge.ts";
import { chosen } from "../../ui/choice.ts";
import { el } from "../../ui/el.ts";
import { typed } from "../../ui/field.ts";
import { Outcome } from "../../ui/outcome.ts";
import { openPage } from "../../ui/page.ts";
import { listen, setHidden, setText } from "../../ui/part.ts";
import type { Ctx } from "../../ui/screen.ts";
import { w } from "../../words/index.ts";
import { attempt, follow, tellerFor } from "../shared/follow.ts";
import { TrialPast, trialRemoved } from "./trial_past.ts";
import { resultAct, TrialResult } from "./trial_result.ts";
import { clockDropped, clockPressed, runTyped, TrialRide } from "./trial_ride.ts";
import { struck, TrialRuns } from "./trial_runs.ts";
import { dealWanted, TrialSetup } from "./trial_setup.ts";
import { todayOf } from "./trial_today.ts";

export function trial(host: HTMLElement, ctx: Ctx): void {
  const [, rec = ""] = ctx.path;
  new TrialPage(host, ctx, rec);
}

class TrialPage {
  readonly #ctx: Ctx;
  readonly #rec: string;
  readonly #of = el("p", { class: "quiet" });
  readonly #none = el("p", { class: "notice care", hidden: true }, w("trial.none"));
  readonly #setup = new TrialSetup();
  readonly #ride = new TrialRide();
  readonly #runs = new TrialRuns();
  readonly #result = new TrialResult();
  readonly #past = new TrialPast();
  readonly #outcome = new Outcome();
  readonly #page: HTMLElement;
  readonly #again: () => Promise<void>;
  #draft: TrialDraft = noTrial;
  #bike: RecordState | undefined;
  #trials: readonly RecordState[] = [];
  #judged: { readonly of: TrialDraft; readonly answer: Judged } | undefined;
  #pressed = false;
  #text = ""; // of the run that is typed
  #fault = "";
  #loaded: Promise<void> | undefined;
  #saving = false;

  constructor(host: HTMLElement, ctx: Ctx, rec: string) {
    this.#ctx = ctx;
    this.#rec = rec;
    openPage(ctx, w("trial.title"), { href: `#/wheels/${rec}`, words: w("measure.record") });
    const discard = el("button", { type: "button", class: "button quiet", on: { click: () => this.#discard() } }, w("trial.discard"));
    this.#page = el("div", { class: "stack looking trial" }, this.#none, this.#of, el("p", { class: "notice care" }, w("trial.care")), this.#outcome, el("div", { class: "columns" },
      el("div", { class: "stack" }, this.#setup, this.#ride, this.#result), el("div", { class: "stack" }, this.#runs, this.#past)), discard);
    host.append(this.#page);
    this.#listen(host);
    this.#again = follow(ctx, () => this.#look(), (words) => this.#say(words, true));
  }

  #listen(host: HTMLElement): void {
    const { closed } = this.#ctx;
    listen(host, typed, ({ id, text }) => this.#type(id, text), closed);
    listen(host, chosen, ({ name, value }) => this.#choose(name, value), closed);
    listen(host, dealWanted, () => void this.#deal(), closed);
    listen(host, clockPressed, () => this.#clock(), closed);
    listen(host, clockDropped, () => this.#keep({ ...this.#draft, started: 0 }), closed);
    listen(host, runTyped, () => this.#keepTyped(), closed);
    listen(host, struck, ({ at, why }) => this.#keep({ ...this.#draft, runs: this.#draft.runs.map((each) => (each.at === at ? { ...each, why } : each)) }), closed);
    listen(host, trialRemoved, (rec) => void this.#remove(rec), closed);
    listen(host, resultAct, (what) => {
      if (what === "look") this.#keep({ ...this.#draft, looked: this.#draft.look });
      else if (what === "save") void this.#save();
      else void this.#order({ ...this.#draft, look: this.#draft.look + 1 });
    }, closed);
    closed.addEventListener("abort", () => this.#ride.stop());
  }

  get #name(): string {
    return `trial/${this.#rec}`;
  }

  get #arms(): ArmsRead {
    return readArms(this.#draft, this.#ctx.settings.units);
  }

  async #look(): Promise<void> {
    await (this.#loaded ??= this.#ctx.drafts.load(this.#name).then((stored) => void (this.#draft = readTrialDraft(stored))));
    const { book } = this.#ctx;
    await book.ready;
    const [state, trials] = await Promise.all([book.get(this.#rec), book.all("trial")]);
    const bike = state?.kind === "bike" && !state.deleted && !state.erased ? state : undefined;
    const teller = await tellerFor(this.#ctx, bike === undefined ? [] : [bike]);
    if (bike !== undefined && this.#draft.order.length === 0) await this.#today();
    if (this.#ctx.closed.aborted) return;
    this.#page.classList.remove("looking");
    this.#bike = bike;
    this.#trials = trials;
    setHidden(this.#none, bike !== undefined);
    for (const part of [...this.#page.children].slice(1)) setHidden(part as HTMLElement, bike === undefined);
    if (bike === undefined) return;
    setText(this.#of, w("trial.of", { name: describeRecord(bike, teller) }));
    await this.#judge();
  }

  // today asks for limits and recommendation while nothing was dealt: a dealt trial keeps those of its day.
  async #today(): Promise<void> {
    const today = await todayOf(this.#ctx, this.#rec).catch(() => ({ basis: {}, error_kpa: 0 }));
    if (this.#draft.order.length === 0) this.#draft = { ...this.#draft, ...today };
  }

  #keep(draft: TrialDraft): void {
    this.#draft = draft;
    void this.#ctx.drafts.save(this.#name, draft);
    void this.#judge();
  }

  #type(id: string, text: string): void {
    if (id !== "value") return this.#keep({ ...this.#draft, texts: { ...this.#draft.texts, [id]: text } });
    this.#text = text;
    this.#fault = "";
    this.#show();
  }

  #choose(name: string, value: string): void {
    const draft = this.#draft;
    switch (name) {
      case "kind": return this.#keep({ ...draft, kind: value === "tyre" ? "tyre" : "pressure" });
      case "count": return this.#keep({ ...draft, count: value === "3" ? 3 : 2 });
      case "ends": return this.#keep({ ...draft, ends: value === "front" || value === "rear" ? value : "both" });
      case "better": return this.#keep({ ...draft, better: value === "more" ? "more" : "less" });
      case "rounds": return this.#keep({ ...draft, rounds: Number(value) });
      case "wind": return this.#keep({ ...draft, wind: value });
      case "why": return this.#runs.because(value);
    }
  }

  async #deal(): Promise<void> {
    this.#pressed = true;
    if (Object.keys(this.#arms.faults).length > 0) {
      this.#show();
      return this.#setup.goToFault();
    }
    await this.#order({ ...this.#draft, seed: crypto.getRandomValues(new Uint32Array(1))[0] ?? 0, look: 1, looked: 0, runs: [], started: 0 });
  }

  async #order(draft: TrialDraft): Promise<void> {
    const said = await this.#ctx.calc.ask("deal", dealQuestion(draft)).catch(() => undefined);
    if (said?.answer === undefined) return this.#say(w("trial.notDealt"), true);
    this.#keep({ ...draft, order: said.answer.order as readonly ArmName[], round: said.answer.round });
  }

  // clock times a run. Its start is kept, so that a phone that falls asleep loses nothing.
  #clock(): void {
    const { started } = this.#draft;
    if (started === 0) return this.#keep({ ...this.#draft, started: Date.now() });
    this.#add(Math.max(0.01, Math.round((Date.now() - started) / 10) / 100));
  }

  #keepTyped(): void {
    const value = readValue(this.#text);
    if (value !== undefined) return this.#add(value);
    this.#fault = w("trial.valueFault");
    this.#show();
    this.#ride.goToValue();
  }

  #add(value: number): void {
    const kept = { ...this.#draft, started: 0 };
    const slot = nextSlot(kept);
    const arm = slot === undefined ? undefined : kept.order[slot];
    if (slot === undefined || arm === undefined) return;
    const warm = parse(kept.texts["c"] ?? "", "temperature", "c");
    const run: Run = { slot, arm, value, why: "", wind: kept.wind, c: "si" in warm ? Math.round((warm.si - 273.15) * 10) / 10 : null, at: Math.max(Date.now(), (kept.runs.at(-1)?.at ?? 0) + 1) };
    this.#text = "";
    this.#keep({ ...kept, runs: [...kept.runs, run] });
    this.#outcome.view = { words: w("trial.kept", { run: runWords(run, kept.runs.length + 1, kept.better) }), undo: () => this.#keep(kept) };
  }

  // judge asks what was shown, once all dealt runs are ridden and somebody wants to look.
  async #judge(): Promise<void> {
    this.#show();
    const draft = this.#draft;
    if (draft.order.length === 0 || nextSlot(draft) !== undefined || draft.looked < draft.look) return;
    const said = await this.#ctx.calc.latest("trial", trialQuestion(draft)).catch(() => undefined);
    if (said?.answer === undefined || this.#draft !== draft) return;
    this.#judged = { of: draft, answer: said.answer };
    this.#show();
  }

  #show(): void {
    const draft = this.#draft;
    const dealt = draft.order.length > 0;
    const read = this.#arms;
    const unit = this.#ctx.settings.units;
    setHidden(this.#setup, dealt);
    for (const part of [this.#ride, this.#runs, this.#result]) setHidden(part, !dealt);
    this.#setup.view = { draft, read, unit, pressed: this.#pressed };
    this.#ride.view = { draft, arms: read.arms, unit, text: this.#text, fault: this.#fault };
    this.#runs.view = draft;
    this.#result.view = { draft, arms: read.arms, unit, judged: this.#judged?.of === draft ? this.#judged.answer : undefined };
    this.#past.view = { trials: this.#trials, bike: this.#rec };
  }

  #say(words: string, failed = false): void {
    this.#outcome.view = { words, failed };
  }

  #discard(): void {
    const kept = this.#draft;
    this.#pressed = false;
    this.#keep({ ...kept, order: [], runs: [], started: 0, look: 1, looked: 0 });
    this.#outcome.view = { words: w("trial.discarded"), undo: () => this.#keep(kept) };
  }

  async #save(): Promise<void> {
    const [draft, bike] = [this.#draft, this.#bike];
    const judged = this.#judged?.of === draft ? this.#judged.answer : undefined;
    if (bike === undefined || judged === undefined || this.#saving) return;
    this.#saving = true;
    const { arms } = this.#arms;
    const rider = valueOf(bike, "rider");
    const place = { bike: bike.rec, ...(typeof rider === "string" && rider !== "" && { person: rider }) };
    const change = trialChange(draft, arms, judged, whatWords(arms, this.#ctx.settings.units), place, Date.now(), newRec);
    const fresh = { ...noTrial, kind: draft.kind, ends: draft.ends };
    let saved: readonly RecordState[] = [];
    const failed = await attempt(this.#ctx, async () => {
      saved = await this.#ctx.book.save([change], { name: this.#name, value: fresh });
    });
    this.#saving = false;
    if (failed !== "") return this.#say(failed, true);
    this.#draft = fresh;
    this.#pressed = false;
    await this.#again();
    const words = draft.kind === "tyre" ? w("trial.savedTyre") : judged.best === null ? w("trial.saved") : w("trial.savedShift");
    this.#outcome.view = { words, undo: () => void this.#undo(saved, draft) };
  }

  async #undo(saved: readonly RecordState[], draft: TrialDraft): Promise<void> {
    const failed = await attempt(this.#ctx, () => this.#ctx.book.remove(...saved));
    if (failed === "" && this.#draft.order.length === 0) this.#keep(draft);
    await this.#again();
    this.#say(failed || w("trial.undone"), failed !== "");
  }

  async #remove(rec: string): Promise<void> {
    const { book } = this.#ctx;
    const entry = this.#trials.find((each) => each.rec === rec);
    if (entry === undefined) return;
    const failed = await attempt(this.#ctx, () => book.remove(entry));
    await this.#again();
    const back = async (): Promise<void> => {
      const gone = await book.get(rec);
      const trouble = gone === undefined ? "" : await attempt(this.#ctx, () => book.restore(gone));
      await this.#again();
      this.#say(trouble || w("trial.undone"), trouble !== "");
    };
    this.#outcome.view = failed === "" ? { words: w("trial.removed"), undo: () => void back() } : { words: failed, failed: true };
  }
}
