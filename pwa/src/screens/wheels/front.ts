// The front page of Wheels: one search over everything, then what the book holds, each thing a way to its page.

import "./wheels.css";
import { foundIn, type ThingLine, thingLines } from "../../book/wheels/thing_list.ts";
import { type ThingKind, thingKinds } from "../../book/wheels/thing_fields.ts";
import "../../ui/way.css";
import { el } from "../../ui/el.ts";
import { fold } from "../../ui/fold.ts";
import { keyed } from "../../ui/keyed.ts";
import { define, Part, setAttr, setHidden, setText } from "../../ui/part.ts";
import type { Ctx } from "../../ui/screen.ts";
import { w } from "../../words/index.ts";
import { follow, tellerFor } from "../shared/follow.ts";
import { readyOfAll } from "../shared/ready.ts";
import type { ReadyView } from "../../book/checks/ready_view.ts";

const atFirst = 24; // lines of a list
const whileSeeking = 8; // the fewer, the sooner they stand there
const atOnce = 100; // more of them

interface Listed {
  readonly name: string;
  readonly title: string;
  readonly lines: readonly ThingLine[];
  readonly states: ReadonlyMap<string, ReadyView>;
  readonly most: number;
  readonly more: () => void;
}

class Lines extends Part<Listed> {
  readonly #title = el("h2");
  readonly #list = el("ul", { class: "unmarked ways" });
  readonly #more = el("button", { type: "button", class: "button quiet flush", on: { click: () => this.view?.more() } });

