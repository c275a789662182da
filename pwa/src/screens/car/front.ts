// The front of the team car: a race number, the spare that goes in, and one press to say that it was given.

import "./car.css";
import { eyeEnd, nextQuestion } from "../../book/car/eye.ts";
import { carSides, endNow, type Fleet, matching, type Rider } from "../../book/car/fleet.ts";
import { textIn } from "../../book/car/known.ts";
import type { End } from "../../book/car/hub.ts";
import { whoWords } from "../../book/car/load.ts";
import { endWords, giveView, matchRequest, type Verdict } from "../../book/car/match.ts";
import { gaveBikeChanges, gaveChanges, type Given } from "../../book/car/moves.ts";
import { bikeLines, bikeMatchRequest } from "../../book/car/spare_bikes.ts";
import { clockWords } from "../../book/value/when.ts";
import type { Side } from "../../book/pressure/answer.ts";
import { showKpa } from "../../book/value/quantity.ts";
import { type Change, newRec } from "../../log/book_log.ts";
import { Choice, chosen } from "../../ui/choice.ts";
import { el } from "../../ui/el.ts";
import { keyed } from "../../ui/keyed.ts";
import { Outcome } from "../../ui/outcome.ts";
import { listen, setHidden, setText } from "../../ui/part.ts";
import type { RecordState } from "../../log/op/merge.ts";
import type { Ctx } from "../../ui/screen.ts";
import { w } from "../../words/index.ts";
import { attempt, follow } from "../shared/follow.ts";
import { BikeList, gaveBike } from "./bike_list.ts";
import { fleetNow } from "./car_book.ts";
import { Eye, eyeAnswered, eyeLeft } from "./eye_part.ts";
import { gaveSpare, Give, spareMissing } from "./give.ts";
import { NumberPad, padByEye, padTyped } from "./pad.ts";
import { askBikeVerdicts, askVerdicts, stoppedBikes, stoppedSpares } from "./verdicts.ts";

const whole = "bike"; // the third choice beside the two ends
const fewRiders = 6; // that are offered while the number is not whole

class Front {
  readonly #ctx: Ctx;
  readonly #name = el("input", { class: "entry", type: "search", autocomplete: "off", "aria-label": w("car.byName"), placeholder: w("car.byName"), on: { input: () => this.#typeName() } });
  readonly #who = el("h2");
  readonly #side = new Choice();
  readonly #head = el("div", { class: "row spread" }, this.#who, this.#side);
  readonly #give = new Give();
  readonly #bikes = new BikeList();
  readonly #on = el("p", { class: "notice" });
  readonly #riders = el("ul", { class: "unmarked car-riders" });
  readonly #state = el("p", { class: "quiet", role: "status" });
  readonly #outcome = new Outcome();
  readonly #eye = new Eye();
  readonly #pad = new NumberPad();
  readonly #next = el("button", { type: "button", class: "button big", on: { click: () => this.#clear() } }, w("car.next"));
  readonly #card = el("a", { class: "button" }, w("car.open"));
  readonly #again: () => Promise<void>;
  #fleet: Fleet | undefined;
  #stopped: ReadonlySet<string> = new Set();
  #stoppedBikes: ReadonlySet<string> = new Set();
  #measures: readonly RecordState[] = [];
  #typed = "";
  #picked = ""; // a rider's bike, chosen from the list
  #at: Side | typeof whole = "rear";
  #eyes = false;
  #missing = new Set<string>();
  #round = 0;

