// How the book stands: is everything saved, here and on the server, and what waits for a person.

import "./book_card.css";
import { clockWarning, phaseWords, statusLine } from "../../book/settings/sync_view.ts";
import { isOutside, type SyncState } from "../../log/sync/sync.ts";
import { el } from "../../ui/el.ts";
import { define, Part, setHidden, setText } from "../../ui/part.ts";
import type { Ctx, Saving } from "../../ui/screen.ts";
import { w } from "../../words/index.ts";
import { doublesIn } from "../../book/wheels/swap.ts";
import { attempt, follow } from "../shared/follow.ts";

interface BookView {
  readonly sync: SyncState;
  readonly saving: Saving;
  readonly clashes: number;
  readonly now: number;
  readonly failed: string;
  readonly takeOther: () => void;
}

class BookCard extends Part<BookView> {
  readonly #line = el("p", { class: "line" });
  readonly #phase = el("p", { class: "quiet" });
  readonly #clock = el("p", { class: "notice care" });
  readonly #room = el("p", { class: "notice care" }, w("book.noRoom"));
  readonly #take = el("button", { type: "button", class: "button" }, w("book.openOther"));
  readonly #failed = el("p", { role: "alert" });
  readonly #other = el("div", { class: "notice care stack" }, el("p", {}, w("book.other")), el("p", {}, this.#take), this.#failed);
  readonly #clashes = way("#/settings/clashes");
  readonly #held = way("#/settings/erasures");
  readonly #heldLine = el("li", {}, this.#held);
  readonly #refused = way("#/settings/refused");
  readonly #phones = way("#/settings/phones");

  protected override build(): void {
    this.append(el("section", { class: "card stack" },
      el("h2", {}, w("book.title")), el("div", { class: "says" }, this.#line, this.#phase), this.#clock, this.#room, this.#other,
      el("ul", { class: "ways" }, this.#heldLine, ...[this.#clashes, this.#refused, this.#phones, way("#/settings/records", w("book.records")), way("#/settings/books", w("book.books"))]
        .map((link) => el("li", {}, link)))));
  }

  protected override show({ sync, saving, clashes, now, failed, takeOther }: BookView): void {
    const saves = saving === "saved" || saving === "saving";
    setText(this.#line, saves ? statusLine(sync, now) : w(`status.cannot.${saving}`));
    setText(this.#phase, phaseWords(sync));
    setText(this.#clock, clockWarning(sync));
    setHidden(this.#clock, sync.clockOff === 0);
    setHidden(this.#room, sync.trouble === undefined || !saves); // one refusal is told once
    setHidden(this.#other, sync.phase !== "otherBook");
    setText(this.#failed, failed);
    this.#take.onclick = takeOther;
    say(this.#clashes, w("book.clashes", { n: clashes }));
    say(this.#held, w("book.held", { n: sync.held }));
    setHidden(this.#heldLine, sync.held === 0);
    this.#held.classList.add("waits");
    say(this.#refused, w("book.refused", { n: sync.rejected }));
    say(this.#phones, w(isOutside(sync) ? "book.pair" : "book.phones"));
    this.#phones.classList.toggle("waits", isOutside(sync));
    this.#clashes.classList.toggle("waits", clashes > 0);
    this.#refused.classList.toggle("waits", sync.rejected > 0);
  }
}

function way(href: string, words = ""): HTMLAnchorElement {
  return el("a", { class: "way", href }, el("span", {}, words));
}

function say(link: HTMLAnchorElement, words: string): void {
  if (link.firstChild !== null) setText(link.firstChild, words);
}

const minute = 60_000;

// bookCard keeps a card up to date while its screen is open.
export function bookCard(ctx: Ctx): HTMLElement {
  const card = new BookCard();
  let clashes = 0;
  let failed = "";
  const show = (): void => {
    if (!ctx.closed.aborted) card.view = { sync: ctx.sync.state, saving: ctx.saving, clashes, now: Date.now(), failed, takeOther: () => void takeOther() };
  };
  const takeOther = async (): Promise<void> => {
    failed = await attempt(ctx, () => ctx.sync.takeBook(ctx.sync.state.otherBook));
    if (failed === "") location.reload();
    else show();
  };
  show();
  follow(ctx, async () => {
    clashes = (await ctx.book.clashing()).length + doublesIn(await ctx.book.all("bike")).length;
    show();
  }, show); // the status line tells of a refusal
  ctx.closed.addEventListener("abort", ctx.sync.on(show));
  ctx.onSaving(show);
  const clock = setInterval(show, minute);
  ctx.closed.addEventListener("abort", () => clearInterval(clock));
  return card;
}

define("rs-book-card", BookCard);
