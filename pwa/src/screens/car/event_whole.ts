// One event of the book: what it holds, a file of all of it, and erasing all of it for good.

import "./car.css";
import { type EventWhole, eventName, linesOf, wholeOf } from "../../book/car/event_whole.ts";
import { kindWords } from "../../book/value/kind_words.ts";
import { el } from "../../ui/el.ts";
import { handOver } from "../../ui/hand_over.ts";
import { keyed } from "../../ui/keyed.ts";
import { Outcome } from "../../ui/outcome.ts";
import { openPage } from "../../ui/page.ts";
import { setHidden, setText } from "../../ui/part.ts";
import type { Ctx } from "../../ui/screen.ts";
import { w } from "../../words/index.ts";
import { EraseForm } from "../shared/erase_form.ts";
import { attempt, follow } from "../shared/follow.ts";

class EventWholePage {
  readonly #ctx: Ctx;
  readonly #rec: string;
  readonly #outcome = new Outcome();
  readonly #intro = el("p", { role: "status" });
  readonly #kinds = el("ul", { class: "unmarked" });
  readonly #form = new EraseForm(() => void this.#erase());
  readonly #body: HTMLElement;
  readonly #again: () => Promise<void>;
  #whole: EventWhole | undefined;
  #gone = false;

  constructor(host: HTMLElement, ctx: Ctx, rec: string) {
    this.#ctx = ctx;
    this.#rec = rec;
    openPage(ctx, w("recKind.event"), { href: "#/car/event", words: w("event.title") });
    this.#body = el("div", { class: "stack" },
      el("section", { class: "card stack" }, el("h2", {}, w("eventWhole.holds")), this.#kinds, el("p", { class: "small quiet" }, w("eventWhole.stays")),
        el("div", { class: "row" }, el("button", { type: "button", class: "button", on: { click: () => void this.#export() } }, w("eventWhole.export"))),
        el("p", { class: "small quiet" }, w("eventWhole.file"))),
      el("section", { class: "stack" }, el("h2", {}, w("eventWhole.erase")), el("p", {}, w("eventWhole.erasing")), el("h3", {}, w("forget.reach")), el("ul", { class: "unmarked stack" }, ...[w("forget.files"), w("forget.never"), w("forget.late")].map((words) => el("li", {}, words))), this.#form.node));
    setHidden(this.#body, true);
    host.append(el("div", { class: "stack car" }, this.#outcome, this.#intro, this.#body));
    this.#again = follow(ctx, () => this.#look(), (words) => this.#form.say(words));
  }

  async #look(): Promise<void> {
    const { book } = this.#ctx;
    await book.ready;
    const [states, event] = await Promise.all([book.everything(), book.get(this.#rec)]);
    if (this.#ctx.closed.aborted) return;
    this.#whole = event?.kind === "event" && !event.erased ? wholeOf(event, states) : undefined;
    setHidden(this.#body, this.#whole === undefined);
    if (this.#whole === undefined) return setText(this.#intro, this.#gone ? w("eventWhole.gone") : w("eventWhole.unknown"));
    const { event: found, riders, records } = this.#whole;
    this.#ctx.heading(eventName(found) || w("recKind.event"));
    setText(this.#intro, w("event.count", { n: riders }));
    const count = new Map<string, number>();
    for (const { kind } of records) count.set(kind, (count.get(kind) ?? 0) + 1);
    keyed(this.#kinds, [...count], ([kind]) => kind, () => el("li"), (node, [kind, n]) => setText(node, w("forget.kind", { kind: kindWords(kind), n })));
  }

  async #export(): Promise<void> {
    const { book } = this.#ctx;
    const failed = await attempt(this.#ctx, async () => {
      await this.#again(); // what came meanwhile goes along
      if (this.#whole === undefined) return;
      const name = `${(eventName(this.#whole.event) || "event").replace(/[^\p{L}\p{N}]+/gu, "-").slice(0, 40)}.ndjson`;
      const handed = await handOver(new File([linesOf(await book.exportText(), this.#whole.records)], name, { type: "application/x-ndjson" }));
      this.#outcome.view = { words: handed === "saved" ? w("erase.saved", { name }) : handed === "shared" ? w("erase.shared") : w("erase.kept") };
    });
    if (failed !== "") this.#outcome.view = { words: failed, failed: true };
  }

  async #erase(): Promise<void> {
    const { book, drafts } = this.#ctx;
    await this.#again(); // what came meanwhile goes too
    const records = this.#whole?.records;
    if (records === undefined) return this.#form.end("");
    const failed = await attempt(this.#ctx, async () => {
      await book.eraseAll(records);
      await drafts.save("wheels-search", ""); // it may hold a name
    });
    this.#gone = failed === "";
    this.#form.end(failed);
    await this.#again();
  }
}

export function eventWhole(host: HTMLElement, ctx: Ctx): void {
  new EventWholePage(host, ctx, ctx.path[1] ?? "");
}
