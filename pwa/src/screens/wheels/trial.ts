// A trial of a bike: #/wheels/trial/<bike>. What is typed, dealt and ridden is kept at once; a result shows only when all dealt runs
// are ridden.

import "./trial.css";
import {
  armsOf, type ArmsRead, type ArmName, counts, dealQuestion, endsOf, type Judged, looks, mayStrike, nextSlot, noTrial, readArms, readTrialDraft, readValue, type Run, trialQuestion, type TrialDraft, whys, winds,
} from "../../book/wheels/trial.ts";
import { trialChange } from "../../book/wheels/trial_save.ts";
import { armFieldLabel, faultWords, limitsOf, nextWords, orderWords, pastTrials, resultShown, type RunLine, runLines, runWords, whatWords } from "../../book/wheels/trial_view.ts";
import { describeRecord } from "../../book/value/record_words.ts";
import { parse } from "../../book/value/quantity.ts";
import { newRec } from "../../log/book_log.ts";
import { type RecordState, valueOf } from "../../log/op/merge.ts";
import { Choice, chosen } from "../../ui/choice.ts";
import { el } from "../../ui/el.ts";
import { Field, type FieldShown, typed } from "../../ui/field.ts";
import { keyed } from "../../ui/keyed.ts";
import { Outcome } from "../../ui/outcome.ts";
import { openPage } from "../../ui/page.ts";
import { listen, setAttr, setHidden, setText } from "../../ui/part.ts";
import type { Ctx } from "../../ui/screen.ts";
import { w } from "../../words/index.ts";
import { fixed } from "../../words/number.ts";
import { attempt, follow, tellerFor } from "../shared/follow.ts";
import { todayOf } from "./trial_today.ts";

export function trial(host: HTMLElement, ctx: Ctx): void {
  const [, rec = ""] = ctx.path;
  new TrialPage(host, ctx, rec);
}

const tick = 100; // ms between two looks at the clock

class TrialPage {
  readonly #ctx: Ctx;
  readonly #rec: string;
  readonly #of = el("p", { class: "quiet" });
  readonly #none = el("p", { class: "notice care", hidden: true }, w("trial.none"));
  readonly #choices = { kind: new Choice(), count: new Choice(), ends: new Choice(), better: new Choice(), rounds: new Choice() };
  readonly #fields = el("div", { class: "fields" });
  readonly #dealing = el("section", { class: "card stack" });
  readonly #runsHow = el("p", { class: "small" });
  readonly #next = el("p", { class: "spot", role: "status" });
  readonly #order = el("p", { class: "small quiet" });
  readonly #clock = el("p", { class: "clock" });
  readonly #start = press("button primary big", "", () => this.#startOrStop());
  readonly #drop = press("button quiet", w("trial.dropClock"), () => this.#keep({ ...this.#draft, started: 0 }));
  readonly #value = new Field();
  readonly #wind = new Choice();
  readonly #warm = new Field();
  readonly #ride = el("section", { class: "card stack riding" });
  readonly #askRun = el("div", { class: "stack" });
  readonly #list = el("ul", { class: "unmarked stack" });
  readonly #strike = el("div", { class: "notice stack", hidden: true });
  readonly #runs = el("section", { class: "card stack" });
  readonly #result = el("section", { class: "card stack" });
  readonly #verdict = el("p", { class: "spot", role: "status" });
  readonly #lines = el("ul", { class: "unmarked stack small" });
  readonly #goOn = el("p");
  readonly #lookAt = press("button primary", w("trial.lookAt"), () => this.#keep({ ...this.#draft, looked: this.#draft.look }));
  readonly #keepIt = press("button primary", w("trial.save"), () => void this.#save());
  readonly #again = press("button", "", () => void this.#rideAgain());
  readonly #outcome = new Outcome();
  readonly #past = el("ul", { class: "unmarked stack" });
  readonly #page: HTMLElement;
  readonly #lookAgain: () => Promise<void>;
  #draft: TrialDraft = noTrial;
  #bike: RecordState | undefined;
  #trials: readonly RecordState[] = [];
  #judged: { readonly of: TrialDraft; readonly answer: Judged } | undefined;
  #pressed = false; // faults are said once somebody wanted to deal
  #valueText = "";
  #valueFault = "";
  #striking: Run | undefined;
  #loaded: Promise<void> | undefined;
  #timer: ReturnType<typeof setInterval> | undefined;
  #saving = false;

