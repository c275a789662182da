// The daily use on one phone's height: where one stands, two cards, softer and firmer, the ground, "I set both". All else is
// one tap away, in sheets.

import "./board.css";
import "./board_sizes.css";
import { type Side, sides } from "../../../book/pressure/answer.ts";
import type { ScreenView } from "../../../book/pressure/screen_view.ts";
import { el } from "../../../ui/el.ts";
import { define, listen, Part, setHidden, setText } from "../../../ui/part.ts";
import { NoticeList } from "../card/notice_list.ts";
import type { ReadingView } from "../card/reading_box.ts";
import { keysOpened, WheelCard } from "../card/wheel_card.ts";
import { GroundButton } from "../ground/ground_button.ts";
import { Adjust } from "./adjust.ts";
import { Places } from "./places.ts";
import { SetBar, type SetBarView } from "./set_bar.ts";
import { Sheets, type SheetsView } from "./sheets.ts";

export interface BoardView extends SheetsView {
  readonly screen: ScreenView;
  readonly readings: Readonly<Record<Side, ReadingView>>;
  readonly bar: SetBarView;
  readonly moved: string; // what the notes after rides made of the numbers
  readonly demo: string; // "" but at an invented event
}

export class Board extends Part<BoardView> {
  readonly #places = new Places();
  readonly #cards: Readonly<Record<Side, WheelCard>> = { front: new WheelCard(), rear: new WheelCard() };
  readonly #cares = new NoticeList();
  readonly #remarks = new NoticeList();
  readonly #adjust = new Adjust();
  readonly #ground = new GroundButton();
  readonly #bar = new SetBar();
  readonly #assumed = el("p", { class: "quiet small" });
  readonly #demo = el("p", { class: "small demo" });
  readonly #sheets = new Sheets();

  protected override build(): void {
    this.append(this.#places, el("div", { class: "pair" }, this.#cards.front, this.#cards.rear), this.#cares,
      el("div", { class: "day" }, this.#adjust, this.#ground, this.#bar), this.#remarks, this.#assumed, this.#demo, this.#sheets);
    listen(this, keysOpened, (side) => this.#cards[side === "front" ? "rear" : "front"].closeKeys());
    this.#sheets.hear(this);
    // A tap beside the keys puts them away, once that tap has done its own work.
    this.addEventListener("click", (event) => {
      for (const side of sides) if (event.target instanceof Node && !this.#cards[side].contains(event.target)) this.#cards[side].closeKeys();
    });
  }

  get sheets(): Sheets {
    return this.#sheets;
  }

  protected override show(view: BoardView): void {
    const { screen, readings, bar, moved, state, demo } = view;
    this.#places.view = screen.places;
    for (const wheel of screen.wheels) this.#cards[wheel.side].view = { wheel, reading: readings[wheel.side] };
    this.#cares.view = screen.notices.filter(({ severity }) => severity !== "info");
    this.#remarks.view = screen.notices.filter(({ severity }) => severity === "info");
    this.#adjust.view = { firmness: state.draft.firmness, wet: state.draft.wet, firm: screen.firm, moved };
    this.#ground.view = state.draft.ground;
    this.#bar.view = bar;
    setText(this.#assumed, screen.assumed);
    setHidden(this.#assumed, screen.assumed === "");
    setText(this.#demo, demo);
    setHidden(this.#demo, demo === "");
    this.#sheets.view = view;
  }
}

define("rs-board", Board);
