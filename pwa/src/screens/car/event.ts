// The riders of an event: a list comes in from a file or pasted, its columns are matched, bad rows are named, the rest is saved
// rider by rider with the progress shown.

import "../../ui/pick.css";
import "./car.css";
import { type EventColumn, eventColumns, type EventPlan, guessed, planOf, type Sheet, sheetOf } from "../../book/car/event_read.ts";
import { eventName } from "../../book/car/event_whole.ts";
import { fileText } from "../../book/wheels/lists/csv.ts";
import { dayWords } from "../../book/value/when.ts";
import { dayOf } from "../../book/wheels/measure_days.ts";
import { type Change, newRec } from "../../log/book_log.ts";
import type { RecordState } from "../../log/op/merge.ts";
import { keyed } from "../../ui/keyed.ts";
import { showWay, way } from "../../ui/way.ts";
import { chosen } from "../../ui/choice.ts";
import { el } from "../../ui/el.ts";
import { Outcome } from "../../ui/outcome.ts";
import { openPage } from "../../ui/page.ts";
import { listen, setHidden, setText } from "../../ui/part.ts";
import { Picker } from "../../ui/picker.ts";
import type { Ctx } from "../../ui/screen.ts";
import { w } from "../../words/index.ts";
import { attempt, follow } from "../shared/follow.ts";
import { textIn } from "../../book/car/known.ts";
import { fleetNow } from "./car_book.ts";

const mostBytes = 4 << 20;
const together = 20; // riders saved as one: each save is whole, and the progress moves
const named = 20; // bad rows told one by one

// Tied is the event that the riders belong to, and what makes it where it is new.
interface Tied {
  readonly rec: string;
  readonly made: readonly Change[];
}

class EventPage {
  readonly #ctx: Ctx;
  readonly #outcome = new Outcome();
  readonly #count = el("p");
  readonly #file = el("input", { type: "file", accept: ".csv,.txt,.tsv,text/csv,text/plain", on: { change: () => void this.#open() } });
  readonly #paste = el("textarea", { class: "entry", rows: 5, id: "event-paste", spellcheck: "false" } as never);
  readonly #name = el("input", { class: "entry", type: "text", maxlength: 80, autocomplete: "off", id: "event-name", on: { change: () => void this.#show() } });
  readonly #events = el("ul", { class: "unmarked ways" });
  readonly #known = el("section", { class: "card stack" }, el("h2", {}, w("eventWhole.list")), this.#events);
  readonly #columns = el("div", { class: "fields" });
  readonly #bad = el("ul");
  readonly #badBox = el("div", { class: "notice care stack" }, el("h3", {}, w("event.bad")), this.#bad);
  readonly #take = el("button", { type: "button", class: "button primary", on: { click: () => void this.#save() } });
  readonly #progress = el("progress", { "aria-label": w("event.title") });
  readonly #state = el("p", { role: "status", class: "small quiet" });
  readonly #preview: HTMLElement;
  #sheet: Sheet | undefined;
  #matched: readonly (EventColumn | "")[] = [];
  #plan: EventPlan | undefined;
  #event: Tied = { rec: "", made: [] }; // what the riders are tied to

