// Which spares are out and with whom: what to fetch at the end of the day, and what was given out twice.

import "./car.css";
import type { Fleet } from "../../book/car/fleet.ts";
import { type Loan, lentTwice } from "../../book/car/lent.ts";
import { whoWords } from "../../book/car/load.ts";
import { backChanges } from "../../book/car/moves.ts";
import { clockWords } from "../../book/value/when.ts";
import { newRec } from "../../log/book_log.ts";
import { el } from "../../ui/el.ts";
import { keyed } from "../../ui/keyed.ts";
import { Outcome } from "../../ui/outcome.ts";
import { openPage } from "../../ui/page.ts";
import { setHidden, setText } from "../../ui/part.ts";
import type { Ctx } from "../../ui/screen.ts";
import { all, w } from "../../words/index.ts";
import { attempt, follow } from "../shared/follow.ts";
import { fleetNow } from "./car_book.ts";

export function out(host: HTMLElement, ctx: Ctx): void {
  openPage(ctx, w("lent.title"), { href: "#/car", words: w("place.car") });
  const outcome = new Outcome();
  const twice = el("ul", { class: "unmarked stack" });
  const none = el("p");
  const list = el("ul", { class: "unmarked stack" });
  host.append(el("div", { class: "stack car" }, outcome, twice, el("h2", {}, w("lent.fetch")), none, list));
  const back = async (loan: Loan, name: string): Promise<void> => {
    const { book } = ctx;
    const failed = await attempt(ctx, async () => {
      const [entry] = await book.save(backChanges(loan, newRec, Date.now()));
      const undo = (): void => void attempt(ctx, async () => entry !== undefined && book.remove(entry)).then(() => again());
      outcome.view = { words: w("lent.backDone", { spare: name }), undo };
    });
    if (failed !== "") outcome.view = { words: failed, failed: true };
    await again();
  };
  const again = follow(ctx, async () => {
    const fleet = await fleetNow(ctx);
    if (ctx.closed.aborted) return;
    const { loans } = fleet;
    setText(none, loans.length === 0 ? w("lent.none") : "");
    setHidden(none, loans.length > 0);
    keyed(list, loans, ({ out: entry }) => entry, (loan) => line(() => void back(loan, nameOf(fleet, loan))), (node, loan) => {
      const [first, second] = node.children;
      if (first !== undefined) setText(first, withWhom(fleet, loan));
      if (second !== undefined) setText(second, w("lent.since", { clock: clockWords(loan.at, Date.now()) }));
    });
    keyed(twice, lentTwice(loans), ([first]) => first?.spare ?? "", () => el("li", { class: "notice care" }), (node, group) => {
      const [first] = group;
      if (first === undefined) return;
      const names = all(group.map((loan) => whoHas(fleet, loan) || w("lent.since", { clock: clockWords(loan.at, Date.now()) })));
      node.replaceChildren(el("strong", {}, w("lent.twice")), el("p", {}, w("lent.twiceWhy", { spare: nameOf(fleet, first), list: names })));
    });
  }, (words) => (outcome.view = { words, failed: true }));
}

function line(back: () => void): HTMLLIElement {
  return el("li", { class: "card lent" }, el("span", { class: "named" }), el("span", { class: "quiet small" }), el("button", { type: "button", class: "button", on: { click: back } }, w("lent.back")));
}

function nameOf({ spares, bikes }: Fleet, { spare }: Loan): string {
  return spares.find(({ rec }) => rec === spare)?.name ?? bikes.find(({ bike }) => bike.rec === spare)?.name ?? w("recValue.unknown");
}

function whoHas({ riders }: Fleet, { bike, number }: Loan): string {
  return whoWords(riders.find((rider) => rider.bike.rec === bike)) || number;
}

function withWhom(fleet: Fleet, loan: Loan): string {
  const who = whoHas(fleet, loan);
  const spare = nameOf(fleet, loan);
  return who === "" ? w("lent.unknown", { spare }) : w("lent.line", { spare, who });
}
