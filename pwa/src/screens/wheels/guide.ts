// The measuring guide: #/wheels/guide lists its topics; #/wheels/guide/<topic> is one, and with a record behind it leads
// back to measuring that one.

import "./guide.css";
import { whatWords } from "../../book/wheels/measure_words.ts";
import { measureHref } from "../../book/wheels/measure_view.ts";
import { describeRecord } from "../../book/value/record_words.ts";
import { isId } from "../../log/op/op.ts";
import { type RecordState, valueOf } from "../../log/op/merge.ts";
import { el } from "../../ui/el.ts";
import { keyed } from "../../ui/keyed.ts";
import { openPage } from "../../ui/page.ts";
import { setAttr, setText } from "../../ui/part.ts";
import type { Ctx } from "../../ui/screen.ts";
import { w } from "../../words/index.ts";
import { follow, tellerFor } from "../shared/follow.ts";
import { picture } from "./guide_pictures.ts";
import { measures, type Topic, topics } from "./guide_topics.ts";

const most = 6; // records that are offered, the newest first

export function guide(host: HTMLElement, ctx: Ctx): void {
  const [, asked, rec = ""] = ctx.path;
  const topic = topics.find((each) => each === asked);
  if (topic === undefined) list(host, ctx);
  else page(host, ctx, topic, isId(rec) ? rec : "");
}

function list(host: HTMLElement, ctx: Ctx): void {
  openPage(ctx, w("guide.title"), { href: "#/wheels", words: w("place.wheels") });
  host.append(el("div", { class: "stack" }, el("p", {}, w("guide.intro")),
    el("ul", { class: "unmarked columns" }, ...topics.map((topic) => el("li", { class: "card topic" }, glimpse(topic), el("div", { class: "stack" },
      el("h2", {}, el("a", { class: "button", href: `#/wheels/guide/${topic}` }, w(`guideTitle.${topic}`))),
      el("p", { class: "small" }, w("guide.needed", { things: w(`guideNeeds.${topic}`) }))))))));
}

// glimpse is a small drawing for the eye alone: the words beside it say the same.
function glimpse(topic: Topic): SVGSVGElement {
  const small = picture(topic);
  small.setAttribute("aria-hidden", "true");
  return small;
}

function page(host: HTMLElement, ctx: Ctx, topic: Topic, rec: string): void {
  openPage(ctx, w(`guideTitle.${topic}`), { href: "#/wheels/guide", words: w("guide.title") });
  const steps = w(`guideSteps.${topic}`).split("\n");
  const buttons = el("ul", { class: "unmarked row" });
  const none = el("p", { class: "quiet small" });
  host.append(el("div", { class: "columns" },
    el("div", { class: "stack" },
      el("figure", { class: "card" }, picture(topic)),
      el("p", { class: "notice care" }, w(`guideCare.${topic}`))),
    el("div", { class: "stack" },
      el("section", { class: "card stack" }, el("p", { class: "small" }, w("guide.needed", { things: w(`guideNeeds.${topic}`) })),
        el("ol", { class: "steps stack" }, ...steps.map((step) => el("li", {}, step)))),
      el("section", { class: "card stack" }, el("h2", {}, w("guide.note")), el("p", {}, w(`guideNote.${topic}`)),
        el("h2", {}, w("guide.use")), el("p", {}, w(`guideUse.${topic}`))),
      el("section", { class: "card stack" }, el("h2", {}, w("guide.now")), none, buttons))));
  follow(ctx, () => offer(ctx, topic, rec, buttons, none), (words) => setText(none, words));
}

// offer puts up the buttons that lead to measuring.
async function offer(ctx: Ctx, topic: Topic, rec: string, buttons: HTMLElement, none: HTMLElement): Promise<void> {
  const { kind, whats } = measures[topic];
  const all = await ctx.book.all(kind);
  const teller = await tellerFor(ctx, all);
  if (ctx.closed.aborted) return;
  const asked = all.filter((each) => each.rec === rec);
  const offered = (asked.length > 0 ? asked : ordered(all).slice(0, most)).flatMap((state) => whats.map((what) => ({ state, what })));
  const alone = offered.length === 0;
  none.replaceChildren(...(alone ? [w("guide.nothing"), " ", el("a", { class: "button", href: `#/wheels/new/${kind}` }, w("guide.add"))] : []));
  none.hidden = !alone;
  keyed(buttons, offered, ({ state, what }) => `${state.rec} ${what}`, () => el("li", {}, el("a", { class: "button primary" })), (node, { state, what }) => {
    const link = node.firstElementChild;
    if (link === null) return;
    setAttr(link, "href", measureHref(state.rec, what));
    setText(link, w("guide.measure", { what: whatWords(what), name: describeRecord(state, teller) }));
  });
}

// ordered leaves out what is out of use.
function ordered(all: readonly RecordState[]): readonly RecordState[] {
  return all.filter((each) => valueOf(each, "retired") !== true).sort((a, b) => b.newest - a.newest);
}