  constructor(host: HTMLElement, ctx: Ctx) {
    this.#ctx = ctx;
    openPage(ctx, w("event.title"), { href: "#/car", words: w("place.car") });
    this.#preview = el("section", { class: "card stack" }, el("h2", {}, w("event.columns")), this.#columns, this.#badBox, el("div", { class: "row" }, this.#take, this.#progress, this.#state));
    setHidden(this.#preview, true);
    setHidden(this.#progress, true);
    host.append(el("div", { class: "stack car" }, this.#outcome, el("section", { class: "card stack" }, this.#count, el("div", {}, el("label", { for: "event-name" }, w("eventWhole.name")), this.#name),
      el("div", { class: "row" }, el("label", { class: "button pick" }, w("event.bring"), this.#file)),
      el("label", { for: "event-paste" }, w("event.paste")), this.#paste, el("div", { class: "row" }, el("button", { type: "button", class: "button", on: { click: () => void this.#read(this.#paste.value) } }, w("event.read")))), this.#preview, this.#known));
    listen(host, chosen, ({ name, value }) => void this.#match(Number(name), eventColumns.find((column) => column === value) ?? ""), ctx.closed);
    follow(ctx, () => this.#look(), (words) => (this.#outcome.view = { words, failed: true }));
  }

  async #look(): Promise<void> {
    const { riders } = await fleetNow(this.#ctx);
    const events = await this.#ctx.book.all("event");
    if (this.#ctx.closed.aborted) return;
    setText(this.#count, w("event.count", { n: riders.length }));
    setHidden(this.#known, events.length === 0);
    keyed(this.#events, events, ({ rec }) => rec, () => way(), (node, event) => {
      const n = riders.filter(({ bike }) => textIn(bike, "event") === event.rec).length;
      showWay(node, `#/car/event/${event.rec}`, eventName(event) || w("recKind.event"), w("event.count", { n }));
    });
  }

  async #open(): Promise<void> {
    const file = this.#file.files?.[0];
    if (file === undefined) return;
    const text = file.size > mostBytes ? undefined : fileText(new Uint8Array(await file.arrayBuffer()));
    this.#file.value = "";
    if (text === undefined) this.#outcome.view = { words: w("event.unreadable"), failed: true };
    else await this.#read(text);
  }

  async #read(text: string): Promise<void> {
    this.#sheet = sheetOf(text);
    this.#matched = guessed(this.#sheet);
    await this.#show();
    this.#preview.scrollIntoView({ block: "nearest" });
  }

  async #match(column: number, as: EventColumn | ""): Promise<void> {
    this.#matched = this.#matched.map((was, n) => (n === column ? as : was === as ? "" : was)); // each thing stands in one column
    await this.#show();
  }

  async #show(): Promise<void> {
    const sheet = this.#sheet;
    if (sheet === undefined) return;
    this.#event = await this.#eventNamed();
    this.#plan = planOf(sheet, this.#matched, await fleetNow(this.#ctx), this.#event.rec, newRec);
    const { riders, bad } = this.#plan;
    const options = [{ value: "", label: w("event.ignore") }, ...eventColumns.map((value) => ({ value, label: w(`eventColumn.${value}`) }))];
    this.#columns.replaceChildren(...this.#matched.map((value, n) => {
      const picker = new Picker();
      const label = sheet.heads[n] || (sheet.rows[0]?.cells[n] ?? "");
      picker.view = { name: String(n), label, spoken: label, value, options };
      return picker;
    }));
    setHidden(this.#preview, false);
    setHidden(this.#take, riders.length === 0);
    setText(this.#take, w("event.take", { n: riders.length }));
    setText(this.#state, riders.length === 0 ? w("event.empty") : "");
    const lines = bad.slice(0, named).map(({ line, why }) => w("event.badRow", { line, why }));
    this.#bad.replaceChildren(...[...lines, ...(bad.length > named ? [w("event.more", { n: bad.length - named })] : [])].map((words) => el("li", {}, words)));
    setHidden(this.#badBox, bad.length === 0);
  }

  // eventNamed is the event of this name, or a new one; without a name it is called by the day.
  async #eventNamed(): Promise<Tied> {
    const now = Date.now();
    const name = this.#name.value.trim() || dayWords(dayOf(now), now);
    const known = (await this.#ctx.book.all("event")).find((event) => eventName(event).toLowerCase() === name.toLowerCase());
    if (known !== undefined) return { rec: known.rec, made: [] };
    const rec = newRec();
    return { rec, made: [{ rec, kind: "event", set: { name, day: dayOf(now) } }] };
  }

  async #save(): Promise<void> {
    const riders = this.#plan?.riders ?? [];
    const saved: RecordState[] = [];
    this.#take.disabled = true;
    this.#progress.max = riders.length;
    setHidden(this.#progress, false);
    const failed = await attempt(this.#ctx, async () => {
      saved.push(...(await this.#ctx.book.save(this.#event.made)));
      for (let n = 0; n < riders.length; n += together) {
        saved.push(...(await this.#ctx.book.save(riders.slice(n, n + together).flat())));
        this.#progress.value = Math.min(riders.length, n + together);
        setText(this.#state, w("event.progress", { done: Math.min(riders.length, n + together), of: riders.length }));
      }
    });
    this.#take.disabled = false;
    setHidden(this.#progress, true);
    setText(this.#state, "");
    if (failed !== "") {
      this.#outcome.view = { words: failed, failed: true };
      return;
    }
    setHidden(this.#preview, true);
    this.#paste.value = "";
    this.#sheet = undefined;
    this.#outcome.view = { words: w("event.taken", { n: riders.length }) };
    this.#outcome.scrollIntoView({ block: "nearest" });
  }
}

export function event(host: HTMLElement, ctx: Ctx): void {
  new EventPage(host, ctx);
}
