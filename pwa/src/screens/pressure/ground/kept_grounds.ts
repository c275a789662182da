// Grounds kept by name: keep today's, or make a kept one today's.

import type { GroundLine } from "../../../book/pressure/grounds.ts";
import { el } from "../../../ui/el.ts";
import { keyed } from "../../../ui/keyed.ts";
import { actName, define, Part, setHidden, setText } from "../../../ui/part.ts";
import { w } from "../../../words/index.ts";

export const groundKept = actName<string>("rs-ground-kept"); // under this name
export const groundUsed = actName<string>("rs-ground-used"); // the kept one

export class KeptGrounds extends Part<readonly GroundLine[]> {
  readonly #name = el("input", { class: "entry", type: "text", maxlength: 80, autocomplete: "off" });
  readonly #list = el("div", { class: "stack" });
  readonly #title = el("h3", {}, w("ground.kept"));

  protected override build(): void {
    this.append(el("details", {}, el("summary", {}, w("ground.again")), el("div", { class: "stack" },
      this.#title, this.#list,
      el("label", { class: "named" }, w("ground.name"), this.#name),
      el("button", { type: "button", class: "button", on: { click: () => this.#keep() } }, w("ground.keep")))));
  }

  protected override show(kept: readonly GroundLine[]): void {
    setHidden(this.#title, kept.length === 0);
    keyed(this.#list, kept, (each) => each.rec, (each) =>
      el("button", { type: "button", class: "button", on: { click: () => this.act(groundUsed, each.rec) } }), (node, each) => setText(node, each.name));
  }

  #keep(): void {
    const name = this.#name.value.trim();
    if (name === "") return this.#name.focus();
    this.act(groundKept, name);
    this.#name.value = "";
  }
}

define("rs-kept-grounds", KeptGrounds);
