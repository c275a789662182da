// The screen once started: the answer on top, the inputs folded below, the curve and its reasons.

import "./board.css";
import type { Side } from "../../../book/pressure/answer.ts";
import { maxSteps } from "../../../book/pressure/draft.ts";
import type { ScreenView } from "../../../book/pressure/screen_view.ts";
import { chosen } from "../../../ui/choice.ts";
import type { GroundLine } from "../../../book/pressure/grounds.ts";
import { el } from "../../../ui/el.ts";
import { Picker } from "../../../ui/picker.ts";
import { actName, define, listen, Part, setAttr, setHidden, setText } from "../../../ui/part.ts";
import { w } from "../../../words/index.ts";
import { bikeOpened, Bikes, type BikesView } from "../bikes/bikes.ts";
import { AfterRide } from "../ride/after_ride.ts";
import { answered } from "../setup/answers.ts";
import type { BesideView } from "../beside.ts";
import { Ground } from "../ground/ground.ts";
import { Inputs, type InputState } from "../setup/inputs.ts";
import { NoticeList } from "../card/notice_list.ts";
import { type NotedView, Notes, SetIt } from "../ride/noted.ts";
import { OpenFindings } from "../bikes/open_findings.ts";
import { fold } from "../../../ui/fold.ts";
import { gearSection, tyreSection, weatherSection, weightSection } from "../setup/sections.ts";
import { WheelCard, wanted } from "../card/wheel_card.ts";
import { printWays } from "../print/print.ts";
import { Why } from "../why/why.ts";
import { Widths } from "../setup/widths.ts";

export interface BoardView extends BesideView {
  readonly screen: ScreenView;
  readonly state: InputState;
  readonly undo: string;
  readonly bikes: BikesView;
  readonly kept: readonly GroundLine[];
  readonly noted: NotedView;
}

const afterwards = 30; // ms: the numbers are on the screen by then

export const firmed = actName<number>("rs-firmed");
export const wetted = actName<boolean>("rs-wetted");
export const renamed = actName<string>("rs-renamed");

export class Board extends Part<BoardView> {
  readonly #inputs = new Inputs();
  readonly #cards: Readonly<Record<Side, WheelCard>> = { front: new WheelCard(), rear: new WheelCard() };
  readonly #notices = new NoticeList();
  readonly #assumed = el("p", { class: "quiet small remark" });
  readonly #firm = el("p", { class: "quiet small", role: "status" });
  readonly #softer = this.#step(-1, w("button.softer"));
  readonly #firmer = this.#step(1, w("button.firmer"));
  readonly #wet = el("button", { type: "button", class: "button", on: { click: () => this.act(wetted, !this.view?.state.draft.wet) } }, w("button.wet"));
  readonly #ground = new Ground();
  readonly #why = new Why();
  readonly #bikes = new Bikes();
  readonly #picker = new Picker();
  readonly #open = new OpenFindings();
  readonly #setIt = new SetIt();
  readonly #notes = new Notes();
  readonly #ride = new AfterRide();
  readonly #widths = new Widths();
  readonly #lower = answered("lower");
  #stands = false; // the numbers were shown before
  #timer: ReturnType<typeof setTimeout> | undefined;
  readonly #name = el("input", { class: "entry", type: "text", maxlength: 60, autocomplete: "off" });

  #step(by: number, label: string): HTMLButtonElement {
    return el("button", { type: "button", class: "button", on: { click: () => this.act(firmed, by) } }, label);
  }

  protected override build(): void {
    const inputs = this.#inputs;
    this.#name.addEventListener("input", () => this.act(renamed, this.#name.value));
    listen(this, wanted, (what) => inputs.focus(`${this.#sideAsked()}.${what}`));
    const gauge = el("section", { class: "card stack" }, el("h2", {}, w("part.gauge")),
      el("div", { class: "fields" }, inputs.field("now.front", true), inputs.field("now.rear", true)), this.#setIt);
    const name = el("label", { class: "named" }, w("field.name"), this.#name);
    listen(this.#picker, chosen, ({ value }, event) => {
      event.stopPropagation();
      this.act(bikeOpened, value);
    });
    this.append(
      this.#picker, this.#open,
      el("div", { class: "pair" }, this.#cards.front, this.#cards.rear),
      this.#notices, this.#assumed,
      el("div", { class: "presses" }, this.#softer, this.#firmer, this.#wet), this.#firm, this.#lower,
      el("div", { class: "columns" },
        el("div", { class: "stack" }, gauge, this.#ground, answered("soft")),
        el("div", { class: "stack" }, weatherSection(inputs), tyreSection(inputs), weightSection(inputs), gearSection(inputs, name), fold(w("ride.title"), this.#ride, this.#notes), this.#widths, this.#bikes, printWays(), this.#why)));
  }

  // A rear without fields of its own is answered by the front's.
  #sideAsked(): Side {
    const { screen, state } = this.view ?? {};
    const front = screen?.wheels.find((each) => each.side === "front")?.wanting ?? "";
    return state?.draft.rearSame === false && front === "" ? "rear" : "front";
  }

  noteTaken(): void {
    this.#notes.empty();
  }

  protected override show({ screen, state, undo, bikes, kept, noted, ride, widths }: BoardView): void {
    // A list to choose from is of use only where there is a choice.
    setHidden(this.#picker, bikes.bikes.length < 2);
    this.#picker.view = { name: "bike", label: w("bikes.pick"), spoken: w("bikes.pick"), value: state.draft.links["bike"] ?? "", options: bikes.bikes.map(({ rec, name }) => ({ value: rec, label: name })) };
    for (const wheel of screen.wheels) this.#cards[wheel.side].view = wheel;
    this.#notices.view = screen.notices;
    setText(this.#assumed, screen.assumed);
    setHidden(this.#assumed, screen.assumed === "");
    setText(this.#firm, screen.firm);
    this.#softer.disabled = state.draft.firmness <= -maxSteps;
    this.#firmer.disabled = state.draft.firmness >= maxSteps;
    setAttr(this.#wet, "aria-pressed", state.draft.wet);
    this.#inputs.show(state);
    this.#ground.view = { state, undo, kept };
    if (this.#name.value !== state.draft.bike) this.#name.value = state.draft.bike;
    this.#setIt.view = noted;
    this.#notes.view = noted;
    this.#open.view = noted.open;
    this.#ride.view = ride;
    setHidden(this.#lower, screen.wheels.some((each) => each.number === ""));
    if (this.#stands) this.#showRest({ screen, bikes, widths });
    else this.#timer ??= setTimeout(() => {
      this.#stands = true;
      if (this.view !== undefined) this.#showRest(this.view);
    }, afterwards);
  }

  // What stands far below the numbers comes after them: curves, other widths, the other bikes.
  #showRest({ screen, bikes, widths }: Pick<BoardView, "screen" | "bikes" | "widths">): void {
    this.#why.view = screen.curves;
    this.#bikes.view = bikes;
    this.#widths.view = widths;
  }
}

define("rs-board", Board);