  constructor(host: HTMLElement, ctx: Ctx) {
    this.#ctx = ctx;
    const link = (page: string, words: string): HTMLElement => el("a", { class: "button", href: `#/car/${page}` }, words);
    this.#pad.view = "";
    for (const node of [this.#eye, this.#head, this.#on, this.#give, this.#bikes, this.#card, this.#next]) setHidden(node, true);
    host.append(el("div", { class: "stack car car-front" },
      el("div", { class: "stack car-result" }, this.#outcome, this.#head, this.#on, this.#give, this.#bikes, this.#eye, this.#state, this.#riders, this.#card, this.#next), this.#pad, this.#name,
      el("nav", { class: "row", "aria-label": w("place.car") }, link("out", w("lent.title")), link("spares", w("spares.title")), link("tags", w("tags.title")),
        link("morning", w("morning.title")), link("load", w("load.title")), link("event", w("event.title")), link("gas", w("gas.title")))));
    listen(host, padTyped, (typed) => this.#type(typed), ctx.closed);
    listen(host, padByEye, () => this.#byEye(true), ctx.closed);
    listen(host, eyeLeft, () => this.#byEye(false), ctx.closed);
    listen(host, eyeAnswered, () => void this.#look(), ctx.closed);
    listen(host, chosen, ({ value }) => this.#turn(value === "front" || value === whole ? value : "rear"), ctx.closed);
    listen(host, gaveSpare, (rec) => void this.#gaveWheel(rec), ctx.closed);
    listen(host, gaveBike, (rec) => void this.#gaveBike(rec), ctx.closed);
    listen(host, spareMissing, (rec) => this.#notThere(rec), ctx.closed);
    document.addEventListener("keydown", (event) => this.#key(event), { signal: ctx.closed });
    this.#again = follow(ctx, () => this.#read(), (words) => setText(this.#state, words));
  }

  async #read(): Promise<void> {
    this.#fleet = await fleetNow(this.#ctx);
    [this.#stopped, this.#stoppedBikes, this.#measures] = await Promise.all([stoppedSpares(this.#ctx, this.#fleet), stoppedBikes(this.#ctx, this.#fleet), this.#ctx.book.all("measure")]);
    if (!this.#ctx.closed.aborted) await this.#look();
  }

  #key(event: KeyboardEvent): void {
    if (event.target instanceof HTMLInputElement || event.ctrlKey || event.metaKey || event.altKey) return;
    if (!this.#eyes && this.#pad.press(event.key)) event.preventDefault();
  }

  #type(typed: string): void {
    this.#typed = typed;
    this.#name.value = "";
    this.#begin();
  }

  #typeName(): void {
    this.#typed = this.#name.value;
    this.#pad.view = "";
    this.#begin();
  }

  // begin forgets what belonged to the number before.
  #begin(): void {
    this.#picked = "";
    this.#missing = new Set();
    this.#outcome.view = { words: "" };
    void this.#look();
  }

  // clear makes room for the next number.
  #clear(): void {
    this.#eyes = false;
    this.#typed = "";
    this.#pad.view = "";
    this.#name.value = "";
    this.#begin();
  }

  #byEye(eyes: boolean): void {
    this.#eyes = eyes;
    this.#eye.begin();
    this.#begin();
  }

  #turn(at: Side | typeof whole): void {
    this.#at = at;
    this.#missing = new Set();
    void this.#look();
  }

  #notThere(rec: string): void {
    this.#missing.add(rec);
    void this.#look();
  }

  // found is the one rider that is meant: the one who was picked, or whose number is whole while no other begins with it. The keys
  // go once it is found, so it must not be found in the middle of a longer number.
  #found(): Rider | undefined {
    const riders = matching(this.#fleet?.riders ?? [], this.#typed);
    const [first] = riders;
    return riders.find(({ bike }) => bike.rec === this.#picked) ?? (riders.length === 1 && first?.number === this.#typed.trim() ? first : undefined);
  }

  async #look(): Promise<void> {
    const fleet = this.#fleet;
    if (fleet === undefined) return;
    const rider = this.#eyes ? undefined : this.#found();
    const eyeDone = this.#eyes && nextQuestion(this.#eye.view ?? {}) === undefined;
    this.#frame(fleet, rider, eyeDone);
    const round = ++this.#round;
    const stays = (): boolean => round === this.#round && !this.#ctx.closed.aborted;
    if (rider !== undefined && this.#at === whole) return this.#lookBikes(fleet, rider, stays);
    const end = eyeDone ? eyeEnd(this.#eye.view ?? {}) : rider === undefined || this.#at === whole ? undefined : endNow(rider, this.#at);
    if (end === undefined) return;
    this.#show(end, rider, undefined);
    const verdicts = await askVerdicts(this.#ctx, matchRequest(end, fleet.spares, this.#stopped));
    if (stays() && verdicts !== undefined) this.#show(end, rider, verdicts);
    if (stays() && fleet.bikes.length > 0 && verdicts?.every(({ fits }) => fits === "no") === true) await this.#lookBikes(fleet, rider, stays); // where no wheel helps, a whole bike may
  }

  async #lookBikes(fleet: Fleet, rider: Rider | undefined, stays: () => boolean): Promise<void> {
    const question = bikeMatchRequest(rider, fleet.bikes, this.#measures, this.#stoppedBikes);
    const verdicts = await askBikeVerdicts(this.#ctx, question);
    if (!stays() || verdicts === undefined) return;
    this.#bikes.view = { who: whoWords(rider), lines: bikeLines(verdicts, question.bike, fleet.bikes, Date.now()) };
    setHidden(this.#bikes, false);
  }

  #frame(fleet: Fleet, rider: Rider | undefined, eyeDone: boolean): void {
    const riders = this.#eyes || rider !== undefined ? [] : matching(fleet.riders, this.#typed);
    setHidden(this.#head, rider === undefined && !eyeDone);
    setHidden(this.#side, rider === undefined);
    setHidden(this.#give, (rider === undefined && !eyeDone) || (rider !== undefined && this.#at === whole));
    setHidden(this.#bikes, true);
    const on = rider?.on;
    setText(this.#on, on?.loan === undefined ? "" : w("spareBike.on", { spare: on.name, clock: clockWords(on.loan.at, Date.now()) }));
    setHidden(this.#on, on === undefined);
    setHidden(this.#eye, !this.#eyes || eyeDone);
    setHidden(this.#pad, this.#eyes || rider !== undefined);
    setHidden(this.#next, rider === undefined && !eyeDone);
    setHidden(this.#name, this.#eyes || rider !== undefined);
    setHidden(this.#card, rider === undefined);
    if (rider !== undefined) this.#card.href = `#/car/card/${rider.bike.rec}`;
    setText(this.#who, eyeDone ? w("eye.title") : whoWords(rider));
    this.#side.view = {
      name: "side", legend: w("car.side"), value: this.#at, options: [...carSides.map((value) => ({ value, label: w(`side.${value}`) })), { value: whole, label: w("spareBike.one") }],
    };
    setText(this.#state, this.#hint(fleet, riders.length, rider));
    keyed(this.#riders, riders.slice(0, fewRiders), ({ bike }) => bike.rec, ({ bike }) => this.#offer(bike.rec), (node, each) => {
      const button = node.firstElementChild;
      if (button !== null) setText(button, whoWords(each) || each.bikeName);
    });
  }

  #offer(rec: string): HTMLLIElement {
    const pick = (): void => {
      this.#picked = rec;
      void this.#look();
    };
    return el("li", {}, el("button", { type: "button", class: "button big", on: { click: pick } }));
  }

  #hint(fleet: Fleet, offered: number, rider: Rider | undefined): string {
    if (fleet.spares.length + fleet.bikes.length === 0) return w("car.noSpares");
    if (fleet.riders.length === 0) return w("car.noRiders");
    if (this.#eyes || rider !== undefined || offered > 0 || this.#typed.trim() === "") return "";
    return /^\d+$/.test(this.#typed.trim()) ? w("car.none") : w("car.noneNamed");
  }

  #show(end: End, rider: Rider | undefined, verdicts: readonly Verdict[] | undefined): void {
    const { units } = this.#ctx.settings;
    const pressure = (kpa: number): string => w("value.with", { value: showKpa(kpa, units), unit: w(`unit.${units}`) });
    const view = verdicts === undefined ? undefined : giveView(verdicts, this.#fleet?.spares ?? [], this.#missing, pressure, Date.now());
    this.#give.view = { who: whoWords(rider), end: endWords(end), view };
  }

  async #gaveWheel(rec: string): Promise<void> {
    const spare = this.#fleet?.spares.find((each) => each.rec === rec);
    if (spare !== undefined) await this.#gave(spare.name, (given) => gaveChanges(spare, given, newRec, Date.now()));
  }

  async #gaveBike(rec: string): Promise<void> {
    const spare = this.#fleet?.bikes.find(({ bike }) => bike.rec === rec);
    if (spare !== undefined) await this.#gave(spare.name, (given) => gaveBikeChanges(spare, given, newRec, Date.now()));
  }

  async #gave(spare: string, changes: (given: Given) => readonly Change[]): Promise<void> {
    const rider = this.#eyes ? undefined : this.#found();
    const { book } = this.#ctx;
    const failed = await attempt(this.#ctx, async () => {
      const [entry] = await book.save(changes({ rider, number: rider?.number ?? "", place: "", event: textIn(rider?.bike, "event") }));
      const undo = (): void => void attempt(this.#ctx, async () => entry !== undefined && book.remove(entry)).then(() => this.#again());
      const words = rider === undefined ? w("car.gaveUnknown", { spare }) : w("car.gaveDone", { spare, who: whoWords(rider) });
      this.#clear();
      this.#outcome.view = { words, undo };
    });
    if (failed !== "") this.#outcome.view = { words: failed, failed: true };
    await this.#again();
  }
}

export function front(host: HTMLElement, ctx: Ctx): void {
  new Front(host, ctx);
}
