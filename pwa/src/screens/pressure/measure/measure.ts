// Measures the ground with the phone: what it needs, a countdown, the record, and the result with what it changes.

import "./measure.css";
import { type PressureAnswer, type Side, sides } from "../../../book/pressure/answer.ts";
import { groundQuestion, isMeasured, keptChange, type Measured, stretchOf, tyrePressure, withGround } from "../../../book/pressure/measured.ts";
import { parse, showKpa } from "../../../book/value/quantity.ts";
import { newRec } from "../../../log/book_log.ts";
import { Choice, chosen } from "../../../ui/choice.ts";
import { el } from "../../../ui/el.ts";
import { handOver } from "../../../ui/hand_over.ts";
import { listen, setHidden, setText } from "../../../ui/part.ts";
import { fixed } from "../../../words/number.ts";
import { w } from "../../../words/index.ts";
import type { FurtherMeans } from "../ground/ground_desk.ts";
import { allowed, csvOf, Felt, type Sample, Speeds } from "./felt.ts";

const wait = 15; // s, to get going from where one stood
const lasts = 45; // s
const silentAfter = 2000; // ms without a word from the sensor
const mostMisfit = 0.5; // as calc/ground takes it

const button = (words: string, press: () => void): HTMLButtonElement => el("button", { type: "button", class: "button", on: { click: press } }, words);

// begin puts the measuring into its place.
export function begin(host: HTMLElement, means: FurtherMeans): void {
  const ended = new AbortController();
  means.closed.addEventListener("abort", () => ended.abort());
  host.replaceChildren(new Measuring(means, ended.signal).node);
}

class Measuring {
  readonly node = el("section", { class: "card stack measuring" });
  readonly #means: FurtherMeans;
  readonly #off: AbortSignal;
  readonly #speed = el("input", { class: "entry", type: "text", inputmode: "decimal", autocomplete: "off" });
  readonly #said = el("p", { role: "status" });
  readonly #place = el("p", { class: "small", role: "status" });
  readonly #mount = new Choice();
  readonly #stage = el("div", { class: "stack" });
  #on: "bar" | "frame" = "bar";
  #speeds: Speeds | undefined;
  #running: AbortController | undefined;