  protected override build(): void {
    this.append(el("section", { class: "card" }, this.#title, this.#list, this.#more));
  }

  protected override show({ title, lines, states, most }: Listed): void {
    setText(this.#title, title);
    keyed(this.#list, lines.slice(0, most), ({ rec }) => rec, makeLine, (node, line) => node.show(line, states.get(line.rec)));
    setHidden(this.#more, lines.length <= most);
    setText(this.#more, w("things.more", { n: lines.length - most }));
  }
}

interface LineNode extends HTMLLIElement {
  show: (line: ThingLine, ready: ReadyView | undefined) => void;
}

function makeLine(): LineNode {
  const name = el("span", { class: "named" });
  const facts = el("span", { class: "quiet small" });
  const state = el("span", { class: "small state" });
  const link = el("a", { class: "way" }, name, facts, state);
  const show = (line: ThingLine, ready: ReadyView | undefined): void => {
    setAttr(link, "href", `#/wheels/${line.rec}`);
    setText(name, line.name);
    setText(facts, line.facts);
    setText(state, ready?.line ?? "");
    setHidden(state, ready === undefined);
    state.className = ready?.state === "stop" || ready?.state === "care" ? `small state ${ready.state}` : "small state quiet";
  };
  return Object.assign(el("li", {}, link), { show });
}

const noted = "wheels-search"; // survives the way to a thing and back

class Front {
  readonly #ctx: Ctx;
  readonly #search = el("input", { class: "entry", type: "search", id: "things-search", autocomplete: "off", spellcheck: "false", enterkeyhint: "search" });
  readonly #said = el("p", { class: "small quiet", role: "status" });
  readonly #lists = el("div", { class: "kinds" });
  readonly #none = el("section", { class: "card stack" }, el("p", {}, w("things.empty")),
    el("p", {}, el("a", { class: "button primary", href: "#/wheels/new/bike" }, w("things.first"))));
  readonly #seek: HTMLElement;
  readonly #most = new Map<string, number>();
  #lines: readonly ThingLine[] = [];
  #states: ReadonlyMap<string, ReadyView> = new Map(); // of bikes, and of wheels that something was noted of
  #noting: ReturnType<typeof setTimeout> | undefined; // what is sought is kept once the typing rests

  constructor(host: HTMLElement, ctx: Ctx) {
    this.#ctx = ctx;
    this.#seek = el("div", { class: "seek" }, el("label", { for: "things-search" }, w("things.search")), this.#search);
    setHidden(this.#none, true);
    setHidden(this.#seek, true);
    const page = el("div", { class: "stack looking" });
    host.append(page);
    this.#search.addEventListener("input", () => {
      this.#most.clear();
      this.#show();
      clearTimeout(this.#noting);
      this.#noting = setTimeout(() => void ctx.drafts.save(noted, this.#search.value), 300);
    });
    void ctx.drafts.load(noted).then((text) => {
      if (typeof text === "string" && this.#search.value === "") this.#search.value = text;
      follow(ctx, async () => {
        await this.#look();
        if (page.childElementCount > 0) return;
        page.append(this.#seek, this.#said, this.#none, added(), this.#lists, others()); // all at once: nothing jumps
      }, (words) => setText(this.#said, words));
    });
  }

  async #look(): Promise<void> {
    const { book } = this.#ctx;
    const teller = await tellerFor(this.#ctx, []);
    const lists = await Promise.all(thingKinds.map((kind) => book.all(kind)));
    if (this.#ctx.closed.aborted) return;
    this.#lines = thingLines(lists.flat(), teller);
    this.#ready(this.#lines);
    setHidden(this.#none, this.#lines.length > 0);
    setHidden(this.#seek, this.#lines.length === 0);
    this.#show();
    void this.#ask(this.#lines);
  }

  // ask works out the states once the list stands.
  async #ask(lines: readonly ThingLine[]): Promise<void> {
    const states = await readyOfAll(this.#ctx, lines.filter(({ kind, retired }) => !retired && (kind === "bike" || kind === "wheel")).map(({ rec }) => rec));
    if (this.#lines !== lines || this.#ctx.closed.aborted) return;
    this.#states = states;
    this.#show();
  }

  // ready works out what the search looks through while nobody waits.
  #ready(lines: readonly ThingLine[], from = 0): void {
    later(() => {
      if (this.#lines !== lines || this.#ctx.closed.aborted) return;
      for (const { sought } of lines.slice(from, from + 50)) void sought;
      if (from + 50 < lines.length) this.#ready(lines, from + 50);
    });
  }

  #show(): void {
    const query = this.#search.value.trim();
    const found = query === "" ? this.#lines : foundIn(this.#lines, query);
    setText(this.#said, query === "" ? "" : found.length === 0 ? w("things.notFound", { query }) : w("things.found", { n: found.length }));
    const lists = sections(found).map((section) => ({ ...section, states: this.#states, most: this.#most.get(section.name) ?? (query === "" ? atFirst : whileSeeking), more: () => this.#more(section.name) }));
    keyed(this.#lists, lists, ({ name }) => name, () => new Lines(), (part, list) => {
      part.view = list;
    });
  }

  #more(name: string): void {
    this.#most.set(name, (this.#most.get(name) ?? 0) + atOnce);
    this.#show();
  }
}

export function front(host: HTMLElement, ctx: Ctx): void {
  new Front(host, ctx);
}

// later does a piece of work when the page has nothing else to do.
function later(work: () => void): void {
  if ("requestIdleCallback" in globalThis) requestIdleCallback(work);
  else setTimeout(work, 100);
}

// sections list each kind; what is out of use comes last.
function sections(lines: readonly ThingLine[]): Pick<Listed, "name" | "title" | "lines">[] {
  const of = (kind: ThingKind): Pick<Listed, "name" | "title" | "lines"> =>
    ({ name: kind, title: w(`things.list.${kind}`), lines: lines.filter((line) => line.kind === kind && !line.retired) });
  const retired = { name: "retired", title: w("things.list.retired"), lines: lines.filter((line) => line.retired) };
  return [...thingKinds.map(of), retired].filter((section) => section.lines.length > 0);
}

function added(): HTMLElement {
  return fold(w("things.add"), el("div", { class: "row" },
    ...thingKinds.map((kind) => el("a", { class: "button", href: `#/wheels/new/${kind}` }, w(`things.new.${kind}`)))));
}

function others(): HTMLElement {
  return el("section", { class: "card" }, el("ul", { class: "unmarked ways" },
    ...([["fit", "fit.toGuide"], ["guide", "things.toGuide"], ["lists", "things.toLists"]] as const).map(([page, words]) => el("li", {}, el("a", { class: "way", href: `#/wheels/${page}` }, w(words))))));
}

define("rs-lines", Lines);
