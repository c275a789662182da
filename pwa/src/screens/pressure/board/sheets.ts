// The sheets of the Pressure screen. Each is made when it is opened for the first time, and shown anew only while it is open.

import type { Side } from "../../../book/pressure/answer.ts";
import type { GroundLine } from "../../../book/pressure/grounds.ts";
import type { Answered } from "../../../book/pressure/reasons.ts";
import type { ScreenView } from "../../../book/pressure/screen_view.ts";
import { el } from "../../../ui/el.ts";
import { define, listen, Part } from "../../../ui/part.ts";
import { Sheet } from "../../../ui/sheet.ts";
import { w } from "../../../words/index.ts";
import { bikeCopied, bikeOpened, Bikes, type BikesView } from "../bikes/bikes.ts";
import { Live } from "../card/live.ts";
import { whyWanted } from "../card/wheel_card.ts";
import { Ground } from "../ground/ground.ts";
import { groundWanted } from "../ground/ground_button.ts";
import { AfterRide, type AfterRideView } from "../ride/after_ride.ts";
import { type NoteLine, Notes } from "../ride/noted.ts";
import { answered } from "../setup/answers.ts";
import { Inputs, type InputState } from "../setup/inputs.ts";
import { weatherSection } from "../setup/sections.ts";
import { whyScript } from "../later.ts";
import type { Whys } from "../why/whys.ts";
import { shiftWanted } from "./adjust.ts";
import { airWanted } from "./places.ts";
import { rideWanted } from "./set_bar.ts";
import { Learnt } from "./learnt.ts";

export interface SheetsView {
  readonly screen: ScreenView;
  readonly state: InputState;
  readonly undo: string; // what was just done to the ground
  readonly bikes: BikesView;
  readonly kept: readonly GroundLine[];
  readonly notes: readonly NoteLine[];
  readonly ride: AfterRideView;
  readonly answered: Answered | undefined; // what the reasons are told of
}

interface Made {
  readonly sheet: Sheet;
  readonly show: (view: SheetsView) => void;
}

export class Sheets extends Part<SheetsView> {
  readonly #notes = new Notes();
  readonly #made: Readonly<Record<"air" | "ground" | "shift" | "ride" | "bikes" | "why", Made>> = {
    air: this.#air(), ground: this.#groundSheet(), shift: this.#shift(), ride: this.#ride(), bikes: this.#bikes(), why: this.#why(),
  };
  #side: Side = "front";

  protected override build(): void {
    this.append(...Object.values(this.#made).map(({ sheet }) => sheet.node));
    listen(this, bikeOpened, () => this.#made.bikes.sheet.close());
    listen(this, bikeCopied, () => this.#made.bikes.sheet.close());
  }

  hear(board: HTMLElement): void {
    listen(board, airWanted, () => this.#open("air", w("place.sheet")));
    listen(board, groundWanted, () => this.#open("ground", w("part.ground")));
    listen(board, shiftWanted, () => this.#open("shift", w("firm.sheet")));
    listen(board, rideWanted, () => this.#open("ride", w("ride.how")));
    listen(board, whyWanted, (side) => {
      this.#side = side;
      this.#open("why", w("part.whyOf", { side: w(`side.${side}`) }));
    });
  }

  openBikes(): void {
    this.#open("bikes", w("bikes.title"));
  }

  // noteTaken clears the field once its text is on the disk.
  noteTaken(): void {
    this.#notes.empty();
  }

  #open(name: "air" | "ground" | "shift" | "ride" | "bikes" | "why", title: string): void {
    const { sheet, show } = this.#made[name];
    sheet.open(title);
    if (this.view !== undefined) show(this.view);
  }

  protected override show(view: SheetsView): void {
    for (const { sheet, show } of Object.values(this.#made)) if (sheet.isOpen) show(view);
  }

  #air(): Made {
    const [inputs, live] = [new Inputs(), new Live()];
    return {
      sheet: new Sheet("air", () => [live, weatherSection(inputs)]),
      show: ({ screen, state }) => {
        live.view = screen.wheels;
        inputs.show(state);
      },
    };
  }

  #groundSheet(): Made {
    const [ground, live] = [new Ground(), new Live()];
    return {
      sheet: new Sheet("day-ground", () => [live, ground, answered("soft")]),
      show: ({ screen, state, undo, kept }) => {
        live.view = screen.wheels;
        ground.view = { state, undo, kept };
      },
    };
  }

  #shift(): Made {
    const learnt = new Learnt();
    return { sheet: new Sheet("learnt", () => [learnt]), show: ({ screen, state, ride }) => (learnt.view = { firm: screen.firm, moved: ride.moved, plain: state.draft.plain }) };
  }

  #ride(): Made {
    const ride = new AfterRide();
    return {
      sheet: new Sheet("ride", () => [ride, this.#notes]),
      show: (view) => {
        ride.view = view.ride;
        this.#notes.view = view.notes;
      },
    };
  }

  #bikes(): Made {
    const bikes = new Bikes();
    return {
      sheet: new Sheet("bikes", () => [el("a", { class: "button", href: "#/pressure/setup" }, w("setup.title")), bikes]),
      show: (view) => (bikes.view = view.bikes),
    };
  }

  #why(): Made {
    const host = el("div");
    let whys: Whys | undefined;
    return {
      sheet: new Sheet("why-sheet", () => [host, answered("lower")]),
      show: (view) => {
        const script = whyScript.here;
        if (script === undefined) return void whyScript.load().then(() => this.view !== undefined && this.show(this.view));
        if (whys === undefined) host.append(whys = new script.Whys());
        whys.view = { side: this.#side, answered: view.answered };
      },
    };
  }
}

define("rs-sheets", Sheets);
