// What erasing a person takes, what somebody has to decide, what stays, and what it does not reach.

import type { Offer } from "../../book/settings/erase_person.ts";
import { kindWords } from "../../book/value/kind_words.ts";
import { describeRecord, type Teller } from "../../book/value/record_words.ts";
import type { RecordState } from "../../log/op/merge.ts";
import { el } from "../../ui/el.ts";
import { keyed } from "../../ui/keyed.ts";
import { setHidden, setText } from "../../ui/part.ts";
import { w } from "../../words/index.ts";

const named = 200; // of a kind that are named one by one

// goesCard tells all that goes, by kind; each kind opens into its records.
export function goesCard(person: RecordState, gone: readonly RecordState[], teller: Teller): HTMLElement {
  const kinds = new Map<string, RecordState[]>();
  for (const state of gone) if (state.rec !== person.rec) kinds.set(state.kind, [...(kinds.get(state.kind) ?? []), state]);
  return el("section", { class: "card stack" }, el("h2", {}, w("forget.goes")),
    gone.includes(person) && el("p", {}, w("forget.person")), el("p", { class: "small quiet" }, w("forget.why")),
    ...[...kinds].map(([kind, states]) => el("details", {}, el("summary", {}, w("forget.kind", { kind: kindWords(kind), n: states.length })),
      el("ul", {}, ...states.slice(0, named).map((state) => el("li", {}, describeRecord(state, teller))),
        states.length > named && el("li", {}, w("list.more", { n: states.length - named }))))));
}

export interface OfferLine {
  readonly offer: Offer;
  readonly ticked: boolean;
  readonly name: string;
}

interface LineNode extends HTMLElement {
  show: (line: OfferLine) => void;
}

export class OfferCard {
  readonly #lines = el("div");
  readonly node = el("section", { class: "card stack" }, el("h2", {}, w("forget.decide")), this.#lines);
  readonly #tick: (offer: Offer, ticked: boolean) => void;

  constructor(tick: (offer: Offer, ticked: boolean) => void) {
    this.#tick = tick;
  }

  show(lines: readonly OfferLine[]): void {
    setHidden(this.node, lines.length === 0);
    keyed(this.#lines, lines, ({ offer }) => offer.key, () => this.#make(), (node, line) => node.show(line));
  }

  #make(): LineNode {
    const box = el("input", { type: "checkbox" });
    const words = el("span");
    const show = ({ offer, ticked, name }: OfferLine): void => {
      box.checked = ticked;
      box.onchange = () => this.#tick(offer, box.checked);
      setText(words, offerWords(offer, name));
    };
    return Object.assign(el("label", { class: "tick" }, box, words), { show });
  }
}

function offerWords({ why, gone }: Offer, name: string): string {
  switch (why) {
    case "loads": return w("forget.loads", { name });
    case "former": return w("forget.former", { name, n: gone.length });
    case "named": return w("forget.text", { name });
  }
}

export function staysCard(bikes: readonly string[]): HTMLElement {
  return el("section", { class: "card stack" }, el("h2", {}, w("forget.stays")),
    ...bikes.map((name) => el("p", {}, w("forget.rider", { name }))), el("p", {}, w("forget.parts")));
}

export function reachCard(): HTMLElement {
  return el("section", { class: "card stack" }, el("h2", {}, w("forget.reach")),
    el("ul", {}, ...[w("forget.files"), w("forget.never"), w("forget.late")].map((words) => el("li", {}, words))));
}
