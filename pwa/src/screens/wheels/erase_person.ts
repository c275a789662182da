// Erasing a person: everything that goes is told first, what has to be decided is asked, and one word typed does it all
// as one.

import "./erase_person.css";
import { type ErasePlan, erasePlan, erasing, type Offer, opsIn } from "../../book/settings/erase_person.ts";
import { describeRecord, type Teller } from "../../book/value/record_words.ts";
import type { RecordState } from "../../log/op/merge.ts";
import { el } from "../../ui/el.ts";
import { openPage } from "../../ui/page.ts";
import { setHidden, setText } from "../../ui/part.ts";
import type { Ctx } from "../../ui/screen.ts";
import { w } from "../../words/index.ts";
import { attempt, follow, tellerFor } from "../shared/follow.ts";
import { EraseForm } from "../shared/erase_form.ts";
import { goesCard, OfferCard, reachCard, staysCard } from "./erase_person_cards.ts";

class ErasePerson {
  readonly #ctx: Ctx;
  readonly #rec: string;
  readonly #intro = el("p", { role: "status" });
  readonly #goes = el("div");
  readonly #offers = new OfferCard((offer, ticked) => this.#tick(offer, ticked));
  readonly #stays = el("div");
  readonly #form = new EraseForm(() => void this.#erase());
  readonly #page = el("div", { class: "stack looking erase-person" });
  readonly #ticks = new Map<string, boolean>(); // what the person changed
  readonly #again: () => Promise<void>;
  #plan: ErasePlan | undefined;
  #teller: Teller | undefined;
  #goesFor = ""; // the records that the card names
  #erasedAt = 0; // ms; 0: not yet

  constructor(host: HTMLElement, ctx: Ctx, rec: string) {
    this.#ctx = ctx;
    this.#rec = rec;
    openPage(ctx, w("forget.title"), { href: "#/wheels", words: w("place.wheels") });
    this.#page.append(el("section", { class: "card" }, this.#intro), this.#goes, this.#offers.node, this.#stays, reachCard(), this.#form.node);
    host.append(this.#page);
    this.#again = follow(ctx, () => this.#look(), (words) => this.#form.say(words));
    ctx.closed.addEventListener("abort", ctx.sync.on(() => this.#tellDone()));
  }

  async #look(): Promise<void> {
    const { book } = this.#ctx;
    await book.ready;
    const [states, copy, person] = await Promise.all([book.everything(), book.exportText(), book.get(this.#rec)]);
    const teller = await tellerFor(this.#ctx, states);
    if (this.#ctx.closed.aborted) return;
    this.#page.classList.remove("looking");
    this.#teller = teller;
    this.#plan = person?.kind === "person" ? erasePlan(person, states, opsIn(copy)) : undefined;
    this.#show();
  }

  #show(): void {
    const [plan, teller] = [this.#plan, this.#teller];
    const left = plan !== undefined && (!plan.person.erased || plan.entries.length + plan.offers.length > 0);
    setHidden(this.#form.node, !left);
    if (plan === undefined || teller === undefined) return setText(this.#intro, w("forget.unknown"));
    const { person } = plan;
    this.#ctx.heading(person.erased ? w("forget.title") : w("forget.named", { name: teller.nameOf(person.rec) }));
    if (this.#erasedAt === 0) setText(this.#intro, !person.erased ? w("forget.intro") : left ? w("forget.again") : w("forget.nothing"));
    const { gone, changes } = erasing(plan, (offer) => this.#isTicked(offer));
    this.#showGone(person, gone, teller);
    this.#offers.show(plan.offers.map((offer) => ({ offer, ticked: this.#isTicked(offer), name: describeRecord(offer.about, teller) })));
    this.#stays.replaceChildren(staysCard(changes.map(({ rec }) => teller.nameOf(rec))));
    this.#tellDone();
  }

  // showGone leaves the card alone, with what is unfolded there, while it names the same records.
  #showGone(person: RecordState, gone: readonly RecordState[], teller: Teller): void {
    const recs = gone.map(({ rec }) => rec).join();
    if (recs === this.#goesFor) return;
    this.#goesFor = recs;
    setHidden(this.#goes, gone.length === 0);
    this.#goes.replaceChildren(...(gone.length > 0 ? [goesCard(person, gone, teller)] : []));
  }

  #isTicked({ key, ticked }: Offer): boolean {
    return this.#ticks.get(key) ?? ticked;
  }

  #tick({ key }: Offer, ticked: boolean): void {
    this.#ticks.set(key, ticked);
    this.#show();
  }

  async #erase(): Promise<void> {
    const { book, drafts } = this.#ctx;
    await this.#again(); // what came meanwhile is told of, and goes too
    const plan = this.#plan;
    if (plan === undefined) return;
    const { gone, changes } = erasing(plan, (offer) => this.#isTicked(offer));
    const now = Date.now();
    const failed = await attempt(this.#ctx, async () => {
      await book.eraseAll(gone, changes);
      if (book.me === this.#rec) await book.setMe("");
      await drafts.save("wheels-search", ""); // it may hold their name
    });
    this.#form.end(failed);
    if (failed !== "") return;
    this.#erasedAt = now;
    this.#tellDone();
    await this.#again();
    this.#intro.scrollIntoView({ block: "center" });
  }

  // tellDone says how far it has come.
  #tellDone(): void {
    if (this.#erasedAt === 0) return;
    const { unsent, held, lastMet = 0 } = this.#ctx.sync.state;
    setText(this.#intro, lastMet >= this.#erasedAt && unsent === 0 ? w("forget.doneMet") : w(held > 0 ? "forget.waits" : "forget.done"));
  }
}

export function erasePerson(host: HTMLElement, ctx: Ctx): void {
  new ErasePerson(host, ctx, ctx.path[1] ?? "");
}
