// What is trusted: the way the app came, and what a phone may do that is in, or out.

import { wayOf } from "../../book/settings/phones_view.ts";
import { el } from "../../ui/el.ts";
import { w } from "../../words/index.ts";

export function trustCard(): HTMLElement {
  const way = wayOf(location);
  return el("section", { class: "card stack" }, el("h2", {}, w("trust.title")),
    el("p", { class: way === "plain" ? "notice care" : "" }, w(`trust.by.${way}`, { host: location.host })),
    el("p", {}, w("trust.in")), el("p", {}, w("trust.out")));
}