  constructor(host: HTMLElement, ctx: Ctx, rec: string) {
    this.#ctx = ctx;
    this.#rec = rec;
    openPage(ctx, w("trial.title"), { href: `#/wheels/${rec}`, words: w("measure.record") });
    this.#dealing.append(el("h2", {}, w("trial.setUp")), this.#choices.kind, this.#choices.count, this.#choices.ends, this.#fields, this.#choices.better, this.#choices.rounds, this.#runsHow,
      press("button primary", w("trial.deal"), () => void this.#deal()));
    this.#askRun.append(this.#next, this.#clock, el("div", { class: "row" }, this.#start, this.#drop), this.#value, press("button", w("trial.keep"), () => this.#keepTyped()), this.#wind, this.#warm);
    this.#ride.append(el("h2", {}, w("trial.ride")), el("p", { class: "small" }, w("trial.how")), this.#askRun, this.#order);
    this.#runs.append(el("h2", {}, w("trial.runs")), this.#strike, this.#list, el("p", { class: "small quiet" }, w("trial.strikeHow")));
    this.#result.append(el("h2", {}, w("trial.result")), this.#verdict, this.#lines, this.#goOn, el("div", { class: "row" }, this.#lookAt, this.#keepIt, this.#again));
    this.#page = el("div", { class: "stack looking" }, this.#none, this.#of, el("p", { class: "notice care" }, w("trial.care")), this.#outcome, el("div", { class: "columns" },
      el("div", { class: "stack" }, this.#dealing, this.#ride, this.#result),
      el("div", { class: "stack" }, this.#runs, el("section", { class: "card stack" }, el("h2", {}, w("trial.past")), this.#past, el("p", { class: "small" }, w("trial.tested"))))),
      press("button quiet", w("trial.discard"), () => this.#discard()));
    host.append(this.#page);
    listen(host, typed, ({ id, text }) => this.#type(id, text), ctx.closed);
    listen(host, chosen, ({ name, value }) => this.#choose(name, value), ctx.closed);
    ctx.closed.addEventListener("abort", () => clearInterval(this.#timer));
    this.#lookAgain = follow(ctx, () => this.#look(), (words) => this.#say(words, true));
  }

  get #name(): string {
    return `trial/${this.#rec}`;
  }

  get #unit(): Ctx["settings"]["units"] {
    return this.#ctx.settings.units;
  }

  get #arms(): ArmsRead {
    return readArms(this.#draft, this.#unit);
  }

  async #look(): Promise<void> {
    await (this.#loaded ??= this.#load());
    const { book } = this.#ctx;
    await book.ready;
    const [state, trials] = await Promise.all([book.get(this.#rec), book.all("trial")]);
    const bike = state?.kind === "bike" && !state.deleted && !state.erased ? state : undefined;
    const teller = await tellerFor(this.#ctx, bike === undefined ? [] : [bike]);
    if (this.#ctx.closed.aborted) return;
    this.#page.classList.remove("looking");
    this.#bike = bike;
    this.#trials = trials;
    setHidden(this.#none, bike !== undefined);
    for (const part of [...this.#page.children].slice(1)) setHidden(part as HTMLElement, bike === undefined);
    if (bike === undefined) return;
    setText(this.#of, w("trial.of", { name: describeRecord(bike, teller) }));
    if (this.#draft.order.length === 0) await this.#today();
    await this.#judge();
  }

  async #load(): Promise<void> {
    this.#draft = readTrialDraft(await this.#ctx.drafts.load(this.#name));
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
    if (id === "value") {
      this.#valueText = text;
      this.#valueFault = "";
      return this.#show();
    }
    this.#keep({ ...this.#draft, texts: { ...this.#draft.texts, [id]: text } });
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
      case "why": return this.#struck(value);
    }
  }

  async #deal(): Promise<void> {
    this.#pressed = true;
    if (Object.keys(this.#arms.faults).length > 0) {
      this.#show();
      return this.#fields.querySelector<HTMLElement>("[aria-invalid]")?.focus();
    }
    const draft = { ...this.#draft, seed: crypto.getRandomValues(new Uint32Array(1))[0] ?? 0, look: 1, looked: 0, runs: [], started: 0 };
    await this.#dealOrder(draft);
  }

  async #rideAgain(): Promise<void> {
    await this.#dealOrder({ ...this.#draft, look: this.#draft.look + 1 });
  }

  async #dealOrder(draft: TrialDraft): Promise<void> {
    const said = await this.#ctx.calc.ask("deal", dealQuestion(draft)).catch(() => undefined);
    if (said?.answer === undefined) return this.#say(w("trial.notDealt"), true);
    this.#keep({ ...draft, order: said.answer.order as readonly ArmName[], round: said.answer.round });
  }

  // startOrStop times a run. The start is kept, so that a phone that falls asleep loses nothing.
  #startOrStop(): void {
    const { started } = this.#draft;
    if (started === 0) return this.#keep({ ...this.#draft, started: Date.now() });
    this.#keep({ ...this.#draft, started: 0 });
    this.#add(Math.round((Date.now() - started) / 10) / 100);
  }

  #keepTyped(): void {
    const value = readValue(this.#valueText);
    if (value === undefined) {
      this.#valueFault = w("trial.valueFault");
      this.#show();
      return this.#value.focus();
    }
    this.#valueText = "";
    this.#add(value);
  }

  #add(value: number): void {
    const slot = nextSlot(this.#draft);
    const arm = slot === undefined ? undefined : this.#draft.order[slot];
    if (slot === undefined || arm === undefined) return;
    const warm = parse(this.#draft.texts["c"] ?? "", "temperature", "c");
    const run: Run = { slot, arm, value, why: "", wind: this.#draft.wind, c: "si" in warm ? Math.round((warm.si - 273.15) * 10) / 10 : null, at: Date.now() };
    const kept = this.#draft;
    this.#keep({ ...kept, runs: [...kept.runs, run], started: 0 });
    this.#outcome.view = { words: w("trial.kept", { run: runWords(run, kept.runs.length + 1, kept.better) }), undo: () => this.#keep({ ...kept, started: 0 }) };
  }

  #struck(why: string): void {
    const run = this.#striking;
    this.#striking = undefined;
    if (run !== undefined) this.#keep({ ...this.#draft, runs: this.#draft.runs.map((each) => (each.at === run.at ? { ...each, why } : each)) });
  }

  // unstrike counts a run again, unless another one has taken its place.
  #unstrike(run: Run): void {
    const taken = this.#draft.runs.some((each) => each.slot === run.slot && counts(each));
    if (!taken) this.#keep({ ...this.#draft, runs: this.#draft.runs.map((each) => (each.at === run.at ? { ...each, why: "" } : each)) });
  }

  // judge asks what was shown, once all dealt runs are ridden: looking earlier makes chance look like a difference.
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
    const whole = dealt && nextSlot(draft) === undefined;
    setHidden(this.#dealing, dealt);
    setHidden(this.#ride, !dealt);
    setHidden(this.#runs, !dealt);
    setHidden(this.#result, !dealt);
    this.#showDealing(draft);
    if (dealt) this.#showRide(draft, whole);
    if (dealt) this.#showRuns(draft);
    if (dealt) this.#showResult(draft, whole);
    const past = pastTrials(this.#trials, this.#rec, Date.now());
    keyed(this.#past, past.length === 0 ? [{ rec: "", line: w("trial.pastNone") }] : past, ({ rec }) => rec, () => el("li", { class: "row spread" }, el("span"), el("button", { type: "button", class: "button quiet" }, w("trial.remove"))), (node, { rec, line }) => {
      const [words, button] = node.children as unknown as [HTMLElement, HTMLButtonElement];
      setText(words, line);
      setHidden(button, rec === "");
      setAttr(button, "aria-label", w("trial.removeOf", { line }));
      button.onclick = () => void this.#remove(rec);
    });
    this.#tick(draft);
  }

  #showDealing(draft: TrialDraft): void {
    const { kind, count, ends, better, rounds } = this.#choices;
    kind.view = { name: "kind", legend: w("trial.kind"), value: draft.kind, options: (["pressure", "tyre"] as const).map((value) => ({ value, label: w(`trial.kindOf.${value}`) })) };
    count.view = { name: "count", legend: w("trial.count"), value: String(draft.count), options: plainOptions("2", "3") };
    ends.view = { name: "ends", legend: w("trial.ends"), value: draft.ends, options: (["both", "front", "rear"] as const).map((value) => ({ value, label: w(`trial.end.${value}`) })) };
    better.view = { name: "better", legend: w("trial.better"), value: draft.better, options: (["less", "more"] as const).map((value) => ({ value, label: w(`trial.betterOf.${value}`) })) };
    rounds.view = { name: "rounds", legend: w("trial.rounds"), value: String(draft.rounds), options: plainOptions("1", "2", "3") };
    setHidden(ends, draft.kind === "tyre");
    const { faults } = this.#arms;
    const shown = armsOf(draft).flatMap((name): FieldShown[] => (draft.kind === "tyre" ? [this.#armField(`${name}.name`, w("trial.tyre", { arm: name }), "", null, faults)]
      : endsOf(draft).map((side) => {
        const basis = draft.basis[side];
        return this.#armField(`${name}.${side}`, armFieldLabel(name, side), w(`unit.${this.#unit}`), basis === undefined ? w("trial.fault.none") : w("trial.range", limitsOf(basis, draft.error_kpa, this.#unit)), faults);
      })));
    keyed(this.#fields, shown, ({ id }) => id, () => new Field(), (field, view) => (field.view = view));
    setText(this.#runsHow, w("trial.roundsHow", { n: draft.rounds * (draft.count === 3 ? 9 : 4) }));
  }

  #armField(id: string, label: string, unit: string, range: string | null, faults: ArmsRead["faults"]): FieldShown {
    const side = id.endsWith("front") ? "front" : "rear";
    const why = faults[id];
    const fault = why === undefined || (!this.#pressed && (why === "missing" || why === "same")) ? "" : faultWords(why, this.#draft.basis[side], this.#draft.error_kpa, this.#unit);
    return { id, label, spoken: label, text: this.#draft.texts[id] ?? "", unit, range, fault: why === "none" ? "" : fault, signed: unit === "", step: 0 };
  }

  #showRide(draft: TrialDraft, whole: boolean): void {
    const running = draft.started > 0;
    setHidden(this.#askRun, whole);
    setText(this.#next, nextWords(draft, this.#arms.arms, this.#unit));
    setText(this.#order, orderWords(draft));
    setText(this.#start, running ? w("trial.stop") : w("trial.start"));
    setHidden(this.#start, draft.better === "more");
    setHidden(this.#drop, !running);
    const label = w(`trial.value.${draft.better}`);
    this.#value.view = { id: "value", label, spoken: label, text: this.#valueText, unit: w(`trial.unit.${draft.better}`), range: w(`trial.valueHint.${draft.better}`), fault: this.#valueFault, signed: true, step: 0 };
    this.#wind.view = { name: "wind", legend: w("trial.wind"), value: draft.wind, options: [...winds, "" as const].map((value) => ({ value, label: w(`trial.windOf.${value}`) })) };
    const warm = w("trial.temperature");
    this.#warm.view = { id: "c", label: warm, spoken: warm, text: draft.texts["c"] ?? "", unit: w("unit.c"), range: null, fault: "", signed: true, step: 0 };
  }

  #showRuns(draft: TrialDraft): void {
    const lines = runLines(draft);
    keyed(this.#list, lines.length === 0 ? [{ key: "", line: w("trial.noRuns"), struck: false, at: 0 }] : lines, ({ key }) => key, () => el("li", { class: "row spread" }, el("span"), el("button", { type: "button", class: "button quiet" })), (node, line) => this.#runLine(node, line));
    setHidden(this.#strike, this.#striking === undefined);
    if (this.#striking === undefined) this.#strike.replaceChildren();
  }

  #runLine(node: HTMLElement, { line, struck, at }: RunLine): void {
    const [words, button] = node.children as unknown as [HTMLElement, HTMLButtonElement];
    const run = this.#draft.runs.find((each) => each.at === at);
    const taken = run !== undefined && struck && this.#draft.runs.some((each) => each.slot === run.slot && counts(each));
    setText(words, line);
    words.classList.toggle("struck", struck);
    setHidden(button, run === undefined || taken || !mayStrike(this.#draft, run));
    setText(button, struck ? w("trial.unstrike") : w("trial.strike"));
    setAttr(button, "aria-label", w(struck ? "trial.unstrikeOf" : "trial.strikeOf", { run: line }));
    button.onclick = () => {
      if (run === undefined) return;
      if (struck) return this.#unstrike(run);
      this.#striking = run;
      const why = new Choice();
      why.view = { name: "why", legend: w("trial.why"), value: "", options: whys.map((value) => ({ value, label: w(`trial.whyOf.${value}`) })) };
      this.#strike.replaceChildren(el("p", {}, line), why);
      setHidden(this.#strike, false);
      why.querySelector("input")?.focus();
    };
  }

  #showResult(draft: TrialDraft, whole: boolean): void {
    const ready = whole && draft.looked < draft.look;
    const judged = whole && this.#judged?.of === draft ? this.#judged.answer : undefined;
    const shown = judged === undefined ? undefined : resultShown(judged, draft, this.#arms.arms, this.#unit);
    setText(this.#verdict, shown?.verdict ?? (ready ? w("trial.ready") : w("trial.wait", { n: draft.order.length })));
    this.#verdict.classList.toggle("waiting", shown === undefined);
    keyed(this.#lines, shown?.lines ?? [], (text) => text, () => el("li"), setText);
    const settled = judged?.best != null;
    const last = draft.look >= looks;
    setText(this.#goOn, shown === undefined || settled ? "" : last ? w("trial.lastLook") : shown.goOn);
    setText(this.#again, w("trial.again", { n: draft.rounds * draft.round }));
    setHidden(this.#lookAt, !ready);
    setHidden(this.#keepIt, shown === undefined);
    setHidden(this.#again, shown === undefined || settled || last);
  }

  // tick shows the running clock.
  #tick({ started }: TrialDraft): void {
    setHidden(this.#clock, started === 0);
    clearInterval(this.#timer);
    if (started === 0) return;
    const show = (): void => setText(this.#clock, w("trial.clock", { s: fixed((Date.now() - started) / 1000, 1) }));
    show();
    this.#timer = setInterval(show, tick);
  }

  #say(words: string, failed = false): void {
    this.#outcome.view = { words, failed };
  }

  #discard(): void {
    const kept = this.#draft;
    this.#pressed = false;
    this.#keep({ ...noTrial, texts: kept.texts, kind: kept.kind, ends: kept.ends, count: kept.count, better: kept.better, rounds: kept.rounds, basis: kept.basis, error_kpa: kept.error_kpa });
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
    const change = trialChange(draft, arms, judged, whatWords(arms, this.#unit), place, Date.now(), newRec);
    let saved: readonly RecordState[] = [];
    const fresh = { ...noTrial, kind: draft.kind, ends: draft.ends };
    const failed = await attempt(this.#ctx, async () => {
      saved = await this.#ctx.book.save([change], { name: this.#name, value: fresh });
    });
    this.#saving = false;
    if (failed !== "") return this.#say(failed, true);
    this.#draft = fresh;
    this.#pressed = false;
    await this.#lookAgain();
    const words = draft.kind === "tyre" ? w("trial.savedTyre") : judged.best === null ? w("trial.saved") : w("trial.savedShift");
    this.#outcome.view = { words, undo: () => void this.#undo(saved, draft) };
  }

  async #undo(saved: readonly RecordState[], draft: TrialDraft): Promise<void> {
    const failed = await attempt(this.#ctx, () => this.#ctx.book.remove(...saved));
    if (failed === "" && this.#draft.order.length === 0) this.#keep(draft);
    await this.#lookAgain();
    this.#say(failed || w("trial.undone"), failed !== "");
  }

  async #remove(rec: string): Promise<void> {
    const entry = this.#trials.find((each) => each.rec === rec);
    if (entry === undefined) return;
    const failed = await attempt(this.#ctx, () => this.#ctx.book.remove(entry));
    await this.#lookAgain();
    const back = async (): Promise<void> => {
      const gone = await this.#ctx.book.get(rec);
      const trouble = gone === undefined ? "" : await attempt(this.#ctx, () => this.#ctx.book.restore(gone));
      await this.#lookAgain();
      this.#say(trouble || w("trial.undone"), trouble !== "");
    };
    this.#outcome.view = failed === "" ? { words: w("trial.removed"), undo: () => void back() } : { words: failed, failed: true };
  }
}

function plainOptions(...values: readonly string[]): readonly { value: string; label: string }[] {
  return values.map((value) => ({ value, label: value }));
}

function press(kind: string, words: string, click: () => void): HTMLButtonElement {
  return el("button", { type: "button", class: kind, on: { click } }, words);
}