  constructor(means: FurtherMeans, off: AbortSignal) {
    this.#means = means;
    this.#off = off;
    off.addEventListener("abort", () => this.#running?.abort());
    // What is chosen here is no part of the day's draft.
    listen(this.node, chosen, ({ value }, event) => {
      event.stopPropagation();
      this.#on = value === "frame" ? "frame" : "bar";
      this.#showMount();
    });
    this.#showMount();
    this.node.append(el("h3", {}, w("gm.title")), el("p", {}, w("gm.why")), el("p", {}, w("gm.care")), this.#said, this.#stage, el("p", { class: "small quiet" }, w("gm.tested")));
    this.#ask();
  }

  #showMount(): void {
    this.#mount.view = { name: "gm.mount", legend: w("gm.mount"), value: this.#on, options: (["bar", "frame"] as const).map((value) => ({ value, label: w(`gm.mount.${value}`) })) };
  }

  #ask(): void {
    const { body, answer } = this.#means.sums();
    if (body === undefined || answer === undefined || pressures(this.#means) === undefined) {
      this.#stage.replaceChildren(el("p", {}, w("gm.noBike")));
      return;
    }
    const kpa = pressures(this.#means);
    const shown = (side: Side): string => `${showKpa(kpa?.[side] ?? 0, this.#means.unit())} ${w(`unit.${this.#means.unit()}`)}`;
    this.#stage.replaceChildren(this.#mount,
      el("label", { class: "named" }, w("gm.speed"), this.#speed), button(w("gm.locate"), () => this.#locate()), this.#place,
      el("p", { class: "small" }, w("gm.with", { front: shown("front"), rear: shown("rear") })), el("p", { class: "small quiet" }, w("gm.bars")),
      button(w("gm.start", { n: wait }), () => void this.#start()));
  }

  #locate(): void {
    setText(this.#place, w("gm.locating"));
    this.#speeds ??= new Speeds((kmh) => setText(this.#place, kmh === undefined ? w("gm.noPlace") : w("gm.located", { kmh: fixed(kmh, 0) })), this.#off);
  }

  // kmh is the typed speed, where one that can be was typed.
  #kmh(): number | undefined {
    const parsed = parse(this.#speed.value, "speed", "km/h");
    const kmh = "si" in parsed ? parsed.si * 3.6 : 0;
    return kmh >= 6 && kmh <= 60 ? kmh : undefined;
  }

  async #start(): Promise<void> {
    if (this.#kmh() === undefined && this.#speeds === undefined) {
      setText(this.#said, w("gm.speedNeeded"));
      return this.#speed.focus();
    }
    setText(this.#said, w("gm.asking"));
    if (!(await allowed())) return setText(this.#said, w("gm.refused"));
    this.#running = new AbortController();
    void this.#run(new Felt(this.#running.signal), this.#running);
  }

  async #run(felt: Felt, running: AbortController): Promise<void> {
    const meter = el("meter", { min: 0, max: 20, "aria-label": w("gm.level") });
    let stopped = false;
    const stop = button(w("gm.cancel"), () => (stopped = true));
    this.#stage.replaceChildren(el("p", {}, w("gm.level"), " ", meter), stop);
    const lock = await navigator.wakeLock?.request("screen").catch(() => undefined);
    const begun = performance.now();
    let recording = false;
    await new Promise<void>((done) => {
      const turn = setInterval(() => {
        const seconds = (performance.now() - begun) / 1000;
        meter.value = felt.level;
        if (!recording && seconds >= wait) {
          recording = true;
          felt.keep();
          setText(stop, w("gm.stop"));
        }
        const silent = !felt.any && seconds * 1000 > silentAfter;
        setText(this.#said, recording ? w("gm.left", { n: Math.max(0, Math.ceil(wait + lasts - seconds)) }) : w("gm.in", { n: Math.max(0, Math.ceil(wait - seconds)) }));
        if (stopped || silent || seconds >= wait + lasts || running.signal.aborted) {
          clearInterval(turn);
          done();
        }
      }, 100);
    });
    running.abort();
    void lock?.release().catch(() => undefined);
    if (this.#off.aborted) return;
    if (!felt.any) {
      this.#ask();
      return setText(this.#said, w("gm.silent"));
    }
    if (!recording) {
      this.#ask();
      return setText(this.#said, "");
    }
    await this.#judge(felt.samples);
  }

  async #judge(samples: readonly Sample[]): Promise<void> {
    setText(this.#said, w("gm.working"));
    const { body, answer } = this.#means.sums();
    const [from, to] = [samples[0]?.[0] ?? 0, samples[samples.length - 1]?.[0] ?? 0];
    const speeds = (this.#speeds?.list ?? []).filter(([ms]) => ms >= from && ms <= to);
    const typed = this.#kmh();
    const speed = speeds.length > 1 || typed === undefined ? { speeds } : { kmh: typed };
    const csv = button(w("gm.csv"), () => void handOver(new File([csvOf(samples, speeds)], "ground.csv", { type: "text/csv" })));
    const again = button(w("gm.again"), () => {
      setText(this.#said, "");
      this.#ask();
    });
    const question = body === undefined || answer === undefined || samples.length === 0 ? undefined : groundQuestion(body, answer, { samples, ...speed, mount: this.#on });
    try {
      const result = question === undefined ? undefined : await this.#means.calc.ask("ground", question);
      const found = result?.answer;
      if (found === undefined) throw new Error("no answer");
      if (!isMeasured(found)) {
        setText(this.#said, w(`gm.no.${found.refused ?? "loose"}`));
        this.#stage.replaceChildren(again, csv);
        return;
      }
      const kmh = typed ?? speeds.reduce((sum, [, each]) => sum + each, 0) / speeds.length;
      await this.#result(found, kmh, [again, csv]);
    } catch {
      setText(this.#said, w("gm.failed"));
      this.#stage.replaceChildren(again, csv);
    }
  }

  async #result(found: Measured, kmh: number, more: readonly Node[]): Promise<void> {
    const stretch = stretchOf(found, kmh);
    const name = el("input", { class: "entry", type: "text", maxlength: 80, autocomplete: "off" });
    const kept = el("p", { role: "status" });
    const { ground } = this.#means.draft();
    const uses = ground.map(({ id }, n) => button(w("gm.use", { n: n + 1 }), () => {
      this.#means.use(id, stretch);
      setText(kept, w("gm.used", { n: n + 1 }));
    }));
    setText(this.#said, w("gm.result", { gd0: stretch.gd0, low: stretch.low ?? "", high: stretch.high ?? "" }));
    const changes = el("div", { class: "stack" });
    this.#stage.replaceChildren(
      el("p", {}, found.kind === null ? "" : w("gm.like", { kind: w(`kind.${found.kind}`) })), el("p", { class: "small quiet" }, w("gm.unit", { letter: found.class ?? "" })),
      el("p", { class: "small quiet" }, w("gm.misfit", { misfit: fixed(found.misfit ?? 0, 2), most: fixed(mostMisfit, 2) })),
      changes, ...uses, el("label", { class: "named" }, w("gm.name"), name), button(w("gm.keep"), () => void this.#keep(name, kept, stretch)), kept, ...more);
    changes.append(...(await this.#changes(found, kmh)));
    setHidden(changes, changes.childElementCount === 0);
  }

  // changes tell what the first stretch as measured does to each number, and to its likely band.
  async #changes(found: Measured, kmh: number): Promise<readonly Node[]> {
    const { body, answer } = this.#means.sums();
    if (body === undefined || answer === undefined) return [];
    const { answer: after } = await this.#means.calc.ask("pressure", withGround(body, 0, found, kmh));
    return after === undefined ? [] : sides.flatMap((side) => {
      const line = this.#change(side, answer, after);
      return line === "" ? [] : [el("p", {}, line)];
    });
  }

  #change(side: Side, before: PressureAnswer, after: PressureAnswer): string {
    const [old, now] = [before[side], after[side]];
    if (old.recommended_kpa === null || now.recommended_kpa === null || old.likely_kpa === null || now.likely_kpa === null) return "";
    const unit = this.#means.unit();
    const shown = (kpa: number): string => showKpa(kpa, unit);
    return w("gm.band", {
      side: w(`side.${side}`), now: `${shown(now.recommended_kpa)} ${w(`unit.${unit}`)}`, before: shown(old.recommended_kpa),
      low: shown(now.likely_kpa[0]), high: shown(now.likely_kpa[1]), oldLow: shown(old.likely_kpa[0]), oldHigh: shown(old.likely_kpa[1]),
    });
  }

  async #keep(name: HTMLInputElement, said: HTMLElement, stretch: ReturnType<typeof stretchOf>): Promise<void> {
    const words = name.value.trim();
    const kpa = pressures(this.#means);
    if (words === "" || kpa === undefined) return name.focus();
    const day = new Date(Date.now() - new Date().getTimezoneOffset() * 60_000).toISOString().slice(0, 10);
    if (await this.#means.keep(keptChange(newRec(), words, day, this.#means.draft().links["bike"], stretch, kpa), words)) setText(said, w("gm.kept", { name: words }));
  }
}

// pressures are those in the tyres, where they are known or said.
function pressures(means: FurtherMeans): Readonly<Record<Side, number>> | undefined {
  const { body, answer } = means.sums();
  if (body === undefined || answer === undefined) return undefined;
  const [front, rear] = sides.map((side) => tyrePressure(body, answer, side));
  return front === undefined || rear === undefined ? undefined : { front, rear };
}
