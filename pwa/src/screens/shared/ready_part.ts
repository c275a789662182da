// Whether a bike may be ridden, as a card with its reasons, and in a line. The same words everywhere.

import "./ready.css";
import type { ReadyView, ReasonView } from "../../book/checks/ready_view.ts";
import { el } from "../../ui/el.ts";
import { keyed } from "../../ui/keyed.ts";
import { define, Part, setAttr, setHidden, setText } from "../../ui/part.ts";
import { w } from "../../words/index.ts";

const atOnce = 3; // reasons; more are folded

export interface ReadyCardView {
  readonly ready: ReadyView | undefined; // undefined where no sums run
  readonly of: string; // whose state it is, where the page does not say; "" else
  readonly quietWhenFine: boolean; // hidden unless there is a stop or care
}

// ReadyCard tells the state, its reasons, and where something can be done.
export class ReadyCard extends Part<ReadyCardView> {
  readonly #title = el("h2", { class: "state", tabindex: -1 });
  readonly #look = el("p");
  readonly #lookAt = el("p", { class: "small quiet" });
  readonly #reasons = el("ul", { class: "unmarked reasons" });
  readonly #rest = el("ul", { class: "unmarked reasons" });
  readonly #more = el("summary");
  readonly #fold = el("details", {}, this.#more, this.#rest);
  readonly #act = el("a", { class: "button", href: "#/checks" });
  readonly #acts = el("p", { class: "row" }, this.#act);
  readonly #card = el("section", { class: "card stack", "aria-label": w("ready.label") }, this.#title, this.#reasons, this.#fold, this.#acts, this.#look, this.#lookAt);

  protected override build(): void {
    this.append(this.#card);
  }

  protected override show({ ready, of, quietWhenFine }: ReadyCardView): void {
    const state = ready?.state ?? "not_looked_at";
    setHidden(this, quietWhenFine && state !== "stop" && state !== "care");
    this.#card.className = state === "stop" || state === "care" ? `card stack ${state}` : "card stack";
    const title = ready?.title ?? w("ready.line.unknown");
    setText(this.#title, of === "" ? title : w("ready.ofBike", { bike: of, state: title }));
    const reasons = ready?.reasons ?? [];
    keyed(this.#reasons, reasons.slice(0, atOnce), ({ key }) => key, makeReason, (node, reason) => node.show(reason));
    keyed(this.#rest, reasons.slice(atOnce), ({ key }) => key, makeReason, (node, reason) => node.show(reason));
    setHidden(this.#reasons, reasons.length === 0);
    setHidden(this.#fold, reasons.length <= atOnce);
    setText(this.#more, w("ready.more", { n: Math.max(0, reasons.length - atOnce) }));
    const [first] = reasons;
    setHidden(this.#acts, first === undefined || first.href === "");
    if (first !== undefined && first.href !== "") setAttr(this.#act, "href", first.href);
    setText(this.#act, first?.act ?? "");
    setText(this.#look, ready?.look ?? "");
    setHidden(this.#look, (ready?.look ?? "") === "");
    setText(this.#lookAt, ready?.lookAt ?? "");
    setHidden(this.#lookAt, ready === undefined);
  }

  toState(): void {
    this.#title.focus({ preventScroll: true });
    this.scrollIntoView({ block: "center" });
  }
}

interface ReasonNode extends HTMLLIElement {
  show: (reason: ReasonView) => void;
}

function makeReason(): ReasonNode {
  const words = el("strong");
  const detail = el("span", { class: "small quiet" });
  const link = el("a", {}, words, " ", detail); // the space is for those who listen
  const show = (reason: ReasonView): void => {
    setText(words, reason.words);
    setAttr(link, "href", reason.href === "" ? null : reason.href);
    setText(detail, reason.detail);
  };
  return Object.assign(el("li", {}, link), { show });
}

export interface ReadyLineView {
  readonly ready: ReadyView | undefined;
  readonly of: string; // whose state it is, where the page does not say; "" else
  readonly href: string; // to where more is told
}

// ReadyLine tells the state in a line, as a link.
export class ReadyLine extends Part<ReadyLineView> {
  readonly #link = el("a");

  protected override build(): void {
    this.append(this.#link);
  }

  protected override show({ ready, of, href }: ReadyLineView): void {
    setHidden(this, ready === undefined);
    setAttr(this.#link, "href", href);
    setText(this.#link, ready === undefined ? "" : of === "" ? ready.line : w("ready.ofBike", { bike: of, state: ready.line }));
    this.#link.className = ready?.state === "stop" || ready?.state === "care" ? ready.state : "";
  }
}

define("rs-ready", ReadyCard);
define("rs-ready-line", ReadyLine);
